import type { ProjectHome } from './projectHome.ts';

/** Whether what is on the screen lies safely in the project's home. */
export type Saving = 'saved' | 'saving' | 'changed-elsewhere' | 'away' | 'refused';

/** Rest after the last change before a file is saved. [ms] */
const SAVE_AFTER_MS = 600;
/** Until a home that did not answer is asked again. [ms] */
const AGAIN_AFTER_MS = 2000;

interface Now {
  readonly path: string;
  readonly text: string;
}

/**
 * Saves the file a moment after each change, one save at a time, until the home holds what is on the screen.
 *
 * @param now - The file as it is.
 * @param tell - Hears how the saving stands.
 */
export function savingInto(
  home: ProjectHome,
  now: () => Now,
  tell: (saving: Saving) => void,
  first: string | null,
) {
  let version = first;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let isBusy = false;

  function after(ms: number): void {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => void save(), ms);
  }

  async function save(): Promise<void> {
    timer = null;
    // The save that runs looks again when it is through.
    if (isBusy) return;
    isBusy = true;
    const { path, text } = now();
    const saved = await home.save(path, text, version);
    isBusy = false;
    if (saved === 'changed') return tell('changed-elsewhere');
    if (saved === 'away' || saved === 'refused') {
      tell(saved);
      return after(AGAIN_AFTER_MS);
    }
    version = saved.version;
    if (now().text === text) tell('saved');
    else after(0);
  }

  return {
    /** The version that the changes on the screen began from. */
    version: (): string | null => version,
    /** The file has changed. */
    later(): void {
      tell('saving');
      after(SAVE_AFTER_MS);
    },
    /** Saves what is on the screen over a version that someone else has saved. */
    async over(theirs: string | null): Promise<void> {
      version = theirs;
      await save();
    },
    /** The screen shows that version now. */
    shows(theirs: string | null): void {
      version = theirs;
      if (timer !== null) clearTimeout(timer);
      timer = null;
      tell('saved');
    },
  };
}

/**
 * Keeps a file beside the instrument file; waits for a home that does not answer.
 *
 * @returns The name it has there; `null` where it was refused.
 */
export async function keepInto(home: ProjectHome, wished: string, content: string): Promise<string | null> {
  for (;;) {
    const kept = await home.keep(wished, content);
    if (typeof kept === 'object') return kept.name;
    if (kept === 'refused') return null;
    await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
  }
}
