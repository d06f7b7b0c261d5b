import type { MonthPrint } from '../../faults/index.ts';
import { percentText } from './words.ts';
import type { ReviewTable } from './reviewTable.ts';

/** What explains the words of each month best; none where no words were logged. */
export function causesTable(prints: readonly MonthPrint[]): ReviewTable[] {
  if (prints.length === 0) return [];
  return [
    {
      name: 'causes',
      title: 'What would explain the words of each month',
      defined: ['causes'],
      headings: ['month', 'likeliest', 'its share of the odds', 'next likeliest', 'its share of the odds'],
      rows: prints.map(({ month, causes: [first, second] }) => [
        month,
        first!.title,
        percentText(first!.probability),
        second?.title ?? '–',
        percentText(second?.probability),
      ]),
    },
  ];
}
