import { throwIfAny, VanewrightError, type Problem } from '../core/error/index.ts';
import {
  faultFile,
  isOfSizes,
  sizesFile,
  FilesDisagree,
  makeParts,
  partNames,
  type MadeFile,
  type MakePart,
  type PaperName,
} from '../core/make/index.ts';
import { discAsWritten, INSTRUMENT_FILE_MOST_BYTES } from '../core/instrument/index.ts';
import type { Fonts, InstrumentFiles, OutputFolder, StopSign, Written } from '../ports/index.ts';
import { inPlace, readCode } from './design.ts';
import { proveInstrument, type ProvedDesign, type ProveRequest } from './proveInstrument.ts';

/** What to make, and where. */
export interface MakeRequest extends ProveRequest {
  readonly out: string;
  /** Paper of the drawing sheets. */
  readonly paper: PaperName;
  /** Parts wanted, the rest of an earlier result left as it is; `null` makes all of them. */
  readonly only: readonly string[] | null;
}

/** The proved design with what was written of it. */
export interface MadeDesign extends ProvedDesign {
  readonly written: Written;
  /** Printed parts this design cannot have, each with its cure. */
  readonly leftOut: readonly Problem[];
}

function wantedParts(only: readonly string[] | null): readonly MakePart[] {
  if (only === null) return partNames;
  const asked = only.map((name) => name.trim());
  const unknown = asked.filter((name) => !partNames.some((part) => part === name));
  if (unknown.length > 0 || asked.length === 0) {
    throw new VanewrightError({
      code: 'make/unknown-part',
      what: 'There is no part of that name to make.',
      where: '--only',
      got: unknown.join(', ') || 'nothing',
      allowed: partNames.join(', '),
      fix: `Name one or more of them, such as --only ${partNames[0]}.`,
    });
  }
  return partNames.filter((name) => asked.includes(name));
}

/** What `make` needs of the world. */
export interface MakePorts {
  readonly files: InstrumentFiles;
  readonly output: OutputFolder;
  readonly fonts: Fonts;
}

/** Where a result goes, and how it may be stopped. */
interface Goal {
  readonly ports: MakePorts;
  readonly request: MakeRequest;
  readonly stop: StopSign;
}

/** Saves the drawing of a fault, the one file that is written then, and names it in the problems it shows. */
async function saved(
  { ports, request, stop }: Goal,
  drawing: MadeFile,
  error: VanewrightError,
  isShown: (problem: Problem) => boolean,
): Promise<VanewrightError> {
  await ports.output.write(request.out, [drawing], stop, 'addition');
  const shown = ` The drawing ${request.out}/${drawing.path} shows the place.`;
  const [first, ...rest] = error.problems.map((problem) =>
    isShown(problem) ? { ...problem, fix: problem.fix + shown } : problem,
  );
  return new VanewrightError([first!, ...rest]);
}

const isOfDisc = ({ code }: Problem): boolean => code.startsWith('disc/');

/** What went wrong with a design, with a drawing of it where it lies in the disc. */
async function withDiscDrawing(goal: Goal, error: unknown): Promise<unknown> {
  if (!(error instanceof VanewrightError)) return error;
  if (error.problems.some(isOfSizes)) {
    const text = await goal.ports.files.readText(goal.request.path, INSTRUMENT_FILE_MOST_BYTES);
    const spec = discAsWritten(text);
    return spec ? saved(goal, sizesFile(spec, error.problems), error, isOfSizes) : error;
  }
  if (!error.problems.some(isOfDisc)) return error;
  const { instrument, code } = await readCode(goal.ports.files, goal.request.path);
  const drawing = faultFile(code, instrument.disc);
  return drawing ? saved(goal, drawing, error, isOfDisc) : error;
}

/** What went wrong with the files of a disc, with a drawing of where they show another one. */
async function withFilesDrawing(goal: Goal, error: unknown): Promise<unknown> {
  if (!(error instanceof FilesDisagree) || !error.drawing) return error;
  return saved(goal, error.drawing, error, () => true);
}

/**
 * Writes the cut and print files, the program, the parts list and the build sheet of an instrument.
 *
 * @throws VanewrightError when the design cannot be made; nothing is written then but a drawing of the fault, where the
 * fault lies in the disc or in how a file shows it.
 */
export async function makeInstrument(
  ports: MakePorts,
  request: MakeRequest,
  stop: StopSign,
): Promise<MadeDesign> {
  const wanted = wantedParts(request.only);
  const goal = { ports, request, stop };
  const proved = await proveInstrument(ports.files, request).catch(async (error: unknown) => {
    throw await withDiscDrawing(goal, error);
  });
  const { instrument, disc, head, placed } = proved.design;
  const setting = async () => ({ paper: request.paper, font: await ports.fonts.sans() });
  // What could never be read is not worth a sheet of plywood.
  await inPlace(placed, () => throwIfAny(head.faults));
  // A file that disagrees with the design names its own place, which is none in the instrument file.
  const madePlace = (problem: Problem): Problem =>
    problem.code === 'make/file-disagrees' ? problem : placed(problem);
  const made = await inPlace(madePlace, () =>
    makeParts({ instrument, disc, head, proof: proved.proof }, wanted, setting).catch(
      async (error: unknown) => {
        throw await withFilesDrawing(goal, error);
      },
    ),
  );
  const as = request.only === null ? 'result' : 'part';
  const written = await ports.output.write(request.out, made.files, stop, as);
  return { ...proved, written, leftOut: made.leftOut.map(placed) };
}
