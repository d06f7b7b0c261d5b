import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ledgerCounts } from '../ledger/ledger.ts';
import { formatLine } from '../formatLine.ts';
import { formatSentence } from '../sentence.ts';
import type { Line } from '../line.ts';
import { PLAIN_RULE, type ReadingRule } from './readingRule.ts';
import { NO_STREAM, StreamReader } from './streamReader.ts';

const head = { stream: 1, station: 'jetty', source: 'file', name: 'old.csv' } as const;
const bytesOf = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text));

const read = (
  text: string | Uint8Array,
  rule: Partial<ReadingRule> = {},
  arrivedMs: number | null = null,
) => {
  const reader = new StreamReader(head, { ...PLAIN_RULE, ...rule });
  reader.take(typeof text === 'string' ? bytesOf(text) : text, arrivedMs);
  reader.end();
  const { samples, ledger } = reader.drain();
  const counts = Object.fromEntries(ledgerCounts(ledger).map(({ reason, count }) => [reason, count]));
  return { samples, counts, spans: reader.drainSpans() };
};
const shown = (text: string, rule: Partial<ReadingRule> = {}) =>
  read(text, rule).samples.map(({ atMs, headingDeg, speedMPerS }) => [
    new Date(atMs).toISOString().slice(0, 19),
    headingDeg,
    speedMPerS === null ? null : Number(speedMPerS.toFixed(4)),
  ]);

const line = (lineNumber: number, more: Partial<Line> = {}): string =>
  formatLine({
    lineNumber,
    sinceStartMs: 250 + 1000 * lineNumber,
    counts: [93, 930],
    word: '01',
    headingDeg: 202.5,
    halfWidthDeg: 45,
    flags: [],
    average: null,
    cups: { pulses: 4 * lineNumber, edges: 8 * lineNumber, gustPulses: null },
    ...more,
  });

