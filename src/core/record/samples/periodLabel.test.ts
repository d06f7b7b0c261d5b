import { expect, it } from 'vitest';
import { ledgerCounts } from '../ledger/ledger.ts';
import { PLAIN_RULE } from './readingRule.ts';
import { StreamReader } from './streamReader.ts';

const head = { stream: 1, station: 'jetty', source: 'file', name: 'old.csv' } as const;
/** Means of ten minutes, as a logger labels them. */
const log = 'time,dir,speed_ms\n2026-11-25T12:00Z,10,3\n2026-11-25T12:10Z,20,4\n';

function read(startLabelledMs: number) {
  const reader = new StreamReader(head, { ...PLAIN_RULE, startLabelledMs });
  reader.take(Uint8Array.from(Buffer.from(log)), null);
  reader.end();
  const { samples, ledger } = reader.drain();
  const reasons = ledgerCounts(ledger).map(({ reason }) => reason);
  return { times: samples.map(({ atMs }) => new Date(atMs).toISOString().slice(11, 16)), reasons };
}

it('labels periods by their end where a log labels them by their start, and says so', () => {
  expect(read(0)).toEqual({ times: ['12:00', '12:10'], reasons: ['heading-line'] });
  const moved = read(600_000);
  expect(moved.times).toEqual(['12:10', '12:20']);
  expect([...moved.reasons].sort()).toEqual(['heading-line', 'label-moved']);
});
