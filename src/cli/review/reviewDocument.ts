import type { Reviewed } from '../../app/api.ts';

/** The one document that `review --json` prints; days and stretches are in the tables that were written. */
export function reviewDocument({ review, reasons, written }: Reviewed, out: string): Record<string, unknown> {
  const { coverage, quality, fromMs, untilMs, firstMs, lastMs, rose, ...rest } = review;
  const { days: _, ...covered } = coverage;
  const time = (atMs: number): string => new Date(atMs).toISOString();
  return {
    command: 'review',
    ok: reasons.length === 0,
    folder: out,
    files: written.paths,
    reasons,
    since: time(fromMs),
    until: time(untilMs),
    first: time(firstMs),
    last: time(lastMs),
    ...rest,
    rose: rose && { petals: rose.petals, calm: rose.calm, coverage: rose.coverage, readings: rose.readings },
    coverage: covered,
    quality: quality.totals,
  };
}
