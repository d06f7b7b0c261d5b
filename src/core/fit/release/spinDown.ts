import { VanewrightError } from '../../error/index.ts';
import { linearRegression } from '../../wind/index.ts';

/** How freely the cups turn. */
export interface SpinDown {
  /** Slowing down by the bearing alone, whatever the speed. [Hz/s] of pulses */
  readonly bearingHzPerS: number;
  /** Slowing down in proportion to the speed, by the air. [1/s] */
  readonly airPerS: number;
  /** Time from `fromHz` to standing still: shorter year by year as the bearing wears. [s] */
  readonly spinDownS: number;
  readonly fromHz: number;
}

/** Pulses a second from which the time is told, so that years can be compared. [Hz] */
const FROM_HZ = 2;
const LEAST_PULSES = 12;

/**
 * Spin-down of the cups: spun by hand in still air and let go.
 *
 * @param pulsesS - When each pulse came. [s], rising, n ≥ 12
 * @returns Times to a standstill from the law −dω/dt = c + k ω.
 * @throws `fit/spin-down-too-short`, `fit/spin-down-not-slowing`
 * @source derived: t = ln(1 + k ω/c)/k; friction of a bearing plus drag of slow air.
 * @check src/core/fit/release/release.test.ts
 */
export function spinDown(pulsesS: readonly number[]): SpinDown {
  if (pulsesS.length < LEAST_PULSES) {
    throw refusal('fit/spin-down-too-short', `${pulsesS.length} pulses`, `${LEAST_PULSES} pulses or more`);
  }
  const rates = pulsesS
    .slice(1)
    .map((time, i) => ({ at: (time + pulsesS[i]!) / 2, hz: 1 / (time - pulsesS[i]!) }));
  const slowing = rates.slice(2).map((rate, i) => {
    const before = rates[i]!;
    return { hz: (rate.hz + before.hz) / 2, perS: (before.hz - rate.hz) / (rate.at - before.at) };
  });
  const line = linearRegression(
    slowing.map(({ hz }) => hz),
    slowing.map(({ perS }) => perS),
  );
  const bearing = line.intercept;
  const air = Math.max(0, line.slope);
  if (!(bearing > 0)) {
    throw refusal(
      'fit/spin-down-not-slowing',
      'cups that do not slow to a standstill',
      'cups that stop by themselves',
    );
  }
  const spinDownS = air > 1e-9 ? Math.log1p((air * FROM_HZ) / bearing) / air : FROM_HZ / bearing;
  return { bearingHzPerS: bearing, airPerS: air, spinDownS, fromHz: FROM_HZ };
}

function refusal(code: string, got: string, allowed: string): VanewrightError {
  return new VanewrightError({
    code,
    what: 'The pulses do not show the cups spinning down.',
    where: 'pulses',
    got,
    allowed,
    fix: 'Spin the cups by hand to three turns a second in a closed room, let go, and record until they stand.',
  });
}