describe('an old log of columns', () => {
  it('is read by the names of its columns, their units and a decimal comma', () => {
    const log =
      'Zeit;Windrichtung;Geschwindigkeit (km/h)\n25.11.2026 12:00;270;36,0\n25.11.2026 12:10;280;18,0\n';
    expect(shown(log, { zone: 'Europe/Berlin' })).toEqual([
      ['2026-11-25T11:00:00', 270, 10],
      ['2026-11-25T11:10:00', 280, 5],
    ]);
    expect(read(log).counts).toMatchObject({ 'heading-line': 1, 'decimal-comma': 1 });
  });

  it('tells calm from north', () => {
    const log =
      'time,dir,speed_ms\n2026-11-25T12:00Z,360,3\n2026-11-25T12:10Z,0,0\n2026-11-25T12:20Z,,0\n2026-11-25T12:30Z,0,2\n';
    expect(shown(log).map(([, dir]) => dir)).toEqual([0, null, null, 0]);
    expect(read(log).counts).toMatchObject({ calm: 2, 'full-turn': 1 });
  });

  it('keeps values in their columns, whatever is missing or too many', () => {
    const log =
      'time,dir,speed_ms\n2026-11-25T12:00Z,10,3\n2026-11-25T12:10Z,,3\n2026-11-25T12:20Z,20\n2026-11-25T12:30Z,30,,3\n2026-11-25T12:40Z,40,3\n';
    expect(shown(log).map(([, dir]) => dir)).toEqual([10, 40]);
    expect(read(log).counts).toEqual({
      'heading-line': 1,
      'missing-value': 1,
      'cut-line': 1,
      'extra-value': 1,
    });
  });

  it('parts two rows on one line only where the time proves it', () => {
    const row = (minute: number): string => `2026-11-25T12:${minute}Z,10,3.5`;
    const log = `time,dir,speed_ms\n${row(10)}\n${row(20)}\n${row(30)}${row(40)}\n${row(50)}\n`;
    expect(shown(log)).toHaveLength(5);
    expect(read(log).counts).toEqual({ 'heading-line': 1, 'split-line': 1 });
    expect(read(log.replace(`${row(30)}${row(40)}`, `${row(30)}${row(31)}`)).counts).toMatchObject({
      'glued-line': 1,
    });
  });

  it('lists what a spreadsheet did, and sentinels', () => {
    const log =
      'time,dir,speed_ms\n2026-11-25T12:00Z,10,25. Mar\n2026-11-25T12:10Z,20,1E+05\n2026-11-25T12:20Z,999,3\n2026-11-25T12:30Z,30,-1\n2026-11-25T12:40Z,30,3\n';
    expect(read(log).counts).toMatchObject({ spreadsheet: 2, sentinel: 2 });
    expect(shown(log).map(([, dir, speed]) => [dir, speed])).toEqual([
      [null, 3],
      [30, null],
      [30, 3],
    ]);
  });

  it('asks which way round the date is when no day is above 12', () => {
    const log = 'time,dir,speed_ms\n03/04/2026 12:00,10,3\n03/04/2026 12:10,10,3\n';
    expect(read(log).counts).toMatchObject({ 'date-order': 1 });
    expect(shown(log)[0]![0]).toBe('2026-04-03T12:00:00');
    expect(shown(log, { dateOrder: 'month-first' })[0]![0]).toBe('2026-03-04T12:00:00');
    expect(read(log.replace('03/04/2026 12:10', '13/04/2026 12:10')).counts).not.toHaveProperty('date-order');
  });

  it('knows positions by their range and compass points by their letters', () => {
    const rows = Array.from({ length: 20 }, (_, i) => `2026-11-25T12:${10 + i}Z,${i % 16},3`).join('\n');
    const log = `time,dir,speed_ms\n${rows}\n`;
    expect(read(log).counts).toMatchObject({ 'heading-codes': 1 });
    expect(shown(log)[4]![1]).toBe(90);
    expect(shown(log, { headingAs: 'degrees' })[4]![1]).toBe(4);
    const german = 'time,dir,speed_ms\n2026-11-25T12:00Z,NNO,3\n2026-11-25T12:10Z,W,3\n';
    expect(shown(german).map(([, dir]) => dir)).toEqual([22.5, 270]);
  });

  it('keeps one of two equal rows and asks about two that differ', () => {
    const log =
      'time,dir,speed_ms\n2026-11-25T12:00Z,10,3\n2026-11-25T12:00Z,10,3\n2026-11-25T12:10Z,20,3\n2026-11-25T12:10Z,30,3\n';
    expect(read(log).counts).toMatchObject({ duplicate: 1, conflict: 1 });
    expect(shown(log).map(([, dir]) => dir)).toEqual([10, 20]);
  });

  it('keeps every one of several rows a second, where the clock shows whole seconds', () => {
    const row = (second: number, dir: number) => `2026-11-25T12:00:0${second}Z,${dir},3`;
    const rows = Array.from({ length: 12 }, (_, i) => row(Math.floor(i / 4), 100 + 17 * i));
    const log = `time,dir,speed_ms\n${[...rows.slice(0, 4), rows[2], ...rows.slice(4)].join('\n')}\n`;
    const { samples, counts } = read(log);
    expect(samples.map(({ headingDeg }) => headingDeg)).toEqual(rows.map((_, i) => 100 + 17 * i));
    expect(samples.map(({ atMs }) => atMs % 60_000)).toEqual([
      0, 1, 2, 3, 1000, 1001, 1002, 1003, 2000, 2001, 2002, 2003,
    ]);
    expect(samples.every(({ withinMs }) => withinMs >= 500)).toBe(true);
    expect(counts).toMatchObject({ 'same-second': 9, duplicate: 1 });
    expect(counts).not.toHaveProperty('gap');
  });

  it('follows columns that changed in mid-life', () => {
    const log =
      'time,dir,speed_ms\n2026-11-25T11:50Z,10,3\n2026-11-25T12:00Z,10,3\ntime,battery_v,speed_kmh,dir\n2026-11-25T12:10Z,4.1,36,20\n';
    expect(shown(log).map(([, dir, speed]) => [dir, speed])).toEqual([
      [10, 3],
      [10, 3],
      [20, 10],
    ]);
    expect(read(log).counts).toMatchObject({ 'columns-changed': 1 });
  });

  it('leaves rows without a set clock in the raw log until a moment is remembered', () => {
    const log = 'time,dir,speed_ms\n2000-01-01 00:00,10,3\n2000-01-01 00:10,20,3\n';
    expect(read(log).counts).toMatchObject({ 'clock-not-set': 2, 'time-unknown': 2 });
    const startMs = Date.parse('2026-03-01T10:00:00Z');
    const moments = [{ counterMs: Date.parse('2000-01-01T00:00:00Z'), atMs: startMs, withinMs: 600_000 }];
    const placed = { stream: 1, segment: 0, moments, by: 'moments', driftShare: 0.005 } as const;
    expect(shown(log, { placements: [placed] }).map(([at]) => at)).toEqual([
      '2026-03-01T10:00:00',
      '2026-03-01T10:10:00',
    ]);
  });
});

