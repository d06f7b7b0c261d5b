import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../units/index.ts';
import { formatLine } from '../formatLine.ts';
import { PLAIN_RULE } from '../samples/readingRule.ts';
import type { Sample } from '../samples/sample.ts';
import { formatSentence } from '../sentence.ts';
import type { FeedMessage } from './feedMessage.ts';
import { NO_FEED, readFeed, rereadFeed, type FeedState } from './feedReader.ts';

const START_MS = Date.parse('2026-05-01T12:00:00Z');
const HEAD = { stream: -1, station: 'jetty', source: 'mqtt', name: 'site/jetty/line' } as const;
const RULE = { ...PLAIN_RULE, cups: { runPerPulseM: 1, startSpeedMPerS: 0 } };

interface Sent {
  readonly atMs: number;
  readonly headingDeg: number;
  readonly text: string;
}

/** Lines of one run: one a second, its counter 0 at `zeroMs`. */
function run(zeroMs: number, count: number): Sent[] {
  return Array.from({ length: count }, (_, n) => {
    const sinceStartMs = 250 + 1000 * n;
    const headingDeg = ((n * 7) % 32) * 11.25;
    const text = formatLine({
      lineNumber: n,
      sinceStartMs,
      counts: [930, 93, 931, 90, 512],
      word: ((n * 7) % 32).toString(2).padStart(5, '0'),
      headingDeg,
      halfWidthDeg: 5.63,
      flags: [],
      average: null,
      cups: { pulses: 4 * n, edges: 8 * n, gustPulses: null },
    });
    return { atMs: zeroMs + sinceStartMs, headingDeg, text };
  });
}

const message = ({ atMs, text }: Sent, worker: string, order: number, lateMs = 20): FeedMessage => ({
  worker,
  order,
  arrivedMs: atMs + lateMs,
  bytes: Uint8Array.from(Buffer.from(`${text}\n`)),
});

/** Reads turn by turn, each by a fresh reader that has nothing but the state of the one before. */
function readTurns(turns: readonly (readonly FeedMessage[])[]) {
  let state: FeedState = NO_FEED;
  let left: FeedMessage[] = [];
  const [samples, messages, reasons]: [Sample[], FeedMessage[], string[]] = [[], [], []];
  for (const turn of turns) {
    // As a store keeps it.
    const stored = JSON.parse(JSON.stringify(state)) as FeedState;
    left = [...left, ...turn];
    const isLast = turn === turns.at(-1);
    const seenUntilMs = isLast ? Infinity : Math.max(...left.map(({ arrivedMs }) => arrivedMs));
    const reading = readFeed(HEAD, RULE, stored, { messages: left, seenUntilMs });
    left = left.filter((one) => !reading.messages.includes(one));
    samples.push(...reading.samples);
    messages.push(...reading.messages);
    reasons.push(...reading.ledger.flatMap(({ reason, count }) => Array<string>(count).fill(reason)));
    state = reading.state;
  }
  return { samples, messages, reasons };
}

function expectTrue(samples: readonly Sample[], sent: readonly Sent[]): void {
  const byTime = [...samples].sort((a, b) => a.atMs - b.atMs);
  expect(byTime.map(({ headingDeg }) => headingDeg)).toEqual(sent.map(({ headingDeg }) => headingDeg));
  for (const [i, { atMs, withinMs }] of byTime.entries()) {
    expect(Math.abs(atMs - sent[i]!.atMs)).toBeLessThanOrEqual(withinMs);
  }
}

