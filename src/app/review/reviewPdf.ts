import { figuresPdf } from '../../core/make/index.ts';
import { answerOf, reviewTables, type Review } from '../../core/review/index.ts';
import type { Fonts } from '../../ports/index.ts';

/** The review on paper. */
export async function reviewPdf(fonts: Fonts, review: Review): Promise<Uint8Array> {
  const setting = { paper: 'a4', font: await fonts.sans() } as const;
  return figuresPdf(
    {
      title: `Review: ${review.name}`,
      lines: answerOf(review),
      tables: reviewTables(review)
        .filter(({ isLong }) => !isLong)
        .map(({ title, headings, rows }) => ({
          title,
          headings,
          rows,
          shares: headings.map(() => 1 / headings.length),
        })),
    },
    setting,
  );
}
