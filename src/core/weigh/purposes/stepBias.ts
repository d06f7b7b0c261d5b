import type { Degrees } from '../../units/index.ts';

/** From here on the first term alone is right to one part in a thousand. [-] */
const WIDE_SHARE = 0.35;

/**
 * Error that the steps still leave in a mean, at the worst place between two of them.
 *
 * A wind that wobbles falls on several steps, and their mean tells more than any one of them.
 *
 * @param stepDeg - Step of the disc. [deg], above 0
 * @param wobbleDeg - Standard deviation of the direction while averaging, taken as normal. [deg], 0 or more
 * @returns At most half a step, where nothing wobbles. [deg]
 * @source derived: the mean's error is the saw-tooth smoothed by the wobble, Σ (−1)ᵏ step/(πk) exp(−2π²k²w²/s²)
 * sin(2πkx/s); its first term is the largest by far once the wobble is a quarter of a step.
 * @check src/core/weigh/purposes/stepBias.test.ts
 */
export function stepBiasDeg(stepDeg: Degrees, wobbleDeg: Degrees): Degrees {
  const first = (stepDeg / Math.PI) * Math.exp(-2 * (Math.PI * (wobbleDeg / stepDeg)) ** 2);
  const wide = wobbleDeg >= WIDE_SHARE * stepDeg;
  return wide ? first : worstSum(stepDeg, wobbleDeg);
}

/** Terms summed where the wobble is small; what is left out is below a thousandth of a step. [-] */
const TERMS = 400;

/** Places within half a step at which the smoothed saw-tooth is looked at. [-] */
const PLACES = 200;

function worstSum(stepDeg: Degrees, wobbleDeg: Degrees): Degrees {
  if (wobbleDeg === 0) return stepDeg / 2;
  let worst = 0;
  for (let place = 1; place < PLACES; place++) {
    let sum = 0;
    for (let k = 1; k <= TERMS; k++) {
      const damping = Math.exp(-2 * (Math.PI * k * (wobbleDeg / stepDeg)) ** 2);
      if (damping < 1e-12) break;
      sum +=
        (((k % 2 === 0 ? 1 : -1) * stepDeg) / (Math.PI * k)) *
        damping *
        Math.sin((Math.PI * k * place) / PLACES);
    }
    worst = Math.max(worst, Math.abs(sum));
  }
  return worst;
}
