/** Light of one moment. */
export interface LightMoment {
  readonly position: number | null;
  /** Light of each channel, 1 = as measured at first. [-] */
  readonly lights: readonly number[];
  /** Whether each channel was read as lit. */
  readonly isLit: readonly boolean[];
}

/** What an hour's light came to. */
export interface HourLight {
  /** [ms UTC] */
  readonly startMs: number;
  readonly endMs: number;
  /** Brightest moment of each channel while it was lit; `null` = lit in fewer than three. [-] */
  readonly lit: readonly (number | null)[];
  /** Darkest moment of each channel while it was dark; `null` = dark in fewer than three. [-] */
  readonly dark: readonly (number | null)[];
  readonly moments: readonly LightMoment[];
  /** Every channel lit in every sample of the hour, though there was wind. */
  readonly isFlooded: boolean;
}

/** Looks for faults an hour of light at a time. */
export interface HourDetector {
  hour(hour: HourLight): void;
}

const LEAST = 3;

/** Brightest of the lit moments, or darkest of the dark ones, of each channel. [-] */
export function extremes(
  moments: readonly LightMoment[],
  channels: number,
  ofLit: boolean,
): (number | null)[] {
  return Array.from({ length: channels }, (_, channel) => {
    const values = moments.flatMap(({ lights, isLit }) =>
      isLit[channel] === ofLit ? [lights[channel]!] : [],
    );
    if (values.length < LEAST) return null;
    return ofLit ? Math.max(...values) : Math.min(...values);
  });
}
