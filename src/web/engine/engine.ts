import type { WeighedNeed } from '../../app/api.ts';
import { readDesign } from '../../app/api.ts';
import {
  fieldSchema,
  fileFields,
  setField,
  setFields,
  startingFile,
  type FieldEdit,
  type FieldSchema,
  type FieldValue,
} from '../../core/instrument/index.ts';
import type { BuildChoice, ProjectFiles } from './asked.ts';
import { answerOf, type Answer } from './answer.ts';
import type { CodesView } from './codesView.ts';
import type { CompareView } from './compareView.ts';
import { designView, type DesignView } from './designView.ts';
import type { FirstAnswers } from './firstAnswers.ts';
import type { FirstFile } from './firstFile.ts';
import type { FitChoice, FittedView } from './fitView.ts';
import type { MadeView, MakeChoice } from './makeView.ts';
import { memoryFiles } from './memoryFiles.ts';
import type { PictureName } from './picturesView.ts';
import type { ProofView } from './proofView.ts';
import type { QuickProof } from './quickProof.ts';
import type { PurposeName } from './weighView.ts';
import type { SolidsView } from './solidsView.ts';

/**
 * What the page asks of the library; it runs in a worker, so that the page never waits.
 *
 * Only what the first page needs is loaded with it; every other verb fetches its own part when it is first asked.
 */
export const engine = {
  /** Everything that is drawn from an instrument file, or what is wrong with it. */
  design({ files, path }: ProjectFiles): Promise<Answer<DesignView>> {
    return answerOf(async () => designView(await readDesign(memoryFiles(files), path)));
  },
  /** The proof as `vanewright prove` gives it. */
  prove({ files, path }: ProjectFiles, choice: BuildChoice): Promise<Answer<ProofView>> {
    return answerOf(async () =>
      (await import('./proofView.ts')).proofView(memoryFiles(files), { path, ...choice }),
    );
  },
  /** Budget and yield alone, to follow a slider. */
  quickProof({ files, path }: ProjectFiles, choice: BuildChoice): Promise<Answer<QuickProof>> {
    return answerOf(async () =>
      (await import('./quickProof.ts')).quickProof(await readDesign(memoryFiles(files), path), choice),
    );
  },
  /** Two files of the project in the same virtual builds. */
  compare({ files, path }: ProjectFiles, against: string, choice: BuildChoice): Promise<Answer<CompareView>> {
    return answerOf(async () =>
      (await import('./compareView.ts')).compareView(memoryFiles(files), { path, against, ...choice }),
    );
  },
  /** Every code for the need, the best first. */
  codes({ files, path }: ProjectFiles): Promise<Answer<CodesView>> {
    return answerOf(async () => (await import('./codesView.ts')).codesView(memoryFiles(files), path));
  },
  /** Meshes of the disc and of every printed part. */
  solids({ files, path }: ProjectFiles): Promise<Answer<SolidsView>> {
    return answerOf(async () =>
      (await import('./solidsView.ts')).solidsView(await readDesign(memoryFiles(files), path)),
    );
  },
  /** A picture as SVG. */
  picture({ files, path }: ProjectFiles, name: PictureName): Promise<Answer<string>> {
    return answerOf(async () =>
      (await import('./picturesView.ts')).pictureOf(await readDesign(memoryFiles(files), path), name),
    );
  },
  /** The files of a build, as `vanewright make` writes them. */
  make(project: ProjectFiles, choice: MakeChoice): Promise<Answer<MadeView>> {
    return answerOf(async () => (await import('./makeView.ts')).madeView(project, choice));
  },
  /** The page that tells how the disc works, as `vanewright make` and `vanewright publish` write it. */
  explain({ files, path }: ProjectFiles): Promise<Answer<string>> {
    return answerOf(async () =>
      (await import('./explainView.ts')).explainView(await readDesign(memoryFiles(files), path)),
    );
  },
  /** What a recorded turn tells of a build, as `vanewright fit` does. */
  fit(project: ProjectFiles, choice: FitChoice): Promise<Answer<FittedView>> {
    return answerOf(async () => (await import('./fitView.ts')).fittedView(project, choice));
  },
  /** Ways of sensing held against the need, and what a purpose asks for. */
  weigh({ files, path }: ProjectFiles, purpose: string | null): Promise<Answer<WeighedNeed>> {
    return answerOf(async () => (await import('./weighView.ts')).weighView({ files, path }, purpose));
  },
  /** What people want readings for. */
  async purposes(): Promise<readonly PurposeName[]> {
    return (await import('./weighView.ts')).purposeTitles();
  },
  /** The text of an instrument file with one field set; comments stay. */
  setField(text: string, path: readonly string[], value: FieldValue): string {
    return setField(text, path, value);
  },
  /** The text with several fields set; comments stay. */
  setFields(text: string, edits: readonly FieldEdit[]): string {
    return setFields(text, edits);
  },
  /** What the text says, field by field, good or not. */
  fieldValues(text: string): Readonly<Record<string, unknown>> {
    return fileFields(text);
  },
  /** A commented file to begin from, as `vanewright new` writes it. */
  startingFile(name: string): string {
    return startingFile(name);
  },
  /** A first file from what a maker has; `null` where nothing with these parts can be read. */
  firstFile(answers: FirstAnswers): Promise<Answer<FirstFile | null>> {
    return answerOf(async () => (await import('./firstFile.ts')).firstFile(answers));
  },
  /** What each field may be. */
  fields(): FieldSchema {
    return fieldSchema();
  },
};

/** The verbs of the engine. */
export type Engine = typeof engine;
