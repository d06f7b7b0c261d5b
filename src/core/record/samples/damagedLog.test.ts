import { describe, expect, it } from 'vitest';
import { damagedTable, damagedVaneLog, type DamagedLog } from '../../../../test/support/damagedLog.ts';
import { ledgerCounts } from '../ledger/ledger.ts';
import { PLAIN_RULE, type ReadingRule } from './readingRule.ts';
import { StreamReader } from './streamReader.ts';

function read({ pieces }: DamagedLog, rule: Partial<ReadingRule> = {}) {
  const reader = new StreamReader(
    { stream: 1, station: 'jetty', source: 'serial', name: 'port' },
    { ...PLAIN_RULE, ...rule },
  );
  for (const { bytes, arrivedMs } of pieces) reader.take(bytes, Number.isNaN(arrivedMs) ? null : arrivedMs);
  reader.end();
  const { samples, ledger } = reader.drain();
  return { samples, counts: Object.fromEntries(ledgerCounts(ledger).map((row) => [row.reason, row.count])) };
}

describe.each([1, 2, 3])('a log with one line in twenty damaged, draw %d', (seed) => {
  it('of a controller gives every good line, no bad one, and the damage as it was done', () => {
    const log = damagedVaneLog(seed, 6000, 0.05);
    const { samples, counts } = read(log);
    expect(log.damaged / log.lines).toBeGreaterThan(0.035);
    expect(counts).toEqual(log.damage);
    expect(samples.map(({ headingDeg }) => headingDeg)).toEqual(log.good.map(({ headingDeg }) => headingDeg));
    const off = samples.map(({ atMs, withinMs }, i) => Math.abs(atMs - log.good[i]!.atMs) / withinMs);
    expect(Math.max(...off)).toBeLessThanOrEqual(1);
  });

  it('of columns gives every good row, no bad one, and the damage as it was done', () => {
    const log = damagedTable(seed, 6000, 0.05);
    const { samples, counts } = read(log, { zone: 'Europe/Berlin' });
    expect(log.damaged / log.lines).toBeGreaterThan(0.035);
    expect(counts).toEqual(log.damage);
    expect(samples.map(({ atMs }) => atMs)).toEqual(log.good.map(({ atMs }) => atMs));
    expect(samples.map(({ headingDeg }) => headingDeg ?? -1)).toEqual(
      log.good.map(({ headingDeg }) => headingDeg),
    );
  });
});
