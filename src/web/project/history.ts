/** One instrument file with what it was before, and what was undone. */
export interface History {
  readonly text: string;
  readonly past: readonly string[];
  readonly future: readonly string[];
}

/** Steps that can be undone; a file is small, so this is some megabytes at most. [-] */
export const STEPS_MOST = 200;

/** A fresh file without a past. */
export function begun(text: string): History {
  return { text, past: [], future: [] };
}

/**
 * The file changed.
 *
 * @param isSameEdit - Whether it goes on with the edit before, so that one step undoes both: the letters of one word.
 */
export function changed(history: History, text: string, isSameEdit = false): History {
  if (text === history.text) return history;
  const past =
    isSameEdit && history.past.length > 0 ? history.past : [...history.past, history.text].slice(-STEPS_MOST);
  return { text, past, future: [] };
}

/** One step back; the same history where there is none. */
export function undone(history: History): History {
  const text = history.past.at(-1);
  if (text === undefined) return history;
  return { text, past: history.past.slice(0, -1), future: [history.text, ...history.future] };
}

/** One step forth again. */
export function redone(history: History): History {
  const [text, ...future] = history.future;
  if (text === undefined) return history;
  return { text, past: [...history.past, history.text], future };
}
