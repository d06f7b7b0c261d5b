import { describe, expect, it } from 'vitest';
import { crc16 } from './crc16.ts';
import { formatStatus, parseStatus, statusCharsAtMost, type StatusLine } from './statusLine.ts';

const status: StatusLine = {
  table: '1c291ca3',
  start: 'brownOut',
  kept: true,
  northDeg: 12.34,
  thresholds: [
    { low: 479, high: 544 },
    { low: 9, high: 1023 },
  ],
  channels: 2,
  stuck: [1],
};

const checked = (text: string): string =>
  `${text} ${crc16(text).toString(16).toUpperCase().padStart(4, '0')}`;
const GOOD = checked('vws1 1c291ca3 b k 1234 479:544,9:1023 01');
const refusal = (text: string): string => {
  const parsed = parseStatus(text);
  return parsed.ok ? 'read' : `${parsed.refusal.code} ${parsed.refusal.where}`;
};

describe('a status line', () => {
  it('says which table, why it started, and what it reads by', () => {
    expect(formatStatus(status)).toBe(GOOD);
    expect(parseStatus(GOOD)).toEqual({ ok: true, status });
    expect(parseStatus(`${GOOD}\r`).ok).toBe(true);
  });

  it.each([
    ['record/line-long line', 'x'.repeat(2000)],
    ['record/line-characters line', `${GOOD}\n`],
    ['record/line-foreign tag', 'vw1 1'],
    ['record/line-fields line', GOOD.replace(' b', '')],
    ['record/line-check check value', GOOD.replace('1234', '1235')],
    ['record/line-value table', checked('vws1 1C291CA3 b k 1234 479:544 0')],
    ['record/line-value start', checked('vws1 1c291ca3 z k 1234 479:544 0')],
    ['record/line-value kept', checked('vws1 1c291ca3 b x 1234 479:544 0')],
    ['record/line-value north', checked('vws1 1c291ca3 b k 36000 479:544 0')],
    ['record/line-value thresholds', checked('vws1 1c291ca3 b k 0 544:479 0')],
    ['record/line-value thresholds', checked('vws1 1c291ca3 b k 0 0479:544 0')],
    ['record/line-value stuck', checked('vws1 1c291ca3 b k 0 479:544 00')],
  ])('is refused with %s', (expected, text) => {
    expect(refusal(text)).toBe(expected);
  });

  it('fits the memory kept for it, every field at its longest', () => {
    const longest = formatStatus({
      ...status,
      northDeg: 359.99,
      thresholds: [
        { low: 1022, high: 1023 },
        { low: 1022, high: 1023 },
      ],
    });
    expect(longest.length + 1).toBe(statusCharsAtMost(2, 1023));
    expect(() => formatStatus({ ...status, table: 'no' })).toThrow('record/line-value');
  });
});
