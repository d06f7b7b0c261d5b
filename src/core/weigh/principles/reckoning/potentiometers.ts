import { showDegrees, showNumber, type Degrees } from '../../../units/index.ts';
import { arcPlaces } from '../../wait/windShares.ts';
import { FLAWLESS, withErrors, type ErrorItem, type Figures, type GapChance } from '../../principle.ts';
import type { Situation } from '../../situation.ts';

/** What sets one resistive track apart from another. */
export interface Track {
  /** Angle over which the wiper reads. [deg] */
  readonly electricalDeg: Degrees;
  /** How far the shaft can turn; `null` without end. [deg] */
  readonly travelDeg: Degrees | null;
  /** Largest departure from a straight line, as a share of the electrical angle. [-] */
  readonly linearity: number;
  readonly frictionNmm: number;
  /** Turns until the track is worn through. [-] */
  readonly lifeTurns: number;
}

/** Share of the needed range without a reading. [-], 0..1 */
export function deadShare(electricalDeg: Degrees, rangeDeg: Degrees): number {
  return Math.max(0, 1 - electricalDeg / rangeDeg);
}

/** How often the wind stands in the gap, with the gap on north and where the wind is rarest. */
function gapChance({ wind }: Situation, widthDeg: Degrees): GapChance {
  const { least } = arcPlaces(wind, widthDeg);
  return {
    widthDeg,
    atNorth: wind.shareIn(-widthDeg / 2, widthDeg),
    bestPlaced: least.share,
    bestAtDeg: least.atDeg,
  };
}

function errorsOf(track: Track, stepDeg: Degrees, gapDeg: Degrees): ErrorItem[] {
  const bent = track.linearity * track.electricalDeg;
  const items: ErrorItem[] = [
    {
      title: 'track not straight',
      deg: bent,
      how: `${showNumber(100 * track.linearity, 1)} % of ${showDegrees(track.electricalDeg)}`,
    },
    { title: 'step of the converter', deg: stepDeg / 2, how: `half of ${showDegrees(stepDeg)}` },
  ];
  if (gapDeg === 0) return items;
  const how = `a resistor pulls the open wiper to one end, and the middle of the ${showDegrees(gapDeg)} is told`;
  return [...items, { title: 'within the gap', deg: gapDeg / 2, how }];
}

/** Figures of a wiper on a resistive track. */
export function trackFigures(track: Track, situation: Situation): Figures {
  const { instrument, board, turnsPerYear } = situation;
  const { turnRangeDeg } = instrument.need;
  const stepDeg = track.electricalDeg / 2 ** board.converterBits;
  const turnsPast = track.travelDeg === null && turnRangeDeg > track.electricalDeg;
  const gapDeg = turnsPast ? 360 - track.electricalDeg : 0;
  const isWind = instrument.sensing.turnedBy === 'wind';
  return {
    ...FLAWLESS,
    deadShare: deadShare(track.electricalDeg, turnRangeDeg),
    gap: gapDeg > 0 && isWind ? gapChance(situation, gapDeg) : null,
    travelDeg: track.travelDeg,
    stepDeg,
    ...withErrors(errorsOf(track, stepDeg, gapDeg)),
    frictionNmm: track.frictionNmm,
    lifeYears: turnsPerYear > 0 ? track.lifeTurns / turnsPerYear : null,
  };
}
