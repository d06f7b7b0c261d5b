import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLine } from '../../record/index.ts';
import { readRecording } from './readRecording.ts';
import type { Recording, RepairKind } from './recording.ts';

const read = (text: string, hints = {}): Recording => readRecording([{ name: 'turn.csv', text }], hints);
const kinds = ({ repairs }: Recording): RepairKind[] => repairs.map(({ kind }) => kind);
const rowCounts = ({ stretches }: Recording): number[] => stretches.map(({ rows }) => rows.length);

/** Good rows of three channels, 20 ms apart. */
const good = (from: number, count: number, part = ','): string[] =>
  Array.from({ length: count }, (_, i) => [from + 20 * i, 100 + i, 900 - i, 95].join(part));

describe('a recorded turn', () => {
  it('is read from the mess of a real port, and every repair is listed', () => {
    // The worked example of a maker's file, with enough good rows after it to be a recording.
    const text = [
      '\u00ff\u00fe\\x80~,3',
      'Vane v2 ready',
      'ms;a0;a1;a2;a3;a4',
      '0;112;903;887;95;140',
      '20;118;899;886;97;',
      '40;415;901;880;96;138',
      '60;871;904;88160;870;905;884;98;141',
      'Vane v2 ready',
      'ms;a0;a1;a2;a3;a4',
      ...Array.from({ length: 20 }, (_, i) => `${20 * i};870;902;885;97;139`),
    ].join('\n');
    const recording = read(text);
    expect(rowCounts(recording)).toEqual([2, 20]);
    const found = kinds(recording);
    const count = (kind: RepairKind): number => found.filter((k) => k === kind).length;
    expect({
      rubbish: count('rubbish'),
      headings: count('heading-line'),
      ready: count('ready-text'),
      missing: count('missing-value'),
      glued: count('glued-line'),
      restarts: count('restart'),
    }).toEqual({ rubbish: 1, headings: 2, ready: 2, missing: 1, glued: 1, restarts: 1 });
    expect(recording.columns).toEqual(['a0', 'a1', 'a2', 'a3', 'a4']);
    expect(recording.stretches[1]!.rows[0]).toEqual([870, 902, 885, 97, 139]);
  });

  it.each([';', '\t', ',', ' ', ' | ', ', '])('is the same with fields parted by "%s"', (part) => {
    const recording = read(good(0, 30, part).join('\r\n'));
    expect(recording.content).toBe('counts');
    expect(rowCounts(recording)).toEqual([30]);
    expect(recording.stretches[0]!.timesMs.slice(0, 3)).toEqual([0, 20, 40]);
    expect(recording.stretches[0]!.rows[2]).toEqual([102, 898, 95]);
  });

  it('is read behind a serial monitor that writes its own times', () => {
    const lines = good(0, 30).map(
      (line, i) => `21:00:${String(40 + (i >> 2)).padStart(2, '0')}.335 -> ${line}`,
    );
    const recording = read(lines.join('\n'));
    expect(recording.stretches[0]!.timesMs.at(-1)).toBe(580);
    expect(kinds(recording)).toContain('monitor-times');
  });

  it('takes the monitor times when the controller sends none', () => {
    const lines = Array.from(
      { length: 30 },
      (_, i) => `21:00:${40 + Math.floor(i / 10)}.${i % 10}00 -> 1 0 ${i % 2}`,
    );
    const { timesMs } = read(lines.join('\n')).stretches[0]!;
    expect(timesMs[10]! - timesMs[0]!).toBeCloseTo(1000, 6);
  });

  it('is read from JSON Lines, from a list of objects, and from named values', () => {
    const rows = Array.from({ length: 20 }, (_, i) => ({ t: i * 20, counts: [100 + i, 900 - i] }));
    for (const text of [
      rows.map((row) => JSON.stringify(row)).join('\n'),
      JSON.stringify(rows),
      rows.map(({ t, counts }) => `t:${t}, a0:${counts[0]} a1:${counts[1]}`).join('\n'),
    ]) {
      const recording = read(text);
      expect(recording.stretches[0]!.rows[3]).toEqual([103, 897]);
      expect(recording.stretches[0]!.timesMs[3]).toBe(60);
    }
  });

  it('is read from our own lines, and a spoilt one is left out by its check value', () => {
    const lines = Array.from({ length: 20 }, (_, i) =>
      formatLine({
        lineNumber: i,
        sinceStartMs: 250 * i,
        counts: [93 + i, 930],
        word: '01',
        headingDeg: 90,
        halfWidthDeg: 5.62,
        average: null,
        flags: [],
        cups: null,
      }),
    );
    lines[7] = lines[7]!.replace('930', '931');
    const recording = read(lines.join('\n'));
    expect(rowCounts(recording)).toEqual([19]);
    expect(recording.repairs.map(({ kind, line }) => [kind, line])).toEqual([['refused-line', 8]]);
  });

  it.each([
    ['10110', [1, 0, 1, 1, 0]],
    ['HLHHL', [1, 0, 1, 1, 0]],
    ['0b10110', [1, 0, 1, 1, 0]],
    ['1 0 1 1 0', [1, 0, 1, 1, 0]],
    ['1;0;1;1;0', [1, 0, 1, 1, 0]],
  ])('holds words however they are spelt: %s', (word, bits) => {
    const recording = read(Array.from({ length: 12 }, () => word).join('\n'));
    expect(recording.content).toBe('bits');
    expect(recording.stretches[0]!.rows[0]).toEqual(bits);
  });

  it('gives words the zeros back that a spreadsheet took', () => {
    const recording = read(
      ['ms,word', ...good(0, 12).map((line, i) => `${line.split(',')[0]},${i % 2 ? '110' : '10110'}`)].join(
        '\n',
      ),
    );
    expect(recording.stretches[0]!.rows[1]).toEqual([0, 0, 1, 1, 0]);
    expect(kinds(recording)).toContain('zeros-restored');
  });

  it('may hold nothing but decoded numbers', () => {
    const recording = read(Array.from({ length: 40 }, (_, i) => String((i * 7) % 32)).join('\n'));
    expect(recording.content).toBe('numbers');
    expect(recording.hasTimes).toBe(false);
    expect(kinds(recording)).toContain('no-times');
  });

  it('reads a decimal comma, and asks no one about volts', () => {
    const rows = Array.from({ length: 12 }, (_, i) => `${20 * i};2,50;0,${10 + i}`);
    const recording = read(['ms;a0;a1', ...rows].join('\n'), { scaleCounts: 1024, supplyV: 5 });
    expect(recording.stretches[0]!.rows[0]![0]).toBe(512);
    expect(kinds(recording)).toEqual(expect.arrayContaining(['decimal-comma', 'volts']));
  });

  it('goes on over the end of a 32-bit clock, and starts anew after a restart', () => {
    const end = 4_294_967_296;
    const before = good(end - 200, 10);
    const after = good(0, 10);
    const wrapped = read([...before, ...after].join('\n'));
    expect(rowCounts(wrapped)).toEqual([20]);
    expect(wrapped.stretches[0]!.timesMs.at(-1)).toBe(end + 180);
    expect(rowCounts(read([...good(5000, 10), ...good(0, 10)].join('\n')))).toEqual([10, 10]);
  });

  it('parts two rows on one line only when the clock proves where', () => {
    const lines = good(1000, 20);
    const joined = [...lines.slice(0, 9), `${lines[9]}${lines[10]}`, ...lines.slice(11)];
    const recording = read(joined.join('\n'));
    expect(kinds(recording)).toEqual(['split-line']);
    expect(rowCounts(recording)).toEqual([20]);
  });

  it('leaves gaps open and drops what is sent twice', () => {
    const lines = good(0, 60);
    const recording = read([...lines.slice(0, 20), lines[19]!, ...lines.slice(40)].join('\n'));
    expect(rowCounts(recording)).toEqual([20, 20]);
    expect(kinds(recording)).toEqual(['duplicate', 'gap']);
  });

  it('is turned the way that the file says', () => {
    const file = (name: string) => ({ name, text: good(0, 12).join('\n') });
    const recording = readRecording([file('vane cw.csv'), file('turned_ccw.csv'), file('x.csv')], {
      turned: { 'x.csv': 'clockwise' },
    });
    expect(recording.stretches.map(({ turned }) => turned)).toEqual([
      'clockwise',
      'counter-clockwise',
      'clockwise',
    ]);
  });

  it.each<[string, string]>([
    ['fit/no-rows', ''],
    ['fit/no-rows', 'Vane v2 ready\nhello'],
    [
      'fit/mostly-rubbish',
      [...Array.from({ length: 90 }, () => '~\u00ff\u0080x|q'), ...good(0, 10)].join('\n'),
    ],
  ])('is refused with %s', (code, text) => {
    expect(() => read(text)).toThrow(code);
  });

  it('refuses no files, and files that differ', () => {
    expect(() => readRecording([])).toThrow('fit/no-files');
    const a = { name: 'a', text: good(0, 12).join('\n') };
    const b = {
      name: 'b',
      text: good(0, 12)
        .map((line) => `${line},4`)
        .join('\n'),
    };
    expect(() => readRecording([a, b])).toThrow('fit/files-differ');
  });

  it('never throws anything but a refusal, whatever the text', () => {
    const piece = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 12 }),
      fc.constantFrom(
        ',',
        ';',
        '\n',
        '\n',
        '1',
        '0',
        '512',
        '{',
        '}',
        '[1,2]',
        'ms',
        'vw1 ',
        '->',
        '\0',
        ' ',
      ),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 120 }), (parts) => {
        try {
          read(parts.join(''));
        } catch (error) {
          expect((error as Error).name).toBe('VanewrightError');
        }
      }),
      { seed: 20240611, numRuns: 300 },
    );
  });
});
