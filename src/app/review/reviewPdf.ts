import { figuresPdf } from '../../core/make/index.ts';
import { answerOf, reviewTables, type Review, type ReviewTable } from '../../core/review/index.ts';
import type { Fonts } from '../../ports/index.ts';

/** Letters of the longest cell that count for a column's width: longer ones are broken into lines. [-] */
const LONGEST = 34;
/** Letters that the space between two columns takes. [-] */
const BETWEEN = 2;

/** A table as paper has it, each column as wide as its longest cell or the longest word of its heading. */
function onPaper({ title, headings, rows }: ReviewTable) {
  const letters = headings.map((heading, i) => {
    const words = heading.split(' ').map(({ length }) => length);
    return BETWEEN + Math.min(LONGEST, Math.max(...words, ...rows.map((row) => row[i]!.length)));
  });
  const all = letters.reduce((sum, count) => sum + count, 0);
  return { title, headings, rows, shares: letters.map((count) => count / all) };
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
