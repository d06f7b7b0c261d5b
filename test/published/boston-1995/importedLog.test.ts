import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { PLAIN_RULE, StreamReader } from '../../../src/core/record/index.ts';
import { HeadingSum } from '../../../src/core/wind/index.ts';

const rows = readFileSync(new URL('./boston.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n');
const values = rows.slice(1).map((row) => row.split(',').map(Number) as [number, number]);

it('imports as an hourly log with every row, the same sums and the published mean direction', () => {
  const start = Date.parse('1995-03-17T23:50:00Z');
  const log = values.map(([degrees, speed], i) => {
    const time = new Date(start + 3_600_000 * i).toISOString().slice(0, 16).replace('T', ' ');
    return `${time};${degrees};${String(speed).replace('.', ',')}`;
  });
  const head = { stream: 1, station: 'BOS', source: 'file', name: 'boston.csv' } as const;
  const reader = new StreamReader(head, { ...PLAIN_RULE, decimalComma: true });
  reader.take(Uint8Array.from(Buffer.from(`time;dir;speed_ms\n${log.join('\n')}\n`)), null);
  reader.end();
  const { samples } = reader.drain();
  expect(samples).toHaveLength(24);
  const sum = new HeadingSum();
  for (const { headingDeg } of samples) sum.add(headingDeg!);
  expect(sum.mean().headingDeg).toBeCloseTo(358.74912, 5);
  expect(sum.mean().agreement).toBeCloseTo(0.711705138, 8);
  const speeds = samples.reduce((all, { speedMPerS }) => all + speedMPerS!, 0);
  expect(speeds / 24).toBeCloseTo(5.78625, 8);
});
