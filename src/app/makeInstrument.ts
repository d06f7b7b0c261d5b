import { VanewrightError, type Problem } from '../core/error/index.ts';
import { makeParts, partNames, type MakePart } from '../core/make/index.ts';
import type { InstrumentFiles, OutputFolder, StopSign, Written } from '../ports/index.ts';
import { inPlace } from './design.ts';
import { proveInstrument, type ProvedDesign, type ProveRequest } from './proveInstrument.ts';

/** What to make, and where. */
export interface MakeRequest extends ProveRequest {
  readonly out: string;
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

/**
 * Writes the cut and print files, the program, the parts list and the build sheet of an instrument.
 *
 * @throws VanewrightError when the design cannot be made; nothing is written then.
 */
export async function makeInstrument(
  files: InstrumentFiles,
  output: OutputFolder,
  request: MakeRequest,
  stop: StopSign,
): Promise<MadeDesign> {
  const wanted = wantedParts(request.only);
  const proved = await proveInstrument(files, request);
  const { instrument, disc, head, placed } = proved.design;
  const made = await inPlace(placed, () =>
    makeParts({ instrument, disc, head, proof: proved.proof }, wanted),
  );
  const as = request.only === null ? 'result' : 'part';
  const written = await output.write(request.out, made.files, stop, as);
  return { ...proved, written, leftOut: made.leftOut.map(placed) };
}
