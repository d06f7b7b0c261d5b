import { InvalidArgumentError, Option, type Command } from 'commander';
import { equalWeights } from '../../core/wind/index.ts';
import { numberFrom } from '../fit/words.ts';
import { instantWord } from '../log/addLog.ts';
import { folderPath, wholeNumber } from '../options.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { runReview, type ReviewWords } from './reviewCommand.ts';

/** Reads the distance of local time from UTC, such as +01:00. [min] */
function offsetMin(text: string): number {
  const parts = /^([+-])(\d\d):([0-5]\d)$/.exec(text);
  const minutes = parts ? 60 * Number(parts[2]) + Number(parts[3]) : NaN;
  if (minutes <= 14 * 60) return parts![1] === '-' ? -minutes : minutes;
  throw new InvalidArgumentError('Allowed: the distance from UTC such as +01:00, from -14:00 to +14:00.');
}

/** Adds `review` to the commands. */
export function addReview(root: Command, parts: Parts, take: Take): void {
  root
    .command('review')
    .argument('<FILE>', 'instrument file')
    .description('what months of wind come to, how surely, and what is wrong with the instrument')
    .requiredOption('--store <STORE>', 'folder of the record, or postgres://user@host/database')
    .requiredOption('--out <DIR>', 'folder for the report', folderPath)
    .option('--raw <DIR>', 'folder of the raw log when the store is a PostgreSQL server')
    .option('--station <NAME>', 'name of the station; the name of the instrument when not given')
    .option('--since <INSTANT>', 'from here on', instantWord)
    .option('--until <INSTANT>', 'up to here', instantWord)
    .option(
      '--against <PERIOD|STATION>',
      'compare with a period, such as 2026-03 or 2026-03-01/2026-04-01, or with a station of the store',
    )
    .option('--sectors <N>', 'sectors of the rose, the first astride north', wholeNumber(4, 72), 16)
    .addOption(
      new Option('--equal-weight <OF>', 'what counts the same in the rose in spite of gaps')
        .choices(equalWeights)
        .default('reading'),
    )
    .option(
      '--utc-offset <HH:MM>',
      'local time less UTC for hours and months, such as +01:00; no summer time',
      offsetMin,
      0,
    )
    .option(
      '--calm-below-m-per-s <SPEED>',
      'slower than this is calm; else what cups and vane need to start',
      numberFrom(0, 5, 'm/s'),
    )
    .action((file: string, words: ReviewWords) =>
      take('review', (stop) => runReview(parts, file, words, stop)),
    );
}
