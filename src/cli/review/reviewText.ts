import type { Reviewed } from '../../app/api.ts';
import { answerOf, reviewTables } from '../../core/review/index.ts';
import { part } from '../textParts.ts';

/** What `review` prints. */
export function reviewText({ review, reasons, written }: Reviewed, out: string): string {
  const whole = reviewTables(review).find(({ name }) => name === 'whole')!;
  const wide = Math.max(...whole.rows.map(([figure]) => figure!.length));
  const flags = Object.entries(review.quality.totals).filter(([, count]) => count > 0);
  return [
    `${review.name}: station ${review.station}`,
    ...answerOf(review),
    ...part(
      whole.title,
      whole.rows.map(([figure, value, within]) => `${figure!.padEnd(wide)}  ${value} (${within})`),
    ),
    ...part(
      'Quality flags, nothing left out for them',
      flags.map(([flag, count]) => `${flag}: ${count} of ${review.samples} samples`),
    ),
    ...part('The data falls short', reasons),
    '',
    `Wrote ${written.paths.length} files to ${out}. Begin with review.html.`,
    ...(written.setAside.length > 0
      ? [`Kept your own version of changed files as: ${written.setAside.join(', ')}`]
      : []),
  ].join('\n');
}
