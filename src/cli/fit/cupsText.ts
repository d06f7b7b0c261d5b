import type { CupsLine, FittedCupsBuild } from '../../app/api.ts';
import { showNumber } from '../../core/units/index.ts';
import { part } from '../textParts.ts';
import { leftOutLines } from './leftOutLines.ts';

/** Longest bar of the histogram. [characters] */
const BAR = 30;

function bounceLines({ bounce }: FittedCupsBuild): string[] {
  if (!bounce) return [];
  const { histogram, longestBounceUs, shortestRealUs, quietUs, mostHz, bounceShare } = bounce;
  const most = Math.max(...histogram.map(({ gaps }) => gaps));
  return part('Gaps between edges', [
    ...histogram.map(
      ({ toUs, gaps }) =>
        `to ${showNumber(toUs, 0).padStart(9)} us ${String(gaps).padStart(6)} ${'#'.repeat(Math.ceil((BAR * gaps) / most))}`,
    ),
    `${showNumber(100 * bounceShare, 0)} % are bounces, the longest ${showNumber(longestBounceUs, 0)} us; real gaps begin at ${showNumber(shortestRealUs, 0)} us.`,
    `quiet time       ${quietUs} us, which counts up to ${showNumber(mostHz, 0)} pulses a second`,
  ]);
}

function turnLines({ turn }: FittedCupsBuild): string[] {
  if (!turn) return [];
  return part('Turned by hand', [
    `pulses a turn    ${turn.pulsesPerTurn}, from ${turn.pulses} pulses in ${turn.turns} turns`,
    ...turn.cautions.map((caution) => `- ${caution}`),
  ]);
}

function startingLine({ beside }: CupsLine): string[] {
  if (!beside) return [];
  const { stoodIn, turnedIn } = beside.startingMPerS;
  const stood = stoodIn === null ? 'never seen standing' : `seen standing in ${showNumber(stoodIn, 2)} m/s`;
  return [`starting speed   turned in ${showNumber(turnedIn, 2)} m/s at the least, ${stood}`];
}

function carLines({ car }: CupsLine): string[] {
  if (!car) return [];
  return [
    `car run          ${car.legs.length} legs; ${showNumber(car.droppedS, 0)} s of turns, braking and standing dropped`,
    `clocks           ${showNumber(car.clockAddMs / 1000, 1)} s added to the clock of the pulses`,
    `wind on the road ${showNumber(car.windMPerS, 1)} m/s from ${showNumber(car.windFromDeg, 0)} degrees, taken out`,
    ...car.cautions.map((caution) => `- ${caution}`),
  ];
}

function lineLines({ line }: FittedCupsBuild): string[] {
  if (!line) return [];
  const { calibration, offsetErrorMPerS, pathErrorM, beside, cupFactor } = line;
  const { offsetMPerS, pathPerPulseM, scatterMPerS, largestResidualMPerS, range, standing } = calibration;
  const points = calibration.line.residuals.length;
  const worth = beside ? `, worth ${showNumber(beside.independentBlocks, 0)} independent ones` : '';
  return part('Wind speed = a + b x pulses a second', [
    `a                ${showNumber(offsetMPerS, 3)} ± ${showNumber(offsetErrorMPerS, 3)} m/s, one standard error`,
    `b                ${showNumber(pathPerPulseM, 4)} ± ${showNumber(pathErrorM, 4)} m a pulse`,
    `from             ${points} points${worth}, ${standing} more with standing cups left out`,
    `holds            from ${showNumber(range.lowMPerS, 1)} to ${showNumber(range.highMPerS, 1)} m/s`,
    `points off it    ${showNumber(scatterMPerS, 2)} m/s as a rule, ${showNumber(largestResidualMPerS, 2)} m/s at most`,
    `cup factor       ${showNumber(cupFactor, 2)}; 2 to a little over 3 as a rule, half or twice that hints at pulses counted wrongly`,
    ...startingLine(line),
    ...carLines(line),
    ...calibration.cautions.map(({ what, fix }) => `- ${what} ${fix}`),
  ]);
}

/** What `fit cups` prints. */
export function cupsText(cups: FittedCupsBuild, path: string): string {
  const { name, fields, isWritten, written, leftOut } = cups;
  const set = Object.entries(fields).map(([field, value]) => `cups.${field}: ${value}`);
  return [
    `${name}: the cups`,
    ...turnLines(cups),
    ...bounceLines(cups),
    ...lineLines(cups),
    ...part('Lines left out while reading', leftOutLines(leftOut)),
    ...part('For the instrument file', set),
    '',
    isWritten
      ? `Wrote them to ${path}. Make the program again, so that it uses them.`
      : 'Nothing was written to the file; --write does.',
    ...(written ? [`Wrote ${written.paths.join(', ')}.`] : []),
  ].join('\n');
}

function lineDocument(line: CupsLine) {
  const { calibration, offsetErrorMPerS, pathErrorM, beside, car, cupFactor } = line;
  const { offsetMPerS, pathPerPulseM, scatterMPerS, largestResidualMPerS, range, standing } = calibration;
  return {
    offsetMPerS,
    offsetErrorMPerS,
    pathPerPulseM,
    pathErrorM,
    scatterMPerS,
    largestResidualMPerS,
    range,
    points: calibration.line.residuals.length,
    standing,
    cupFactor,
    independentBlocks: beside?.independentBlocks ?? null,
    startingMPerS: beside?.startingMPerS ?? null,
    car: car && {
      legs: car.legs,
      droppedS: car.droppedS,
      clockAddMs: car.clockAddMs,
      windFromDeg: car.windFromDeg,
      windMPerS: car.windMPerS,
      cautions: car.cautions,
    },
    cautions: calibration.cautions,
  };
}

/** The same as data. */
export function cupsDocument(cups: FittedCupsBuild): Record<string, unknown> {
  const { name, bounce, turn, line, fields, leftOut, isWritten, written } = cups;
  return {
    command: 'fit cups',
    ok: true,
    name,
    bounce,
    turn,
    line: line && lineDocument(line),
    fields,
    leftOut,
    isWritten,
    files: written?.paths ?? [],
  };
}
