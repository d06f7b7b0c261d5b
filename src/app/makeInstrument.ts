import { throwIfAny, VanewrightError, type Problem } from '../core/error/index.ts';
import { faultFile, makeParts, partNames, type MakePart, type PaperName } from '../core/make/index.ts';
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

/**
 * Saves the drawing that shows where a disc cannot be made, and says so in its problems.
 *
 * Anything else that went wrong is given back as it is.
 */
async function withFaultDrawing(
  ports: MakePorts,
  request: MakeRequest,
  stop: StopSign,
  error: unknown,
): Promise<unknown> {
  if (!(error instanceof VanewrightError)) return error;
  if (!error.problems.some(({ code }) => code.startsWith('disc/'))) return error;
  const { instrument, code } = await readCode(ports.files, request.path);
  const fault = faultFile(code, instrument.disc);
  if (fault === null) return error;
  await ports.output.write(request.out, [fault], stop, 'addition');
  const shown = ` The drawing ${request.out}/${fault.path} shows the place.`;
  const [first, ...rest] = error.problems.map((problem) =>
    problem.code.startsWith('disc/') ? { ...problem, fix: problem.fix + shown } : problem,
  );
  return new VanewrightError([first!, ...rest]);
}

/**
 * Writes the cut and print files, the program, the parts list and the build sheet of an instrument.
 *
 * @throws VanewrightError when the design cannot be made; nothing is written then but a drawing of the fault, where the
 * fault lies in the disc.
 */
export async function makeInstrument(
  ports: MakePorts,
  request: MakeRequest,
  stop: StopSign,
): Promise<MadeDesign> {
  const wanted = wantedParts(request.only);
  const proved = await proveInstrument(ports.files, request).catch(async (error: unknown) => {
    throw await withFaultDrawing(ports, request, stop, error);
  });
  const { instrument, disc, head, placed } = proved.design;
  const setting = async () => ({ paper: request.paper, font: await ports.fonts.sans() });
  // What could never be read is not worth a sheet of plywood.
  await inPlace(placed, () => throwIfAny(head.faults));
  // A file that disagrees with the design names its own place, which is none in the instrument file.
  const madePlace = (problem: Problem): Problem =>
    problem.code === 'make/file-disagrees' ? problem : placed(problem);
  const made = await inPlace(madePlace, () =>
    makeParts({ instrument, disc, head, proof: proved.proof }, wanted, setting),
  );
  const as = request.only === null ? 'result' : 'part';
  const written = await ports.output.write(request.out, made.files, stop, as);
  return { ...proved, written, leftOut: made.leftOut.map(placed) };
}
