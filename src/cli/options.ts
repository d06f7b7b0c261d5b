import { InvalidArgumentError, type Command } from 'commander';
import { DEFAULT_BUILDS, DEFAULT_SEED } from '../app/api.ts';

/** Builds past this would run for hours; the range of a yield gains nothing any more. */
const MOST_BUILDS = 1_000_000;

/** Reads a whole number; anything else is refused with the range. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Allowed: a whole number from ${least} to ${most}.`);
  };
}

/** Reads the path of a folder; an empty one would quietly mean the folder one stands in. */
export function folderPath(text: string): string {
  if (text.trim() !== '') return text;
  throw new InvalidArgumentError('Allowed: the path of a folder, such as out/my-vane.');
}

/** Reads an angle of a turn. [deg], [0, 360) */
export function angleDeg(text: string): number {
  const value = Number(text);
  if (/^\d+([.]\d+)?$/.test(text) && value < 360) return value;
  throw new InvalidArgumentError('Allowed: an angle in degrees from 0 to less than 360.');
}

/** Options of every command that proves a design. */
export function withProof(command: Command): Command {
  return command
    .option('--builds <N>', 'virtual builds', wholeNumber(1, MOST_BUILDS), DEFAULT_BUILDS)
    .option(
      '--seed <S>',
      'seed of the draws; the same seed gives the same builds',
      wholeNumber(0, 2 ** 31 - 1),
      DEFAULT_SEED,
    );
}