describe('the lines of a controller', () => {
  it('become samples with the wind of their pulses', () => {
    const rule = { cups: { runPerPulseM: 0.5, startSpeedMPerS: 0.25 } };
    const text = [0, 1, 2].map((n) => line(n)).join('\n');
    // Four pulses a second and half a metre each, and the 0.25 m/s of the fitted line.
    expect(read(text, rule, 1_795_608_000_000).samples.map(({ speedMPerS }) => speedMPerS)).toEqual([
      null,
      2.25,
      2.25,
    ]);
  });

  it('are told lost, cut, glued, spoiled and repeated', () => {
    const text = [
      '\u00ff\u0080~,3' + line(0),
      line(1),
      line(1),
      line(2).slice(0, -9),
      line(3) + line(4),
      line(5).replace('202', '203'),
      line(9),
      'hello world',
      line(10, { sinceStartMs: 400_000 }),
      line(0),
    ].join('\n');
    const { samples, counts } = read(
      Uint8Array.from(Buffer.from(`${text}\n`, 'latin1')),
      {},
      1_795_608_000_000,
    );
    expect(samples.map((s) => s.line)).toEqual([1, 2, 5, 5, 7, 9, 10]);
    expect(counts).toEqual({
      rubbish: 1,
      'not-utf8': 1,
      duplicate: 1,
      'cut-line': 1,
      'split-line': 1,
      'check-failed': 1,
      gap: 3,
      'not-a-line': 1,
      restart: 1,
    });
  });

  it('may be wind sentences, which need the time they came', () => {
    const sentence = formatSentence({
      kind: 'mwd',
      directionDeg: 225,
      speedMPerS: 5.2,
      reference: null,
      isValid: true,
    });
    const { samples } = read(`${sentence}\r\n`, {}, 1_795_608_000_000);
    expect(samples).toMatchObject([{ atMs: 1_795_608_000_000, headingDeg: 225, speedMPerS: 5.2 }]);
    expect(read(`${sentence}\r\n`).counts).toEqual({ 'time-unknown': 1 });
  });

  it('may be packs, with their own times', () => {
    const pack =
      '[{"bn":"jetty:","bt":1700000000,"n":"dir","u":"deg","v":225},{"n":"speed","u":"m/s","v":5.2}]';
    expect(read(`${pack}\n`).samples).toMatchObject([
      { atMs: 1_700_000_000_000, headingDeg: 225, speedMPerS: 5.2 },
    ]);
  });
});

it('reads the same whichever way the bytes come, and from a stored state', () => {
  const text = bytesOf(
    `${line(0)}\n${line(1)}${line(2)}\nxx\n${line(3).slice(5)}\r\n${line(4)}\n${line(5)}\n${line(0)}\n${line(1)}`,
  );
  const rule = { ...PLAIN_RULE, cups: { runPerPulseM: 1, startSpeedMPerS: 0 } };
  const readIn = (cuts: readonly number[]) => {
    const at = [0, ...[...cuts].sort((a, b) => a - b), text.length];
    let state = NO_STREAM;
    const samples: unknown[] = [];
    const counts = new Map<string, number>();
    for (let i = 1; i <= at.length; i++) {
      const reader = new StreamReader(head, rule, JSON.parse(JSON.stringify(state)));
      if (i < at.length) reader.take(text.subarray(at[i - 1], at[i]), 1_795_608_000_000);
      else reader.end();
      state = reader.state;
      const drained = reader.drain();
      samples.push(...drained.samples);
      for (const { reason, count } of drained.ledger) counts.set(reason, (counts.get(reason) ?? 0) + count);
    }
    return { samples, counts };
  };
  const whole = readIn([]);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: text.length }), { maxLength: 6 }), (cuts) => {
      expect(readIn(cuts)).toEqual(whole);
    }),
    { seed: 6 },
  );
});

it('takes any bytes at all, and finds every line somewhere', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 3000 }), (bytes) => {
      const { samples } = read(bytes);
      expect(samples.every(({ atMs }) => Number.isSafeInteger(atMs))).toBe(true);
    }),
    { seed: 7 },
  );
});
