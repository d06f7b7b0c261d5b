import { describe, expect, it } from 'vitest';
import { fieldSchema } from '../../core/instrument/index.ts';
import { listText, readList } from './listText.ts';
import { schemaAt } from './schemaField.ts';

const at = (path: string) => schemaAt(fieldSchema(), path.split('.'))!;

describe('a list that someone types', () => {
  it('is words with commas or blanks between', () => {
    expect(readList('A0, A1 A2', at('controller.channelPins'))).toEqual(['A0', 'A1', 'A2']);
    expect(listText(['A0', 'A1'])).toBe('A0, A1');
  });

  it('is rows of numbers with semicolons between', () => {
    const schema = at('head.detector.marksRgbCounts');
    const marks = [
      [540, 198, 162],
      [225, 450, 225],
      [162, 270, 468],
    ];
    expect(readList('540 198 162; 225, 450, 225; 162 270 468', schema)).toEqual(marks);
    expect(readList(listText(marks), schema)).toEqual(marks);
  });

  it.each(['', '540 198 162', '1 2 3; 4 5 6; 7 8', '1 2 3; 4 5 6; 7 8 x'])(
    'is none where rows are missing or no numbers: %j',
    (text) => expect(readList(text, at('head.detector.marksRgbCounts'))).toBeNull(),
  );
});
