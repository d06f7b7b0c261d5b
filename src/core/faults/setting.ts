import type { CodeTable } from '../codes/index.ts';
import type { HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';

/** Counts of one channel as they should be. */
export interface ChannelLevels {
  /** Behind an open window and behind solid land. [counts] */
  readonly litCounts: number;
  readonly darkCounts: number;
  /** The threshold that lit counts must not come to. [counts] */
  readonly litLimitCounts: number;
}

/** What the detectors know of an instrument before its samples come. */
export interface FaultSetting {
  readonly code: CodeTable;
  /** Level of the code that lets light through. [-] */
  readonly windowLevel: 0 | 1;
  /** Each channel, as built where a recorded turn has shown it; empty for a disc of three marks. */
  readonly levels: readonly ChannelLevels[];
  /** Fastest turn that is still read at every position. [deg/s] */
  readonly limitDegPerS: number;
  readonly hasCups: boolean;
  /** Where it stands; `null` = not stated, and nothing is said of the sun. [deg] */
  readonly place: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
}

/** The parts of an instrument that count here. */
type Known = Pick<Instrument, 'asBuilt' | 'cups' | 'site'>;

/**
 * What the detectors need of a design.
 *
 * @param instrument - As-built levels, cups and place are used. [counts], [deg]
 * @param head - Its code, levels and speed limit are used. [counts], [deg/s]
 */
export function faultSetting({ asBuilt, cups, site }: Known, head: HeadPlan): FaultSetting {
  const { latitudeDeg, longitudeDeg } = site;
  return {
    code: head.disc.code,
    windowLevel: head.disc.spec.windowLevel,
    levels: head.marks ? [] : levelsOf(asBuilt, head),
    limitDegPerS: head.speed.limitDegPerS,
    hasCups: cups !== null,
    place: latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg },
  };
}

function levelsOf(asBuilt: Known['asBuilt'], { channels, levels }: HeadPlan): ChannelLevels[] {
  return channels.map((_, channel) => {
    const { litCounts, darkCounts, lowCounts, highCounts } = asBuilt?.channels[channel] ?? levels;
    return { litCounts, darkCounts, litLimitCounts: litCounts > darkCounts ? highCounts : lowCounts };
  });
}
