import type { FileTexts } from './memoryFiles.ts';

/** Files of the project, and which of them is the instrument. */
export interface ProjectFiles {
  readonly files: FileTexts;
  readonly path: string;
}

/** How many virtual builds, from which seed. */
export interface BuildChoice {
  readonly builds: number;
  readonly seed: number;
}
