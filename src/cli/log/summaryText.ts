import type { LogSummary } from '../../app/api.ts';
import { ledgerReasons } from '../../core/record/index.ts';

const minute = (atMs: number): string => new Date(atMs).toISOString().replace('T', ' ').slice(0, 16);

/** What `log` prints when it has ended. */
export function summaryText(
  { stations, ledger, stored, bytes }: LogSummary,
  putAside: readonly string[],
): string {
  const lines = [`Stored ${stored} samples of ${bytes} bytes.`, ''];
  for (const { station, samples, firstMs, lastMs } of stations) {
    lines.push(`${station}: ${samples} samples from ${minute(firstMs)} to ${minute(lastMs)} UTC`);
  }
  if (ledger.length > 0) {
    lines.push('', 'Repair ledger of the whole store');
    for (const { reason, count } of ledger) {
      const { action, what } = ledgerReasons[reason];
      lines.push(`  ${String(count).padStart(9)}  ${reason} (${action}): ${what}`);
    }
  }
  if (ledger.some(({ reason }) => reason === 'time-unknown')) {
    lines.push(
      '',
      'Some runs have no time yet. Name a moment of each: --moment SOURCE:RUN:COUNTER_MS=INSTANT~MINUTES',
    );
  }
  for (const path of putAside)
    lines.push('', `A damaged file was put aside and read again from the raw log: ${path}`);
  return lines.join('\n');
}
