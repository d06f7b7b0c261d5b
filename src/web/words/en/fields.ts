import { choiceNames } from './choiceNames.ts';
import { fieldNames } from './fieldNames.ts';

/** A choice of the file in plain words, the word of the file behind them; that word alone where it is plain. */
function choice(path: string, value: string): string {
  const plain = choiceNames[path]?.[value];
  return plain === undefined ? value : `${plain} (${value})`;
}

/** Words of the fields; the meaning, range and unit come from the schema of the file. */
export const fields = {
  names: fieldNames as Readonly<Record<string, string>>,
  choice,
  range: (low: string, high: string, unit: string) => `${low} to ${high}${unit}`,
  notNumber: (text: string) =>
    text.trim() === ''
      ? 'Write a number here, such as 12 or 0.5.'
      : `“${text}” is not a number. Write digits alone, such as 12 or 0.5.`,
  notWhole: 'Only whole numbers count here.',
  outside: (range: string) => `Allowed: ${range}.`,
  tooLong: (most: number) => `At most ${most} characters.`,
  empty: 'Something must stand here.',
  byDefault: (rule: string) => `If left empty: ${rule}.`,
  noList: (example: string) =>
    example === '' ? 'This list is not complete.' : `This list is not complete. Write it like: ${example}.`,
  more: 'More about it',
  add: (name: string) => `Add: ${name}`,
  remove: (name: string) => `Leave out: ${name}`,
};
