import { describe, expect, it } from 'vitest';
import { asBuiltHash, type AsBuilt } from '../../src/core/instrument/index.ts';
import { programFiles, programFor } from '../../src/core/program/index.ts';
import { parseJsonLine, parseLine } from '../../src/core/record/index.ts';
import { seededRandom } from '../../src/core/units/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import { freshLine, jettyHead, jettyInstrument, setCounts, type VaneWishes } from '../support/avrVane.ts';
import { hostLines, type Feed } from '../support/hostBuild.ts';
import { micropythonLines } from '../support/micropython.ts';

const STEP = 11.25;

/** A recorded turn of the jetty disc, invented: every step a little off, two channels with edge curves. */
function recordedTurn(): AsBuilt {
  const pins = ['A0', 'A1', 'A2', 'A3', 'A4'];
  const channels = pins.map((pin, c) => ({
    pin,
    litCounts: 930 - 20 * c,
    darkCounts: 93 + 10 * c,
    lowCounts: 479 - 5 * c,
    highCounts: 544 - 5 * c,
    litIsHigh: true,
    edgeCurve: c < 3 ? null : [0, 0.2, 0.45, 0.7, 1],
    edgeWidthDeg: c < 3 ? null : 3.4,
  }));
  const positions = Array.from({ length: 32 }, (_, k) => ({
    word: (k ^ (k >> 1)).toString(2).padStart(5, '0'),
    centreDeg: (k + 0.5) * STEP + 0.4 * Math.sin(k),
    halfWidthDeg: STEP / 2 - 0.2,
  }));
  const found = { channels, sense: 'same' as const, positions };
  return { recordedAt: '2024-05-17T10:30:00Z', tableHash: asBuiltHash(found), ...found };
}

/** Any counts, not only those of the disc, with pauses of any length; the same every time. */
function randomFeed(channels: number, most: number, rows: number): Feed[] {
  const random = seededRandom(20240611);
  const within = (limit: number): number => Math.floor(random.uniform() * limit);
  let ms = 1000;
  let pulses = 0;
  const counts = Array.from({ length: channels }, () => within(most + 1));
  return Array.from({ length: rows }, () => {
    ms += random.uniform() < 0.1 ? within(2000) : within(30);
    pulses += within(3);
    counts[within(channels)] = within(most + 1);
    if (random.uniform() < 0.3) counts[within(channels)] = within(2) * most;
    return { ms, pulses, edges: 2 * pulses, counts: [...counts] };
  });
}

const designs: readonly (readonly [string, VaneWishes, number])[] = [
  ['as drawn', {}, 5],
  ['as a recorded turn has shown it, with edges to read inside a step', { asBuilt: recordedTurn() }, 5],
  [
    '20 positions, many words not on the disc, light gives low counts',
    { positions: 20, sensorTo: 'ground' },
    5,
  ],
  [
    'windows at level 0, the pattern below, north elsewhere',
    { windowLevel: 0, patternedFace: 'down', northOffsetDeg: 123.4 },
    5,
  ],
];

/** Program files of the jetty vane on an RP2040, whose counts the emulated chip's are stretched to. */
function files(wishes: VaneWishes, board: string): Map<string, string> {
  const pins = { input: 'multiplexer' as const };
  const asBuilt = wishes.asBuilt
    ? { ...wishes.asBuilt, channels: wishes.asBuilt.channels.map((c, i) => ({ ...c, pin: `Y${i}` })) }
    : null;
  const instrument = jettyInstrument({ ...wishes, ...pins, asBuilt, board, cups: null });
  return new Map(
    programFiles(instrument, jettyHead(instrument, wishes)).map(({ path, content }) => [path, content]),
  );
}

describe('the same counts', () => {
  it.each(designs)(
    'give the same lines from the C++ unit and from MicroPython: %s',
    async (_, wishes, channels) => {
      const made = files(wishes, 'rp2040');
      const feed = randomFeed(channels, 1023, 600);
      const host = await hostLines(made.get('vane_unit.h')!, 'writeTextLine(ms)', feed);
      const python = await micropythonLines(made.get('main.py')!, 'text_line', feed);
      expect(host).toHaveLength(600);
      expect(python).toEqual(host);
      const lines = host.map((text) => parseLine(text));
      expect(lines.every(({ ok }) => ok)).toBe(true);
      const flags = new Set(lines.flatMap((parsed) => (parsed.ok ? parsed.line.flags : [])));
      expect(flags.has('impossibleJump')).toBe(true); // the feed does reach the judging
      expect(flags.has('interpolated')).toBe(wishes.asBuilt !== undefined);
    },
  );

  it('give the same JSON lines from both', async () => {
    const made = files({ format: 'json-lines', positions: 20, lineIntervalMs: 20 }, 'rp2040');
    const feed = randomFeed(5, 1023, 200);
    const host = await hostLines(made.get('vane_unit.h')!, 'writeJsonLine(ms)', feed);
    expect(await micropythonLines(made.get('main.py')!, 'json_line', feed)).toEqual(host);
    expect(host.every((text) => parseJsonLine(text).ok)).toBe(true);
  });

  it.each(designs)(
    'give the same word, heading and half width from the emulated chip: %s',
    async (_, wishes, channels) => {
      const instrument = jettyInstrument({ ...wishes, cups: null });
      const chip = new AvrChip(
        (await buildAvr(programFor(instrument, jettyHead(instrument, wishes)).source)).hex,
      );
      const unit = files(wishes, 'rp2040').get('vane_unit.h')!;
      const feed = randomFeed(channels, 1023, 60);
      const shown = (text: string): string => text.split(' ').slice(3, 7).join(' ');
      const host = (await hostLines(unit, 'writeTextLine(ms)', feed)).map(shown);
      const { counts: first } = feed[0]!;
      for (const [channel, count] of first.entries()) setCounts(chip, channel, count);
      const onChip = feed.map(({ counts }) => {
        for (const [channel, count] of counts.entries()) setCounts(chip, channel, count);
        const since = chip.lines.length;
        freshLine(chip);
        return shown(chip.lines.slice(since - 1).find((text) => text.split(' ')[3] === counts.join(','))!);
      });
      expect(onChip).toEqual(host);
    },
  );
});
