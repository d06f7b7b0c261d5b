import type { FileTexts } from '../engine/memoryFiles.ts';

/** A project as it lies in its home. */
export interface StoredProject {
  /** Path of the instrument file within the project. */
  readonly path: string;
  readonly text: string;
  /** Names the state that was read: saving over another state is refused. `null` where the file is new. */
  readonly version: string | null;
  /** Other files of the project, such as the maker's own words. */
  readonly beside: FileTexts;
}

/** Where a project lives: a folder behind the server, or this browser. */
export interface ProjectHome {
  readonly kind: 'folder' | 'browser';
  /** What an instrument that begins here is called. */
  readonly name: string;
  /** The project, or `null` where there is none yet. */
  load(): Promise<StoredProject | null>;
  /**
   * Saves the instrument file.
   *
   * @param version - The state that the change began from.
   * @returns The version saved, or what stands in the way: `changed` when someone else has saved since, `away` when the
   *   home does not answer, `refused` when it cannot be written.
   */
  save(
    path: string,
    text: string,
    version: string | null,
  ): Promise<{ readonly version: string } | 'changed' | 'away' | 'refused'>;
  /**
   * Keeps a file beside the instrument file; another file of the same name is never lost.
   *
   * @returns The name it is kept under, or what stands in the way.
   */
  keep(name: string, content: string): Promise<{ readonly name: string } | 'away' | 'refused'>;
  /** Tells the version that the home holds, time and again; gives back what ends it. */
  watch(tell: (version: string | null) => void): () => void;
}

/** Largest file beside the instrument file that a home gives back with the project. [byte] */
export const BESIDE_MOST_BYTES = 256 * 1024;

/** Names to keep a file under, the wished one first: `words.csv`, `words-2.csv`, … */
export function namesFor(wished: string): readonly string[] {
  const [, stem, ending] = /^(.*?)(\.[^.]*)?$/s.exec(wished)!;
  return [wished, ...Array.from({ length: 98 }, (_, index) => `${stem}-${index + 2}${ending ?? ''}`)];
}

const KEY = 'vanewright:project';
const BESIDE_KEY = 'vanewright:beside';

/** Files kept in this browser beside the instrument file. */
function keptBeside(): Record<string, string> {
  const kept: unknown = JSON.parse(localStorage.getItem(BESIDE_KEY) ?? '{}');
  const entries = typeof kept === 'object' && kept !== null ? Object.entries(kept) : [];
  return Object.fromEntries(entries.filter(([, content]) => typeof content === 'string'));
}

/** The project of a page without a server: kept in this browser until it is taken home as a file. */
export const browserHome: ProjectHome = {
  kind: 'browser',
  name: 'my vane',
  async load() {
    try {
      const text = localStorage.getItem(KEY);
      return text === null ? null : { path: 'instrument.yaml', text, version: null, beside: keptBeside() };
    } catch {
      return null;
    }
  },
  async save(_path, text) {
    try {
      localStorage.setItem(KEY, text);
      return { version: String(text.length) };
    } catch {
      return 'refused';
    }
  },
  async keep(wished, content) {
    if (new Blob([content]).size > BESIDE_MOST_BYTES) return 'refused';
    try {
      const kept = keptBeside();
      const name = namesFor(wished).find((free) => (kept[free] ?? content) === content);
      if (name === undefined) return 'refused';
      localStorage.setItem(BESIDE_KEY, JSON.stringify({ ...kept, [name]: content }));
      return { name };
    } catch {
      return 'refused';
    }
  },
  watch: () => () => {},
};