describe('messages of one station that several workers took', () => {
  it('are read as if one worker had taken them all', () => {
    const sent = run(START_MS, 300);
    const random = seededRandom(5);
    const taken = sent.map((one, i) => message(one, `w${Math.floor(3 * random.uniform())}`, i));
    const turns = Array.from({ length: 30 }, (_, t) => taken.slice(10 * t, 10 * t + 10));
    const shuffled = turns.map((turn) => [...turn].sort(() => random.uniform() - 0.5));
    const one = readTurns(turns.map((turn) => turn.map((m) => ({ ...m, worker: 'w' }))));
    const many = readTurns(shuffled);
    expect(many.samples).toEqual(one.samples);
    expect(many.reasons).toEqual([]);
    expectTrue(many.samples, sent);
    // Pulses are totals: 4 a second over a run of 1 m each.
    expect(many.samples.at(-1)!.speedMPerS).toBeCloseTo(4, 6);
  });

  it('tell a restart from a mix of two runs, also when all of them waited', () => {
    const before = run(START_MS, 80);
    const after = run(START_MS + 80_000, 90);
    const backlogMs = START_MS + 200_000;
    const taken = [...before, ...after].map((one, i) => ({
      ...message(one, `w${i % 2}`, i),
      arrivedMs: backlogMs + i,
    }));
    const { samples, reasons } = readTurns([[...taken].reverse()]);
    expect(samples.map(({ headingDeg }) => headingDeg)).toEqual(
      [...before, ...after].map(({ headingDeg }) => headingDeg),
    );
    expect(reasons.filter((reason) => reason !== 'restart')).toEqual([]);
    expect(reasons).toHaveLength(1);
  });

  it('find their place when a worker was away for minutes, also over a restart', () => {
    const sent = [...run(START_MS, 200), ...run(START_MS + 205_000, 400)];
    const turns: FeedMessage[][] = [];
    const waiting: FeedMessage[] = [];
    for (const [i, one] of sent.entries()) {
      const isAway = i >= 150 && i < 320;
      if (i % 2 === 1 && isAway) waiting.push(message(one, 'w1', i));
      else turns.push([message(one, `w${i % 2}`, i)]);
      // Back again: the broker hands over what it kept.
      if (i === 320) turns.push(waiting.map((m) => ({ ...m, arrivedMs: one.atMs + 100 })));
    }
    const { samples, reasons } = readTurns(turns);
    expectTrue(samples, sent);
    expect(reasons.filter((reason) => reason === 'restart')).toHaveLength(1);
    // The last of them still comes before the line after it is read.
    expect(reasons.filter((reason) => reason === 'late-line')).toHaveLength(waiting.length - 1);
    const unknown = samples.filter(({ speedMPerS }) => speedMPerS === null);
    expect(unknown).toHaveLength(waiting.length - 1 + 2);
  });

  it('wait for one another for two seconds where numbers skip, and no longer', () => {
    const sent = run(START_MS, 20);
    const taken = sent.map((one, i) => message(one, `w${i % 2}`, i));
    const start = readFeed(HEAD, RULE, NO_FEED, { messages: taken.slice(0, 10), seenUntilMs: Infinity });
    const withoutNext = taken.slice(11, 13);
    const arrivedMs = withoutNext[0]!.arrivedMs;
    const read = (seenUntilMs: number, messages = withoutNext) =>
      readFeed(HEAD, RULE, start.state, { messages, seenUntilMs }).messages.length;
    expect(read(arrivedMs + 1999)).toBe(0);
    expect(read(arrivedMs + 2000)).toBe(2);
    expect(read(arrivedMs, taken.slice(10, 13))).toBe(3);
  });

  it('are a new run when the controller started again and its first lines were lost', () => {
    const sent = [...run(START_MS, 60), ...run(START_MS + 70_000, 60).slice(3)];
    const { samples, reasons } = readTurns(sent.map((one, i) => [message(one, `w${i % 2}`, i)]));
    expectTrue(samples, sent);
    expect(reasons.filter((reason) => reason === 'restart')).toHaveLength(1);
    expect(reasons).not.toContain('late-line');
  });

  it('give the same again from the raw log', () => {
    const sent = run(START_MS, 100);
    const late = sent.slice(40, 60).filter((_, i) => i % 2 === 1);
    const taken = sent.filter((one) => !late.includes(one)).map((one, i) => message(one, 'a', i));
    const turns = [
      ...taken.map((one) => [one]),
      late.map((one, i) => ({ ...message(one, 'b', i), arrivedMs: START_MS + 102_000 })),
    ];
    const { samples, messages } = readTurns(turns);
    expect(rereadFeed(HEAD, RULE, NO_FEED, messages).samples).toEqual(samples);
  });

  it('are read by arrival where they carry no number', () => {
    const wind = {
      kind: 'mwd',
      directionDeg: 214.8,
      speedMPerS: 5.1,
      reference: null,
      isValid: true,
    } as const;
    const sentence = formatSentence(wind);
    const bytes = (text: string): Uint8Array => Uint8Array.from(Buffer.from(`${text}\n`));
    const taken = [3, 1, 2].map((n) => ({
      worker: `w${n}`,
      order: n,
      arrivedMs: START_MS + 1000 * n,
      bytes: bytes(sentence),
    }));
    const { samples } = readTurns([taken]);
    expect(samples.map(({ atMs }) => (atMs - START_MS) / 1000)).toEqual([1, 2, 3]);
  });
});
