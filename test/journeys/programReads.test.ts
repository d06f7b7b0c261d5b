import { describe, expect, it } from 'vitest';
import { codeTable } from '../../src/core/codes/index.ts';
import { programFor } from '../../src/core/program/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import {
  DARK_COUNTS,
  freshLine,
  HIGH_COUNTS,
  jettyHead,
  jettyInstrument,
  lineOf,
  LIT_COUNTS,
  LOW_COUNTS,
  setCounts,
  type VaneWishes,
} from '../support/avrVane.ts';

// The chip is given the voltages of a disc worked out here: vane heading to disc angle by the geometry of the mast,
// disc angle to light by the formula of the code. Nothing of it comes from the program step.

/** What a vane shows its sensors. */
interface Vane {
  readonly wishes: VaneWishes;
  readonly channels: number;
  /** Level of a channel's mark at a disc angle. [deg] */
  levelAt(channel: number, discAngle: number): number;
}

const wrap = (angle: number): number => ((angle % 360) + 360) % 360;
const apart = (a: number, b: number): number => Math.min(wrap(a - b), wrap(b - a));

/** Gray's formula, G(k) = k XOR floor(k/2), channel 0 the highest bit; the middle words of the next full code. */
function grayVane(positions: number, wishes: VaneWishes = {}): Vane {
  const channels = Math.ceil(Math.log2(positions));
  const first = (2 ** channels - positions) / 2;
  return {
    wishes: { ...wishes, positions },
    channels,
    levelAt: (channel, discAngle) => {
      const k = first + Math.floor((wrap(discAngle) / 360) * positions);
      return ((k ^ Math.floor(k / 2)) >> (channels - 1 - channel)) & 1;
    },
  };
}

/** One track, open over half a turn, six sensors 30 degrees apart: 12 of 64 words are on the disc. */
function ringVane(): Vane {
  const tracks = [{ levelCount: 2 as const, startsDeg: [0, 180], levels: [1, 0] as const }];
  const channels = Array.from({ length: 6 }, (_, c) => ({ track: 0, angleDeg: 30 * c }));
  return {
    wishes: { positions: 12, code: codeTable('half-ring', 12, { tracks, channels }) },
    channels: 6,
    levelAt: (channel, discAngle) => (wrap(discAngle + 30 * channel) < 180 ? 1 : 0),
  };
}

async function chipFor({ wishes }: Vane): Promise<AvrChip> {
  const instrument = jettyInstrument(wishes);
  const { hex } = await buildAvr(programFor(instrument, jettyHead(instrument, wishes)).source);
  return new AvrChip(hex);
}

/** Counts of a channel while the vane stands at a heading. */
function countsAt({ wishes, levelAt }: Vane, channel: number, heading: number): number {
  const clockwise = heading - (wishes.northOffsetDeg ?? 0);
  // The head stays; on a face that looks up the marks under it go back as the vane goes clockwise.
  const discAngle = (wishes.patternedFace ?? 'up') === 'up' ? -clockwise : clockwise;
  const lit = levelAt(channel, discAngle) === (wishes.windowLevel ?? 1);
  return lit === ((wishes.sensorTo ?? 'supply') === 'supply') ? LIT_COUNTS : DARK_COUNTS;
}

/** Turns the vane there; returns the counts that the line must carry. */
function pointAt(chip: AvrChip, vane: Vane, heading: number): number[] {
  const counts = Array.from({ length: vane.channels }, (_, channel) => countsAt(vane, channel, heading));
  for (const [channel, value] of counts.entries()) setCounts(chip, channel, value);
  return counts;
}

const designs: readonly (readonly [string, Vane])[] = [
  ['32 positions, light gives high counts', grayVane(32)],
  [
    '20 positions, light gives low counts, the pattern below, windows at level 0, sensors read twice',
    grayVane(20, {
      sensorTo: 'ground',
      patternedFace: 'down',
      windowLevel: 0,
      northOffsetDeg: 123.4,
      sourceOhm: 18_200,
      lineIntervalMs: 3,
      cups: null,
    }),
  ],
  ['12 positions on six channels, looked up in the sorted list', ringVane()],
];

