import { radToDeg, turnBetween, type Degrees } from '../../units/index.ts';
import { badReading } from '../refusal.ts';
import { meanHeading } from './meanHeading.ts';

/** Factor of the cubic term: makes the spread of an even circle 90° times 2/√3 (Yamartino 1984). [-] */
const YAMARTINO_CUBIC = 2 / Math.sqrt(3) - 1;

/**
 * Standard deviation of direction from the agreement alone, so from one pass; never above 103.923°.
 *
 * Within 2 % of the exact spread for distributions that occur, at most about 15 % off (two opposite
 * directions). With no agreement it gives its largest value, since the readings are everywhere.
 *
 * @param agreement - Length R of the mean unit vector. [-], 0..1; a rounding above 1 counts as 1
 * @returns Yamartino's estimate. [deg]
 * @throws `wind/bad-reading` when the agreement is not in 0..1.
 * @source R. J. Yamartino, J. Climate Appl. Meteor. 23 (1984) 1362–1366,
 *   doi 10.1175/1520-0450(1984)023<1362:ACOSPE>2.0.CO;2; the form is that of open re-implementations.
 * @check test/published/yamartino-1984/spread.test.ts
 */
export function yamartinoSpread(agreement: number): Degrees {
  const epsilon = Math.sqrt(1 - checkedAgreement(agreement, 'yamartinoSpread(agreement)') ** 2);
  return radToDeg(Math.asin(epsilon) * (1 + YAMARTINO_CUBIC * epsilon ** 3));
}

/**
 * Circular standard deviation √(-2 ln R), another measure than Yamartino's: it grows without limit.
 *
 * @param agreement - Length R of the mean unit vector. [-], 0..1
 * @returns `null` when R < 1e-12 (the readings cancel out). [deg]
 * @throws `wind/bad-reading` when the agreement is not in 0..1.
 * @source Mardia & Jupp, Directional Statistics, Wiley 2000 (circular standard deviation).
 * @check test/published/numpy-scipy/circular.test.ts
 */
export function circularSpread(agreement: number): Degrees | null {
  const r = checkedAgreement(agreement, 'circularSpread(agreement)');
  return r < 1e-12 ? null : radToDeg(Math.sqrt(-2 * Math.log(r)));
}

/**
 * Standard deviation of direction, exactly: of the shortest turns from the mean heading, in two passes.
 *
 * @param headings - Clockwise from true north. [deg], n ≥ 1
 * @returns Population standard deviation. `null` when the readings cancel out, as there is no mean. [deg]
 * @throws `wind/no-readings`, `wind/bad-reading` as `meanHeading`.
 * @source The quantity that EPA-454/R-99-005 section 6.2.1 and Yamartino (1984) estimate.
 * @check test/published/yamartino-1984/spread.test.ts
 */
export function exactSpread(headings: readonly Degrees[]): Degrees | null {
  const { headingDeg } = meanHeading(headings);
  if (headingDeg === null) return null;
  const turns = headings.map((heading) => turnBetween(headingDeg, heading));
  const mean = turns.reduce((sum, turn) => sum + turn, 0) / turns.length;
  return Math.sqrt(turns.reduce((sum, turn) => sum + (turn - mean) ** 2, 0) / turns.length);
}

function checkedAgreement(agreement: number, where: string): number {
  if (!(agreement >= 0 && agreement <= 1 + 1e-9)) throw badReading(where, agreement, '0..1 [-]');
  return Math.min(1, agreement);
}
