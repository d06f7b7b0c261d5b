import { figuresPdf } from '../../core/make/index.ts';
import { answerOf, reviewTables, type Review, type ReviewTable } from '../../core/review/index.ts';
import type { Fonts } from '../../ports/index.ts';

function onPaper({ title, headings, rows }: ReviewTable) {
  return { title, headings, rows, shares: headings.map(() => 1 / headings.length) };
}

/** The tables of a review on paper, a page each. */
export async function reviewPdf(fonts: Fonts, review: Review): Promise<Uint8Array> {
  const setting = { paper: 'a4', font: await fonts.sans() } as const;
  const title = `Review: ${review.name}`;
  const [whole, ...more] = reviewTables(review).filter(({ isLong, rows }) => !isLong && rows.length > 0);
  return figuresPdf(
    { title, lines: answerOf(review), tables: [onPaper(whole!)] },
    setting,
    more.map((one) => ({ title, lines: [], tables: [onPaper(one)] })),
  );
}
