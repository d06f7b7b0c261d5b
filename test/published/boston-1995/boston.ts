import { readFileSync } from 'node:fs';

/** Lines of a file beside this one, as numbers, without the heading. */
export function numbersIn(file: string): number[][] {
  const lines = readFileSync(new URL(file, import.meta.url), 'utf8')
    .trim()
    .split('\n');
  return lines.slice(1).map((line) => line.split(',').map(Number));
}

/** Hourly reports; 360 is north there. [deg], [m/s] */
export const reports = numbersIn('./boston.csv').map(([headingDeg, speedMPerS]) => ({
  headingDeg: headingDeg!,
  speedMPerS: speedMPerS!,
}));
