/** Everything that the detectors can name; one word a fault, the same in reports, alerts and docs/faults.md. */
export const faultKinds = [
  'stuck-channel',
  'illegal-words',
  'dim-light',
  'ambient-leak',
  'condensation',
  'dirty-sector',
  'skipped-steps',
  'chatter',
  'contact-bounce',
  'slipped-clamp',
  'frozen-vane',
  'seized-cups',
  'bearing-wear',
  'lost-power',
  'clock-jump',
] as const;
/** Name of a fault. */
export type FaultKind = (typeof faultKinds)[number];

/** What a fault makes untrue while it lasts; a review leaves that out of its means. */
export type Spoils = 'heading' | 'speed' | 'both' | 'nothing';

/** One fault that the record shows. */
export interface Finding {
  readonly kind: FaultKind;
  /** From when on, as far as the record tells. [ms UTC] */
  readonly sinceMs: number;
  /** When it was over; `null` = it lasts to the end of what was read. [ms UTC] */
  readonly untilMs: number | null;
  /** When the evidence was enough: an alert could not have come earlier. [ms UTC] */
  readonly noticedMs: number;
  /** Channels to blame, the likeliest first; empty where no channel is. [-] */
  readonly channels: readonly number[];
  /** Positions of the disc it is about; empty = all of them. [-] */
  readonly positions: readonly number[];
  /** One line, with what and where. */
  readonly title: string;
  /** What in the record says so, with numbers and units. */
  readonly evidence: string;
  /** Own estimate of the chance that a sound instrument shows as much at least once in a year (docs/faults.md). [-], 0..1 */
  readonly falseAlarmChance: number;
  /** The one thing to do. */
  readonly todo: string;
  readonly spoils: Spoils;
  /** Days until readings go wrong if it goes on like this; `null` where that cannot be told. [d] */
  readonly daysLeft: number | null;
}
