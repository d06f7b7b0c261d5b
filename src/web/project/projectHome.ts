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
  /** Tells the version that the home holds, time and again; gives back what ends it. */
  watch(tell: (version: string | null) => void): () => void;
}

const KEY = 'vanewright:project';

/** The project of a page without a server: kept in this browser until it is taken home as a file. */
export const browserHome: ProjectHome = {
  kind: 'browser',
  name: 'my vane',
  async load() {
    try {
      const text = localStorage.getItem(KEY);
      return text === null ? null : { path: 'instrument.yaml', text, version: null, beside: {} };
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
  watch: () => () => {},
};
