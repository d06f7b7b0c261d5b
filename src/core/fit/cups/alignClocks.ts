import { cupsRefusal } from './refusals.ts';

/** A series at equal steps of time. */
export interface EvenSeries {
  readonly startMs: number;
  readonly stepMs: number;
  readonly values: readonly number[];
}

/** How two clocks are apart. */
export interface ClockOffset {
  /** To be added to the first clock to get the second. [ms] */
  readonly addMs: number;
  /** Likeness of the two series then. [-], -1..1 */
  readonly correlation: number;
}

/** Below this the two series do not show the same ride. [-]; own choice */
const LEAST_CORRELATION = 0.7;
/** What it costs to leave all of a ride out of the comparison. [-]; own choice */
const MISSED_COST = 0.5;
/** Fewer steps than this in common say nothing. [-] */
const LEAST_COMMON = 20;

function correlationAt(
  a: readonly number[],
  b: readonly number[],
  shift: number,
): { value: number; common: number } {
  let [n, sa, sb, saa, sbb, sab] = [0, 0, 0, 0, 0, 0];
  for (let i = Math.max(0, -shift); i < a.length && i + shift < b.length; i++) {
    const [x, y] = [a[i]!, b[i + shift]!];
    n++;
    sa += x;
    sb += y;
    saa += x * x;
    sbb += y * y;
    sab += x * y;
  }
  const variance = (saa - (sa * sa) / n) * (sbb - (sb * sb) / n);
  return { value: n > 2 && variance > 0 ? (sab - (sa * sb) / n) / Math.sqrt(variance) : -1, common: n };
}

/**
 * Offset of two clocks by where two series of one ride look most alike.
 *
 * @param first - Series by the first clock, such as the pulse rate.
 * @param second - Series by the second clock with the same step, such as the speed over ground.
 * @returns To a fraction of a step, by the parabola through the three best shifts. [ms]
 * @throws `fit/clocks-not-aligned`
 */
export function clockOffset(first: EvenSeries, second: EvenSeries): ClockOffset {
  const [a, b] = [first.values, second.values];
  const least = Math.max(LEAST_COMMON, Math.floor(0.5 * Math.min(a.length, b.length)));
  const whole = Math.min(a.length, b.length);
  let best = { shift: 0, value: -1, score: -Infinity };
  for (let shift = -a.length + 1; shift < b.length; shift++) {
    const { value, common } = correlationAt(a, b, shift);
    // A ride out and back looks like itself half a ride later: what covers more of it counts for more.
    const score = value - MISSED_COST * (1 - common / whole);
    if (common >= least && score > best.score) best = { shift, value, score };
  }
  if (best.value < LEAST_CORRELATION) {
    throw cupsRefusal('fit/clocks-not-aligned', {
      what: 'Pulses and track do not look like the same ride, whatever their clocks.',
      where: 'track',
      got: `likeness ${best.value.toFixed(2)} at best`,
      allowed: `${LEAST_CORRELATION} or more`,
      fix: 'Change the speed clearly a few times during the run, and record both from before the start to after the end.',
    });
  }
  const [before, after] = [-1, 1].map((step) => correlationAt(a, b, best.shift + step).value);
  const bend = before! - 2 * best.value + after!;
  const fraction = bend < 0 ? Math.max(-0.5, Math.min(0.5, (before! - after!) / (2 * bend))) : 0;
  return {
    addMs: second.startMs - first.startMs + (best.shift + fraction) * second.stepMs,
    correlation: best.value,
  };
}
