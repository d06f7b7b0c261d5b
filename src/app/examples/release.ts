import type { Random } from '../../core/units/index.ts';

/** An invented vane held off the stream and let go. */
export interface InventedRelease {
  readonly restDeg: number;
  readonly heldDeg: number;
  readonly damping: number;
  readonly periodS: number;
}

/** Seconds it is held, and filmed. [s] */
const HELD_S = 1;
const FILMED_S = 8;

/** Pictures of the film that were read. [1/s] */
const PICTURES_PER_S = 15;

/**
 * Headings from holding to rest, read off a film to a tenth of a degree.
 *
 * @source the damped oscillator: rest + held·exp(−ζωt)(cos ω′t + ζω/ω′ sin ω′t).
 */
export function releaseCsv({ restDeg, heldDeg, damping, periodS }: InventedRelease, random: Random): string {
  const damped = (2 * Math.PI) / periodS;
  const natural = damped / Math.sqrt(1 - damping ** 2);
  const rows = Array.from({ length: FILMED_S * PICTURES_PER_S }, (_, i) => {
    const t = Math.max(0, i / PICTURES_PER_S - HELD_S);
    const swing = Math.cos(damped * t) + ((damping * natural) / damped) * Math.sin(damped * t);
    const heading = restDeg + heldDeg * Math.exp(-damping * natural * t) * swing + 0.05 * random.normal();
    return `${(i / PICTURES_PER_S).toFixed(3)},${heading.toFixed(1)}`;
  });
  return `time_s,heading_deg\n${rows.join('\n')}\n`;
}
