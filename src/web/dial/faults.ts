import type { HeadPlan } from '../../core/head/index.ts';
import type { LiveFaults } from '../../core/proof/index.ts';

/** What the sliders of the page say is wrong with the build. */
export interface FaultSettings {
  /** Factor on the time every sensor takes. [-] */
  readonly slowness: number;
  /** Pattern off the shaft, along the index mark. [mm] */
  readonly boreMm: number;
  /** The channel whose lamp or place is wrong. */
  readonly channel: number;
  /** Light of its lamp. [%] */
  readonly lampPercent: number;
  /** How far it sits from its place along its track. [mm] */
  readonly asideMm: number;
  /** Light beside the lamps, of the light through an open window. [%] */
  readonly daylightPercent: number;
}

/** A build as drawn. */
export const NO_FAULTS: FaultSettings = {
  slowness: 1,
  boreMm: 0,
  channel: 0,
  lampPercent: 100,
  asideMm: 0,
  daylightPercent: 0,
};

/** A lamp that has gone out still leaves this much, so that the model stays one of light. [-] */
const DEAD_LAMP = 1e-9;

/** The settings as faults of a head; a channel that this head does not have is left alone. */
export function faultsOf(settings: FaultSettings, head: HeadPlan): LiveFaults {
  const { slowness, boreMm, channel, lampPercent, asideMm, daylightPercent } = settings;
  const only = (value: number, others: number): number[] =>
    head.channels.map((_, c) => (c === channel ? value : others));
  return {
    slowness,
    boreMm: [boreMm, 0],
    lamps: only(Math.max(DEAD_LAMP, lampPercent / 100), 1),
    alongMm: only(asideMm, 0),
    addedLight: daylightPercent / 100,
  };
}

/** Whether lamps and daylight are followed: over marks of three levels only their shares of the spot are. */
export function feelsLight(head: HeadPlan): boolean {
  return head.marks === null;
}
