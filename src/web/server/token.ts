const KEY = 'vanewright:token';

/** Takes the token out of the address, so that it is neither bookmarked nor shown; it is kept for this tab. */
function fromAddress(): string | null {
  const found = /^#token=([^&]+)$/.exec(location.hash)?.[1];
  if (found === undefined) return null;
  history.replaceState(null, '', location.pathname + location.search);
  return decodeURIComponent(found);
}

function kept(): string | null {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return null;
  }
}

let token: string | null | undefined;

/** The token of this tab; `null` where none is known. */
export function knownToken(): string | null {
  if (token === undefined) {
    const found = fromAddress();
    if (found !== null) keepToken(found);
    else token = kept();
  }
  return token ?? null;
}

/** Remembers a token for this tab. */
export function keepToken(next: string): void {
  token = next;
  try {
    sessionStorage.setItem(KEY, next);
  } catch {
    // It is asked for again after a reload.
  }
}
