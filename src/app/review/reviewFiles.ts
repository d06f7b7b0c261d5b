import { csvText } from '../../core/report/index.ts';
import { reviewData, reviewPage, reviewPictures, type Review } from '../../core/review/index.ts';
import type { Fonts, OutputFile } from '../../ports/index.ts';
import { reviewPdf } from './reviewPdf.ts';

/** Page, sheet, pictures and tables of a review. */
export async function filesOf(fonts: Fonts, review: Review): Promise<OutputFile[]> {
  return [
    { path: 'review.html', content: reviewPage(review) },
    { path: 'review.pdf', content: await reviewPdf(fonts, review) },
    ...reviewPictures(review).map(({ name, drawing }) => ({
      path: `pictures/${name}.svg`,
      content: `${drawing.html}\n`,
    })),
    ...reviewData(review).map(({ name, headings, rows }) => ({
      path: `tables/${name}.csv`,
      content: csvText(headings, rows),
    })),
  ];
}
