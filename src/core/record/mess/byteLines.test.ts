import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LINE_BYTES_MOST, LineSplitter } from './byteLines.ts';
import { lineText, withoutMonitorTime } from './lineText.ts';

const bytesOf = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));

const read = (...pieces: readonly Uint8Array[]) => {
  const splitter = new LineSplitter();
  const lines = pieces.flatMap((piece) => splitter.take(piece)).concat(splitter.end());
  return {
    lines: lines.map(({ bytes }) => bytes),
    numbers: lines.map((l) => l.number),
    notes: splitter.notes(),
  };
};

describe('bytes cut into lines', () => {
  it.each(['1,2\n3,4\n', '1,2\r\n3,4\r\n', '1,2\r3,4\r', '1,2\n3,4'])('whatever ends them: %j', (text) => {
    expect(read(bytesOf(text)).lines).toEqual(['1,2', '3,4']);
  });

  it('are the same however the bytes come', () => {
    const text = bytesOf(
      '\u00ef\u00bb\u00bfms;a0\r\n0;1\r\n\r\n\0\0\0\r20;2\n\u00ff\u00ff\u00ff\u00ff\u00ff30;3\r40',
    );
    const whole = read(text);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: text.length }), { maxLength: 8 }), (cuts) => {
        const at = [0, ...cuts.sort((a, b) => a - b), text.length];
        const pieces = at.slice(1).map((to, i) => text.subarray(at[i], to));
        expect(read(...pieces)).toEqual(whole);
      }),
      { seed: 4 },
    );
    expect(whole.lines).toEqual(['ms;a0', '0;1', '20;2', '30;3', '40']);
    expect(whole.notes).toEqual([
      { kind: 'byte-order-mark', line: 0, count: 1 },
      { kind: 'empty-bytes', line: 4, count: 3 },
      { kind: 'empty-bytes', line: 6, count: 5 },
    ]);
  });

  it('may be UTF-16 of either kind, cut anywhere', () => {
    const little = Buffer.from('\ufeffZeit;µ\n1;2\n3;4', 'utf16le');
    const big = Buffer.from(little).swap16();
    for (const file of [little, big]) {
      for (let cut = 0; cut <= file.length; cut++) {
        const { lines, notes } = read(
          Uint8Array.from(file.subarray(0, cut)),
          Uint8Array.from(file.subarray(cut)),
        );
        expect(lines.map((line) => lineText(line).text)).toEqual(['Zeit;µ', '1;2', '3;4']);
        expect(notes).toEqual([{ kind: 'wide-text', line: 0, count: 1 }]);
      }
    }
  });

  it('never hold more than one line, also when it has no end', () => {
    const splitter = new LineSplitter();
    const piece = new Uint8Array(1_048_576).fill(65);
    for (let i = 0; i < 64; i++) {
      expect(splitter.take(piece)).toEqual([]);
      expect(splitter.state.rest.length).toBeLessThanOrEqual(LINE_BYTES_MOST);
    }
    expect(splitter.take(bytesOf('\n1,2\n')).map(({ bytes, number }) => [number, bytes])).toEqual([
      [2, '1,2'],
    ]);
    expect(splitter.notes()).toEqual([{ kind: 'too-long', line: 1, count: 1 }]);
  });

  it('count megabytes of nothing as empty bytes and not as a line too long', () => {
    const splitter = new LineSplitter();
    for (let i = 0; i < 4; i++) expect(splitter.take(new Uint8Array(1_000_000))).toEqual([]);
    expect(splitter.take(bytesOf('1,2\n')).map(({ bytes }) => bytes)).toEqual(['1,2']);
    splitter.take(new Uint8Array(500_000));
    splitter.end();
    expect(splitter.notes()).toEqual([
      { kind: 'empty-bytes', line: 1, count: 4_000_000 },
      { kind: 'empty-bytes', line: 2, count: 500_000 },
    ]);
  });

  it('take any bytes at all', () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 300 }), { maxLength: 5 }), (pieces) => {
        for (const line of read(...pieces).lines) expect(lineText(line).text.length).toBeGreaterThan(0);
      }),
      { seed: 5 },
    );
  });
});

describe('the text of a line', () => {
  it('is UTF-8, or its bytes one by one', () => {
    expect(lineText('\u00c2\u00b5 50%')).toEqual({ text: 'µ 50%', isForeign: false });
    expect(lineText('\u00b5 50%')).toEqual({ text: '\u00b5 50%', isForeign: true });
  });

  it('loses the time of a serial monitor', () => {
    expect(withoutMonitorTime('21:00:48.335 -> vw1 0')).toEqual({ text: 'vw1 0', timeOfDayMs: 75_648_335 });
    expect(withoutMonitorTime('21:00:48;3')).toEqual({ text: '21:00:48;3', timeOfDayMs: null });
  });
});
