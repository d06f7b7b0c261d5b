import { makeInstrument, type MakeRequest, type PaperName } from '../../app/api.ts';
import type { Problem } from '../../core/error/index.ts';
import type { OutputFile } from '../../ports/index.ts';
import { browserFonts } from './browserFonts.ts';
import { collectingFolder, memoryFiles } from './memoryFiles.ts';
import type { BuildChoice, ProjectFiles } from './asked.ts';

/** What the maker chooses for the files. */
export interface MakeChoice extends BuildChoice {
  readonly paper: PaperName;
  /** Parts wanted; `null` for all. */
  readonly only: readonly string[] | null;
}

/** The files of a build. */
export interface MadeView {
  /** The same bytes as `vanewright make` writes. */
  readonly files: readonly OutputFile[];
  readonly leftOut: readonly Problem[];
  readonly verdict: 'yes' | 'no';
  readonly reasons: readonly string[];
}

/** Makes the files in memory. @throws VanewrightError as `makeInstrument` does */
export async function madeView({ files, path }: ProjectFiles, choice: MakeChoice): Promise<MadeView> {
  const output = collectingFolder();
  const request: MakeRequest = { path, out: 'out', ...choice };
  const ports = { files: memoryFiles(files), output, fonts: browserFonts };
  const { proof, leftOut } = await makeInstrument(ports, request, new AbortController().signal);
  return { files: output.files, leftOut, verdict: proof.verdict, reasons: proof.reasons };
}
