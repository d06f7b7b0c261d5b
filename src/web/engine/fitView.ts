import { fitBuild } from '../../app/api.ts';
import type { Certificate, Fit, ReadingHints } from '../../core/fit/index.ts';
import { causePicture, signalsPicture, widthDial, wordStrip } from '../../core/fit/index.ts';
import type { OutputFile } from '../../ports/index.ts';
import { browserFonts } from './browserFonts.ts';
import type { ProjectFiles } from './asked.ts';
import { collectingFolder, keepingText, memoryFiles } from './memoryFiles.ts';

/** Recordings of one build, and what the maker tells about them. */
export interface FitChoice {
  readonly recordings: readonly {
    readonly name: string;
    readonly bytes: Uint8Array;
    readonly changedAt: string;
  }[];
  readonly hints: ReadingHints;
  /** Disc angle at the first row; `null` where nobody knows. [deg] */
  readonly startsAtDeg: number | null;
}

/** What a recorded turn told. */
export interface FittedView {
  readonly verdict: 'yes' | 'no';
  readonly reasons: readonly string[];
  readonly causes: readonly (Pick<
    Fit['causes'][number],
    'title' | 'evidence' | 'instruction' | 'standing'
  > & { readonly picture: string })[];
  readonly unknowns: Fit['unknowns'];
  readonly changes: Fit['changes'];
  readonly repairs: Fit['recording']['repairs'];
  readonly certificate: Certificate;
  /** SVG pictures of the disc as it was built. */
  readonly pictures: readonly string[];
  /** Certificate and renewed program, the same bytes as `vanewright fit --out` writes. */
  readonly files: readonly OutputFile[];
  /** The instrument file with the table of the disc as it was built; `null` where none can be trusted. */
  readonly text: string | null;
}

/** Fits in memory. @throws VanewrightError as `fitBuild` does */
export async function fittedView(project: ProjectFiles, choice: FitChoice): Promise<FittedView> {
  const output = collectingFolder();
  const recorded = Object.fromEntries(choice.recordings.map(({ name, bytes }) => [name, bytes]));
  const changedAt = Object.fromEntries(choice.recordings.map(({ name, changedAt: at }) => [name, at]));
  const kept = keepingText(memoryFiles({ ...recorded, ...project.files }, changedAt));
  const request = {
    path: project.path,
    recordings: choice.recordings.map(({ name }) => name),
    hints: choice.hints,
    startsAtDeg: choice.startsAtDeg,
    write: true,
    out: 'out',
  };
  const ports = { files: kept.files, output, fonts: browserFonts };
  const { fit, certificate } = await fitBuild(ports, request, new AbortController().signal);
  const { verdict, reasons, unknowns, changes, recording } = fit;
  return {
    verdict,
    reasons,
    unknowns,
    changes,
    certificate,
    repairs: recording.repairs,
    causes: fit.causes.map((cause) => ({ ...cause, picture: causePicture(fit, cause).html })),
    pictures: [
      ...(fit.disc ? [widthDial(fit.disc), wordStrip(fit.disc, fit.channels)] : []),
      signalsPicture(fit),
    ].map(({ html }) => html),
    files: output.files,
    text: kept.written[project.path] ?? null,
  };
}
