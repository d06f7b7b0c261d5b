import { describe, expect, it } from 'vitest';
import { dataColumns, TIME } from './dataColumns.ts';

const read = (text: string) => dataColumns(text, 'f.csv', [TIME, 'pulses']);

describe('columns of a file', () => {
  it.each([
    ['seconds and commas', 'time_s,pulses\n1.5,3\n2,4\n'],
    ['milliseconds, semicolons and decimal commas', 'pulses;Time (ms)\r\n3;1500,0\r\n4,0;2000\r\n'],
    ['microseconds, tabs and another column', '\ufeff"time_us"\tnote\t"pulses"\n1500000\tx\t3\n2000000\t\t4'],
    ['instants with their zone', 'time,pulses\n1970-01-01T01:00:01.5+01:00,3\n1970-01-01T00:00:02Z,4\n'],
    ['a note in front and a comma behind', '# a note\n\ntime_s,pulses\n1.5,3,\n2,4,\n'],
  ])('are found by their headings: %s', (_, text) => {
    expect(read(text)).toMatchObject({
      rows: [
        [1500, 3],
        [2000, 4],
      ],
      leftOut: [],
    });
  });

  it('leave out lines that are no rows, and name them', () => {
    const rows = Array.from({ length: 10 }, (_, i) => `${i},${i}`);
    expect(read(['time_s,pulses', ...rows, 'ovf,', 'nan,3'].join('\n')).leftOut).toEqual([12, 13]);
  });

  it.each([
    ['without headings', '1,2\n3,4\n', 'fit/no-column'],
    ['that is empty', '', 'fit/no-column'],
    ['with headings only', 'time_s,pulses\n', 'fit/rows-unread'],
    ['of decimal commas between commas', 'time_s,pulses\n1,5,3,0\n2,5,4,0\n', 'fit/rows-unread'],
    ['of instants without their zone', 'time,pulses\n2024-05-17T10:30:00,3\n', 'fit/rows-unread'],
  ])('refuse a file %s', (_, text, code) => {
    expect(() => read(text)).toThrow(code);
  });
});
