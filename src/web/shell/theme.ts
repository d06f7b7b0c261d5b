import { store } from '../project/store.ts';

/** Light as paper, or dark. */
export type Theme = 'light' | 'dark';

const KEY = 'vanewright:theme';

function wished(): Theme {
  try {
    const kept = localStorage.getItem(KEY);
    if (kept === 'light' || kept === 'dark') return kept;
  } catch {
    // A browser that keeps nothing still has a look.
  }
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** The look in use. */
export const theme = store<Theme>(wished());

/** Shows a look, and keeps it for the next time. */
export function showTheme(next: Theme): void {
  document.documentElement.dataset['theme'] = next;
  theme.set(next);
  try {
    localStorage.setItem(KEY, next);
  } catch {
    // Only the keeping fails.
  }
}
