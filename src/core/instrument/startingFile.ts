import { sectorAdvice } from '../codes/index.ts';
import { throwIfAny } from '../error/index.ts';
import { problemAt } from './problems/fieldProblem.ts';
import { issueProblems } from './problems/issueProblems.ts';
import { instrumentSchema } from './schema/instrumentSchema.ts';
import { pathText } from './yaml/places.ts';

/** Positions of the first vane. [-] */
const POSITIONS = 32;

/** Which wind roses the positions fill evenly, and what must stand on north for that. */
function roseNote(): string {
  const fair = sectorAdvice(POSITIONS).filter(({ north }) => north === 'edge');
  return `Roses of ${fair.map(({ sectors }) => sectors).join(', ')} sectors fill evenly while the boundary of two positions stands on north, as it does at 0.`;
}

/**
 * A commented instrument file to begin from: a five-track printed vane of 32 positions that proves clean.
 *
 * @param name - What the maker calls the instrument; one line of text.
 * @returns YAML that `readInstrument` accepts as it is.
 * @throws `instrument/wrong-length` or `instrument/bad-text` for a name that the file could not hold.
 */
export function startingFile(name: string): string {
  const checked = instrumentSchema.shape.name.safeParse(name);
  const issues = (checked.error?.issues ?? []).map((issue) => ({ ...issue, path: ['name', ...issue.path] }));
  const problems = issues.flatMap((issue) => issueProblems(issue, { name }));
  throwIfAny(problems.map((problem) => problemAt(pathText(problem.path), problem)));
  return `vanewright: 1
# Every field is explained in docs/instrument-file.md. Leave a field out and its default is used.
# Lengths are in mm, angles in degrees; every name ends in its unit. Write numbers alone: 90, not 90 mm.

name: ${JSON.stringify(name)}

need:
  positions: ${POSITIONS} # equal steps of a turn; 32 steps are 11.25 degrees each
  accuracyDeg: 10 # largest error you accept, the half step of 5.6 degrees included
  turnRateDegPerS: 60 # fastest turn at which every position must still be read
  wantedYield: 0.95 # 95 builds in 100 must meet the need

disc:
  code: reflected-gray # one track changes at a time; natural-binary shows why that matters
  diameterMm: 90
  bore: { shape: d, diameterMm: 5, acrossFlatMm: 4.5 } # or { shape: round, diameterMm: 5 }
  hubDiameterMm: 30 # solid round the bore
  thicknessMm: 2
  webMm: 1.2 # ring between two tracks: three lines of a 0.4 mm nozzle
  rimMm: 2.4 # ring outside the outermost track
  process:
    kind: fdm # fdm, laser or film
    # Print a coupon, measure it, and write what you found; these are the defaults:
    # minWindowMm: 1
    # minLandMm: 0.8
    # minWebMm: 0.8
    # edgeSdMm: 0.1
    # windowGrowthMm: -0.2
    # boreSdMm: 0.1

head:
  detector:
    kind: photoresistor # or phototransistor
    litOhm: 2000 # window open, on your multimeter
    darkOhm: 200000 # behind solid land
  light: { kind: led, currentMa: 10 }
  aperture: { shape: slit, widthMm: 1.2, lengthMm: 2 } # mask over the sensor, width along the track
  patternedFace: up # or down: which way the side you look at on the drawing faces

circuit:
  resistorOhm: null # null takes the recommended resistor
  thresholds: per-channel # measured on the build

controller:
  board: atmega328p
  lineIntervalMs: 250

# cups: null means there are none; with cups, write for example
# cups: { pulsesPerTurn: 1, pin: D2, quietUs: 1500 }
cups: null

site:
  place: not stated
  mastHeightM: 3
  # ${roseNote()}
  northOffsetDeg: 0 # heading shown when the index mark is at the head's reference line
`;
}
