import { describe, expect, it } from 'vitest';
import { asBuiltHash, type AsBuilt } from '../../src/core/instrument/index.ts';
import { programFiles } from '../../src/core/program/index.ts';
import { parseLine, type Line } from '../../src/core/record/index.ts';
import { jettyHead, jettyInstrument, type VaneWishes } from '../support/avrVane.ts';
import { hostLines, type Feed } from '../support/hostBuild.ts';

const POSITIONS = 32;
const STEP = 360 / POSITIONS;
const CHANNELS = 5;
/** Turn of one soft edge: a slit of 1.2 mm at a radius of 20 mm. [deg] */
const WIDTH = 3.4;

const wordOf = (k: number): string => (k ^ (k >> 1)).toString(2).padStart(CHANNELS, '0');
const wrap = (angle: number): number => ((angle % 360) + 360) % 360;
const apart = (a: number, b: number): number => Math.abs(wrap(a - b + 180) - 180);

/** How a build of the tests may differ. */
interface Build {
  readonly windowLevel: 0 | 1;
  readonly patternedFace: 'up' | 'down';
  readonly sense: AsBuilt['sense'];
  readonly litIsHigh: boolean;
  readonly north: number;
}

/** Light of a channel at a disc angle: a slit over straight edges, so a ramp from one level to the next. */
function lightAt({ windowLevel }: Build, channel: number, discAngle: number): number {
  const isOpen = (k: number): number =>
    Number(wordOf(wrap(k * STEP) / STEP)[channel]) === windowLevel ? 1 : 0;
  const nearest = Math.round(discAngle / STEP);
  const past = Math.min(1, Math.max(0, (discAngle - nearest * STEP) / WIDTH + 0.5));
  return isOpen((nearest + POSITIONS - 1) % POSITIONS) * (1 - past) + isOpen(nearest % POSITIONS) * past;
}

/** What a recorded turn of that build shows, worked out here. */
function recordedTurn({ litIsHigh, sense }: Build): AsBuilt {
  const [litCounts, darkCounts] = litIsHigh ? [900, 100] : [100, 900];
  const channels = Array.from({ length: CHANNELS }, (_, c) => ({
    pin: `Y${c}`,
    litCounts,
    darkCounts,
    lowCounts: 480,
    highCounts: 520,
    litIsHigh,
    edgeCurve: [0, 1],
    edgeWidthDeg: WIDTH,
  }));
  const positions = Array.from({ length: POSITIONS }, (_, k) => ({
    word: wordOf(k),
    centreDeg: (k + 0.5) * STEP,
    halfWidthDeg: STEP / 2,
  }));
  const found = { channels, sense, positions };
  return { recordedAt: '2024-05-17T10:30:00Z', tableHash: asBuiltHash(found), ...found };
}

/** Lines of the program while the vane turns slowly all the way round, one way and back. */
async function turned(build: Build, spoil: (counts: number[]) => number[] = (counts) => counts) {
  const wishes: VaneWishes = {
    board: 'rp2040',
    input: 'multiplexer',
    cups: null,
    windowLevel: build.windowLevel,
    patternedFace: build.patternedFace,
    northOffsetDeg: build.north,
    asBuilt: recordedTurn(build),
    lineIntervalMs: 20,
  };
  const instrument = jettyInstrument(wishes);
  const unit = programFiles(instrument, jettyHead(instrument, wishes)).find(
    ({ path }) => path === 'vane_unit.h',
  )!;
  // A face that looks up turns marks against headings; a build whose sense is reversed runs the other way.
  const way = (build.patternedFace === 'up' ? -1 : 1) * (build.sense === 'same' ? 1 : -1);
  const up = Array.from({ length: 1440 }, (_, i) => i * 0.25 + 0.1);
  const headings = [...up, ...up.toReversed()];
  const feed = headings.map((heading, i): Feed => {
    const disc = wrap(way * (heading - build.north));
    const counts = Array.from({ length: CHANNELS }, (_, c) => {
      const light = lightAt(build, c, disc);
      return Math.round(build.litIsHigh ? 100 + 800 * light : 900 - 800 * light);
    });
    return { ms: 100 * i, pulses: 0, edges: 0, counts: spoil(counts) };
  });
  const texts = await hostLines(unit.content, 'writeTextLine(ms)', feed);
  const lines: Line[] = texts.map((text) => {
    const parsed = parseLine(text);
    if (!parsed.ok) throw new Error(`${parsed.refusal.code}: ${text}`);
    return parsed.line;
  });
  return lines.map((line, i) => ({ line, error: apart(line.headingDeg!, headings[i]!) }));
}

const rms = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);

describe('a heading inside a step', () => {
  it.each<Build>([
    { windowLevel: 1, patternedFace: 'up', sense: 'same', litIsHigh: true, north: 0 },
    { windowLevel: 0, patternedFace: 'up', sense: 'same', litIsHigh: false, north: 123.4 },
    { windowLevel: 1, patternedFace: 'down', sense: 'same', litIsHigh: false, north: 359.9 },
    { windowLevel: 0, patternedFace: 'up', sense: 'reversed', litIsHigh: true, north: 0 },
  ])(
    'is within the half width that its line states, for $patternedFace, $sense, level $windowLevel',
    async (build) => {
      const read = await turned(build);
      const finer = read.filter(({ line }) => line.flags.includes('interpolated'));
      // Each of the 32 edges is soft over 3.4 degrees, of which 80 % count as mid-edge: 87 degrees of the turn.
      expect(finer.length / read.length).toBeGreaterThan(0.2);
      expect(finer.length / read.length).toBeLessThan(0.28);
      for (const { line, error } of read)
        expect(error).toBeLessThanOrEqual(line.halfWidthDeg! + 0.02 + WIDTH * 0.03);
      // The ramp is straight, so what is left is one count in 800 and rounding.
      expect(Math.max(...finer.map(({ error }) => error))).toBeLessThan(0.05);
      expect(rms(finer.map(({ error }) => error))).toBeLessThan(0.1 * rms(read.map(({ error }) => error)));
    },
  );

  it('falls back to the middle when a second channel is in mid-edge, or the light has changed', async () => {
    const build: Build = { windowLevel: 1, patternedFace: 'up', sense: 'same', litIsHigh: true, north: 0 };
    const two = await turned(build, (counts) => [400, ...counts.slice(1)]);
    const dim = await turned(build, (counts) => [
      ...counts.slice(0, 4),
      counts[4]! > 500 ? 1150 : counts[4]!,
    ]);
    // Channel 0 stands in mid-edge all the time: only where no other does, and its edge is near, is it believed.
    const believed = two.filter(({ line }) => line.flags.includes('interpolated'));
    for (const { line } of believed) {
      expect(line.counts.slice(1).every((count) => count <= 180 || count >= 820)).toBe(true);
    }
    // Its two edges have four steps beside them, of 32.
    expect(believed.length / two.length).toBeLessThan(4 / POSITIONS);
    const brightFinely = dim.filter(
      ({ line }) => line.counts[4] === 1150 && line.flags.includes('interpolated'),
    );
    expect(brightFinely).toEqual([]);
  });
});
