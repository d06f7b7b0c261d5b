import type { CodeTable } from '../codes/index.ts';
import { signalOf, type HeadPlan } from '../head/index.ts';
import type { Instrument } from '../instrument/index.ts';

/** How the counts of one channel tell its light. */
export interface ChannelLight {
  /** Light that counts mean: 0 behind solid land, 1 in front of an open window as it was measured. [counts] to [-] */
  lightOf(counts: number): number;
  /** Light at which the channel is no longer called lit. [-] */
  readonly limit: number;
}

/** What the detectors know of an instrument before its samples come. */
export interface FaultSetting {
  readonly code: CodeTable;
  /** Level of the code that lets light through. [-] */
  readonly windowLevel: 0 | 1;
  /** Each channel, as built where a recorded turn has shown it; empty for a disc of three marks. */
  readonly lights: readonly ChannelLight[];
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
    lights: head.marks ? [] : lightsOf(asBuilt, head),
    limitDegPerS: head.speed.limitDegPerS,
    hasCups: cups !== null,
    place: latitudeDeg === null || longitudeDeg === null ? null : { latitudeDeg, longitudeDeg },
  };
}

/** The signal chain turned round, so that a log-like sensor's small change of counts shows as the loss of light it is. */
function lightsOf(
  asBuilt: Known['asBuilt'],
  { channels, levels, spec, circuit, board }: HeadPlan,
): ChannelLight[] {
  const signal = signalOf(spec.detector, levels.resistorOhm, circuit.sensorTo, board);
  return channels.map((_, channel) => {
    const { litCounts, darkCounts, lowCounts, highCounts } = asBuilt?.channels[channel] ?? levels;
    const raw = (counts: number): number => signal.light(counts, 1, 1);
    const [lit, dark] = [raw(litCounts), raw(darkCounts)];
    const lightOf = (counts: number): number =>
      Math.min(4, Math.max(-1, (raw(counts) - dark) / (lit - dark)));
    return { lightOf, limit: lightOf(litCounts > darkCounts ? highCounts : lowCounts) };
  });
}
