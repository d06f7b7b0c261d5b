import { InvalidArgumentError, Option, type Command } from 'commander';
import { wholeNumber } from '../options.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { runArchive, type ArchiveWords } from './archiveCommand.ts';
import { runLog } from './logCommand.ts';
import type { LogWords } from './logWords.ts';
import { momentWord } from './momentWord.ts';

const collected =
  <T>(read: (text: string) => T) =>
  (text: string, before: readonly T[] | undefined): T[] => [...(before ?? []), read(text)];

/** Takes a command and its work. */
type Take = (command: string, work: () => Promise<Outcome>) => void;

/** Adds `log` to the commands. */
export function addLog(root: Command, parts: Parts, take: Take): void {
  root
    .command('log')
    .argument('<FILE>', 'instrument file')
    .description('record lines for months, mended and with nothing lost; import old logs')
    .option(
      '--from <SOURCE>',
      'where lines come from: - for standard input, a file or folder of old logs, a serial port, mqtt://host/topic',
      collected((text) => text),
      [],
    )
    .requiredOption('--store <STORE>', 'folder for the record, or postgres://user@host/database')
    .option('--raw <DIR>', 'folder for the raw log when the store is a PostgreSQL server')
    .option('--station <NAME>', 'name of the station; the name of the instrument when not given')
    .option('--old', 'standard input is an old log, so the time of its lines is not now')
    .option('--zone <ZONE>', 'time zone of times that do not say theirs, such as Europe/Berlin')
    .addOption(
      new Option('--date-order <ORDER>', 'of dates such as 03/04/2026').choices([
        'day-first',
        'month-first',
        'year-first',
      ]),
    )
    .addOption(new Option('--speed-unit <UNIT>', 'of old logs').choices(['m/s', 'km/h', 'kt', 'mph', 'ft/s']))
    .addOption(new Option('--heading-as <KIND>', 'of old logs').choices(['degrees', 'positions']))
    .option('--decimal-comma', 'a comma in old logs is a decimal comma')
    .option(
      '--moment <WORDS>',
      'a remembered moment of a run without a clock, SOURCE:RUN:COUNTER_MS=INSTANT~MINUTES',
      collected(momentWord),
    )
    .option(
      '--listen <PORT>',
      'local web interface with the wind of now; 0 takes a free port',
      wholeNumber(0, 65_535),
    )
    .option(
      '--alert <WHERE>',
      'tell faults as they come and go: https://host/path, mqtt://user@host/topic, smtp://user@host/to@example.org',
      collected((text) => text),
      [],
    )
    .option(
      '--group <NAME>',
      'share the lines of a broker with other workers of this name; needs a PostgreSQL store',
    )
    .option('--worker <NAME>', 'name of this worker in its group: no two alike, and the same at every start')
    .option('--rebuild', 'read the whole raw log again, with what is said here')
    .option('--what-if', 'say what the raw log would come to with what is said here, and change nothing')
    .action((file: string, words: LogWords) => take('log', () => runLog(parts, file, words)));
}

/** Reads an instant; a date alone is its beginning in UTC. */
export function instantWord(text: string): number {
  const atMs = Date.parse(text);
  if (!Number.isNaN(atMs)) return atMs;
  throw new InvalidArgumentError('Allowed: a date or an instant such as 2026-05-01 or 2026-05-01T10:00Z.');
}

/** Adds `archive` to the commands. */
export function addArchive(root: Command, take: Take): void {
  root
    .command('archive')
    .description('copy a record to files that any program reads, or back it up and restore it')
    .requiredOption('--store <STORE>', 'folder of the record, or postgres://user@host/database')
    .option('--raw <DIR>', 'folder of the raw log when the store is a PostgreSQL server')
    .option('--out <DIR>', 'folder for the archive')
    .addOption(
      new Option('--as <FORMAT>', 'parquet and csv for other programs, raw for a backup')
        .choices(['parquet', 'csv', 'raw'])
        .default('parquet'),
    )
    .option('--since <INSTANT>', 'from here on', instantWord)
    .option('--until <INSTANT>', 'up to here', instantWord)
    .option(
      '--keep-days <DAYS>',
      'move whole months that are older out of the store into the archive, with 10-minute means; without it nothing is removed',
      wholeNumber(1, 100_000),
    )
    .option('--restore <DIR>', 'bring a backup back into a new store')
    .action((words: ArchiveWords) => take('archive', () => runArchive(words)));
}