describe('the program on the chip', () => {
  it.each(designs)('prints the heading of every position, both ways round: %s', async (_, vane) => {
    const chip = await chipFor(vane);
    const positions = vane.wishes.positions!;
    const middle = (step: number): number =>
      wrap((vane.wishes.northOffsetDeg ?? 0) + ((step + 0.5) * 360) / positions);
    const there = Array.from({ length: positions + 1 }, (_, step) => middle(step));
    for (const heading of [...there, ...there.toReversed()]) {
      const counts = pointAt(chip, vane, heading);
      const line = freshLine(chip);
      expect(apart(line.headingDeg!, heading)).toBeLessThanOrEqual(0.005 + 1e-9); // printed to 0.01
      expect(line.counts).toEqual(counts);
      expect(line.flags).toEqual([]);
    }
    for (const [number, text] of chip.lines.slice(0, -1).entries()) {
      expect(lineOf(text).lineNumber).toBe(number); // not one line was lost
    }
  });

  it('names the middle of the step wherever in the step the vane stands', async () => {
    const vane = grayVane(32, { northOffsetDeg: 5 });
    const chip = await chipFor(vane);
    for (const [heading, middle] of [
      [5.2, 10.625],
      [15.9, 10.625],
      [4.8, 359.375],
      [354, 359.375],
    ] as const) {
      pointAt(chip, vane, heading);
      expect(apart(freshLine(chip).headingDeg!, middle)).toBeLessThanOrEqual(0.005 + 1e-9);
    }
  });

  it('gives no heading for any word that the disc does not have, and still sends the counts', async () => {
    const vane = ringVane();
    const chip = await chipFor(vane);
    const onDisc = new Set(
      Array.from({ length: 12 }, (_, p) =>
        Array.from({ length: 6 }, (_, c) => vane.levelAt(c, p * 30 + 15)).join(''),
      ),
    );
    let legal = 0;
    for (let packed = 0; packed < 64; packed++) {
      const word = packed.toString(2).padStart(6, '0');
      const counts = Array.from(word, (bit) => (bit === '1' ? LIT_COUNTS : DARK_COUNTS));
      for (const [channel, value] of counts.entries()) setCounts(chip, channel, value);
      const line = freshLine(chip);
      expect(line.word).toBe(word);
      expect(line.counts).toEqual(counts);
      expect(line.headingDeg !== null).toBe(onDisc.has(word));
      expect(line.flags.includes('illegalWord')).toBe(!onDisc.has(word));
      if (line.headingDeg !== null) legal++;
    }
    expect(legal).toBe(12);
  });

  it('does not chatter when noise at an edge stays between the thresholds, and does when it is wider', async () => {
    const vane = grayVane(32);
    const chip = await chipFor(vane);
    const middle = (LOW_COUNTS + HIGH_COUNTS) / 2;
    /** Distinct words in 0.04 s while channel 2 is on an edge with noise of that half-width, taking turns. */
    const wordsWithNoise = (from: number, halfWidth: number): Set<string> => {
      chip.beforeConversion = () => {};
      pointAt(chip, vane, 5.6);
      setCounts(chip, 2, from);
      freshLine(chip);
      let turn = 0;
      chip.beforeConversion = (input) => {
        if (input === 2) setCounts(chip, 2, middle + (turn++ % 2 === 0 ? halfWidth : -halfWidth));
      };
      const first = chip.lines.length + 1;
      chip.runMs(40);
      const words = chip.lines.slice(first, -1).map((text) => lineOf(text).word);
      expect(words.length).toBeGreaterThan(10);
      return new Set(words.map((word) => word[2]!));
    };
    const within = (HIGH_COUNTS - LOW_COUNTS) / 2 - 1;
    expect([...wordsWithNoise(LIT_COUNTS, within)]).toEqual(['1']); // it was light and stays so
    expect([...wordsWithNoise(DARK_COUNTS, within)]).toEqual(['0']);
    expect(wordsWithNoise(LIT_COUNTS, within + 2).size).toBe(2); // the noise does reach the program
  });
});
