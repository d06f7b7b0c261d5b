import { equalWeights, type EqualWeight } from '../../wind/index.ts';

const weightWords: Record<EqualWeight, string> = {
  reading: 'every reading counts the same',
  hour: 'each hour of the day counts the same',
  season: 'each season counts the same',
  month: 'each month counts the same',
  'hour-of-season': 'each hour of each season counts the same',
  'hour-of-month': 'each hour of each month counts the same',
};

/** What counts the same in a rose, in words. */
export function weightText(weight: EqualWeight): string {
  return weightWords[equalWeights.find((one) => one === weight)!];
}
