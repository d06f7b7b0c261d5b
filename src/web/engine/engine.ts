import { proveInstrument, readDesign } from '../../app/api.ts';
import {
  fieldSchema,
  setField,
  startingFile,
  type FieldSchema,
  type FieldValue,
} from '../../core/instrument/index.ts';
import { answerOf, type Answer } from './answer.ts';
import { designView, type DesignView } from './designView.ts';
import { memoryFiles, type FileTexts } from './memoryFiles.ts';
import { proofView, type ProofView } from './proofView.ts';

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

/** What the page asks of the library; it runs in a worker, so that the page never waits. */
export const engine = {
  /** Everything that is drawn from an instrument file, or what is wrong with it. */
  design({ files, path }: ProjectFiles): Promise<Answer<DesignView>> {
    return answerOf(async () => designView(await readDesign(memoryFiles(files), path)));
  },
  /** The proof as `vanewright prove` gives it. */
  prove({ files, path }: ProjectFiles, choice: BuildChoice): Promise<Answer<ProofView>> {
    return answerOf(async () => proofView(await proveInstrument(memoryFiles(files), { path, ...choice })));
  },
  /** The text of an instrument file with one field set; comments stay. */
  setField(text: string, path: readonly string[], value: FieldValue): string {
    return setField(text, path, value);
  },
  /** A commented file to begin from, as `vanewright new` writes it. */
  startingFile(name: string): string {
    return startingFile(name);
  },
  /** What each field may be. */
  fields(): FieldSchema {
    return fieldSchema();
  },
};

/** The verbs of the engine. */
export type Engine = typeof engine;
