import {
  adviseCodes,
  compareInstruments,
  fitBuild,
  INSTRUMENT_FILE,
  makeInstrument,
  newInstrument,
  proveInstrument,
  type ExampleName,
  type FitRequest,
  type MadeDesign,
  type MakeRequest,
  type ProvedDesign,
} from '../app/api.ts';
import { problemText } from '../core/error/index.ts';
import { codesDocument, codesText } from './codesText.ts';
import { compareText } from './compareText.ts';
import { EXIT } from './exit.ts';
import { fitDocument, fitText } from './fitText.ts';
import type { Outcome } from './outcome.ts';
import { proveText } from './proveText.ts';
import type { Parts } from './wire.ts';

/** Options of `prove` and `make` after reading. */
export interface ProveOptions {
  readonly builds: number;
  readonly seed: number;
}

function provedDocument(command: string, { design, proof, warnings }: ProvedDesign): Record<string, unknown> {
  const { instrument, code, head } = design;
  return {
    command,
    ok: proof.verdict === 'yes',
    name: instrument.name,
    code: {
      family: code.family,
      positions: code.positions,
      stepDeg: 360 / code.positions,
      tracks: code.tracks.length,
      channels: code.channels.length,
    },
    levels: head.levels,
    speed: head.speed,
    proof: { ...proof, warnings },
  };
}

/** `vanewright new DIR [--from EXAMPLE]` */
export async function runNew(
  parts: Parts,
  folder: string,
  from: ExampleName | null,
  stop: AbortSignal,
): Promise<Outcome> {
  const example = from === null ? null : parts.exampleFile(from);
  const { paths } = await newInstrument(parts.files, parts.output, folder, example, stop);
  const file = `${folder}/${INSTRUMENT_FILE}`.replace(/\/{2,}/g, '/');
  return {
    exit: EXIT.good,
    text: `Wrote ${file}.\nNext: set your own numbers in it, then run: vanewright prove ${file}`,
    document: { command: 'new', ok: true, folder, files: paths },
  };
}

/** `vanewright prove FILE` */
export async function runProve(
  parts: Parts,
  path: string,
  { against, ...options }: ProveOptions & { readonly against?: string },
): Promise<Outcome> {
  if (against !== undefined) return runCompare(parts, { path, against, ...options });
  const proved = await proveInstrument(parts.files, { path, ...options }, parts.workers);
  await parts.workers.close();
  const advice = adviseCodes(proved.design);
  return {
    exit: proved.proof.verdict === 'yes' ? EXIT.good : EXIT.short,
    text: [proveText(proved), '', ...codesText(advice)].join('\n'),
    document: { ...provedDocument('prove', proved), advice: codesDocument(advice) },
  };
}

/** `vanewright prove FILE --against OTHER` */
async function runCompare(
  parts: Parts,
  request: ProveOptions & { readonly path: string; readonly against: string },
): Promise<Outcome> {
  const compared = await compareInstruments(parts.files, request);
  const { first, second, comparison } = compared;
  const isNoWorse = comparison.yieldDifference.value >= 0;
  return {
    exit: isNoWorse ? EXIT.good : EXIT.short,
    text: compareText(compared),
    document: {
      command: 'prove',
      ok: isNoWorse,
      name: first.instrument.name,
      against: second.instrument.name,
      comparison,
    },
  };
}

/** What to open first, among what was made. */
function nextStep(paths: readonly string[]): string {
  const sheet = paths.find((path) => path === 'build-sheet.html');
  return sheet ? ` Begin with ${sheet}.` : '';
}

function madeText({ written, leftOut, proof }: MadeDesign, out: string): string {
  const lines = [
    `Wrote ${written.paths.length} files to ${out}:`,
    ...written.paths.map((path) => `  ${path}`),
  ];
  if (written.removed.length > 0)
    lines.push(`Took away files of an earlier run: ${written.removed.join(', ')}`);
  if (written.setAside.length > 0)
    lines.push(`Kept your own version of changed files as: ${written.setAside.join(', ')}`);
  if (written.left.length > 0)
    lines.push(`Not made again, so they may show an older design: ${written.left.join(', ')}`);
  if (written.kept.length > 0) lines.push(`Left, since someone changed them: ${written.kept.join(', ')}`);
  for (const problem of leftOut) lines.push('', 'Not made:', problemText(problem));
  lines.push(
    '',
    proof.verdict === 'yes'
      ? `The proof says yes: this design will read right.${nextStep(written.paths)}`
      : `The proof says NO, so think before you cut: ${proof.reasons.join(' ')}`,
  );
  return lines.join('\n');
}

/** `vanewright make FILE --out DIR` */
export async function runMake(
  parts: Parts,
  path: string,
  options: Omit<MakeRequest, 'path'>,
  stop: AbortSignal,
): Promise<Outcome> {
  const made = await makeInstrument(parts, { path, ...options }, stop);
  return {
    exit: made.proof.verdict === 'yes' ? EXIT.good : EXIT.short,
    text: madeText(made, options.out),
    document: {
      ...provedDocument('make', made),
      folder: options.out,
      files: made.written.paths,
      removed: made.written.removed,
      kept: made.written.kept,
      leftOut: made.leftOut,
      setAside: made.written.setAside,
      left: made.written.left,
    },
  };
}

/** `vanewright fit FILE RECORDING...` */
export async function runFit(parts: Parts, request: FitRequest, stop: AbortSignal): Promise<Outcome> {
  const build = await fitBuild(parts, request, stop);
  return {
    exit: build.fit.verdict === 'yes' ? EXIT.good : EXIT.short,
    text: fitText(build, request.path),
    document: fitDocument(build),
  };
}
