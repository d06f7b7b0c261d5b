import type { Word } from '../codes/index.ts';
import type { Degrees } from '../units/index.ts';

/** One channel as it was found on the finished build. */
export interface AsBuiltChannel {
  /** Pin, or input of a multiplexer or shift register, that it really is on. */
  readonly pin: string;
  /** Middle of its counts in front of an open window, and behind solid land. [counts] */
  readonly litCounts: number;
  readonly darkCounts: number;
  /** It turns low at or below `lowCounts`, high at or above `highCounts`. [counts] */
  readonly lowCounts: number;
  readonly highCounts: number;
  /** Whether it reads more counts in light than in the dark. */
  readonly litIsHigh: boolean;
  /**
   * Place across a soft edge, 0 dark and 1 lit, at equally spaced counts from `darkCounts` to `litCounts`; behind a
   * slit that is the share of light. `null` where nothing is known, and then nothing is interpolated. [-], n ≥ 2
   */
  readonly edgeCurve: readonly number[] | null;
  /** Turn from dark to lit across one edge; `null` exactly when `edgeCurve` is. [deg] */
  readonly edgeWidthDeg: Degrees | null;
}

/** Where a word really stands on the disc. */
export interface AsBuiltPosition {
  /** Levels of the code, channel 0 first: light is `disc.windowLevel`. */
  readonly word: Word;
  /** Middle of the piece of the turn that shows it, as a disc angle. [deg], 0..360 */
  readonly centreDeg: Degrees;
  /** From that middle to either end. [deg] */
  readonly halfWidthDeg: Degrees;
}

/** What a recorded turn of the finished build has shown; the program reads the disc by it. */
export interface AsBuilt {
  /** When the turn was recorded; ISO 8601, UTC. */
  readonly recordedAt: string;
  /** `asBuiltHash` of what follows, as printed on the certificate. */
  readonly tableHash: string;
  /** In the order of the code's channels. */
  readonly channels: readonly AsBuiltChannel[];
  /** Whether headings follow from disc angles as `head.patternedFace` says, or run the other way round. */
  readonly sense: 'same' | 'reversed';
  /** Positions never seen are left out. */
  readonly positions: readonly AsBuiltPosition[];
}

/** Cyclic redundancy check of 32 bits, as Ethernet has it: one table-free loop, since it runs once a design. */
function crc32(text: string): number {
  let check = 0xffff_ffff;
  for (let i = 0; i < text.length; i++) {
    check ^= text.charCodeAt(i) & 0xff;
    for (let bit = 0; bit < 8; bit++) check = (check >>> 1) ^ (check & 1 ? 0xedb8_8320 : 0);
  }
  return ~check >>> 0;
}

/**
 * Short name of an as-built table: equal tables have equal ones, so that sheet, certificate and controller compare.
 *
 * @param asBuilt - All of it but the time of the recording; angles count to a thousandth. [deg]
 * @returns Eight digits 0-9 a-f.
 * @source IEEE 802.3 (2018) clause 3.2.9: generator of the check sequence.
 * @check src/core/instrument/asBuilt.test.ts
 */
export function asBuiltHash({
  channels,
  sense,
  positions,
}: Pick<AsBuilt, 'channels' | 'sense' | 'positions'>): string {
  const rows = [
    sense,
    ...channels.map((c) => [c.pin, c.lowCounts, c.highCounts, c.litIsHigh ? 1 : 0].join(' ')),
    ...positions.map((p) => [p.word, p.centreDeg.toFixed(3), p.halfWidthDeg.toFixed(3)].join(' ')),
  ];
  return crc32(rows.join('\n')).toString(16).padStart(8, '0');
}
