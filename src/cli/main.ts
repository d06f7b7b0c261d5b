import { readFileSync } from 'node:fs';
import { Command, CommanderError, InvalidArgumentError } from 'commander';
import { DEFAULT_BUILDS, DEFAULT_SEED } from '../app/api.ts';
import { VanewrightError } from '../core/error/index.ts';
import { runMake, runNew, runProve, type ProveOptions } from './commands.ts';
import { EXIT, type Exit } from './exit.ts';
import { refusal, type Outcome } from './outcome.ts';
import { wire } from './wire.ts';

/** Builds past this would run for hours; the range of a yield gains nothing any more. */
const MOST_BUILDS = 1_000_000;

function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= least && value <= most) return value;
    throw new InvalidArgumentError(`Allowed: a whole number from ${least} to ${most}.`);
  };
}

function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

function withProof(command: Command): Command {
  return command
    .option('--builds <N>', 'virtual builds', wholeNumber(1, MOST_BUILDS), DEFAULT_BUILDS)
    .option(
      '--seed <S>',
      'seed of the draws; the same seed gives the same builds',
      wholeNumber(0, 2 ** 31 - 1),
      DEFAULT_SEED,
    );
}

/** Hands the work of the chosen command to `take`; commander itself only reads the words. */
function program(take: (command: string, work: (stop: AbortSignal) => Promise<Outcome>) => void): Command {
  const parts = wire();
  const root = new Command('vanewright')
    .description(
      'Make a wind vane, or any slow shaft, that reads its bearing from a coded disc you made yourself.',
    )
    .version(version(), '--version', 'print the version')
    .option('--json', 'print one JSON document instead of text')
    .helpOption('-h, --help', 'show help')
    .exitOverride()
    .configureOutput({ outputError: (text, write) => write(text) });
  root
    .command('new <DIR>')
    .description('write a commented instrument file to begin from')
    .action((folder: string) => take('new', (stop) => runNew(parts, folder, stop)));
  withProof(root.command('prove <FILE>').description('will it read right, and what to tighten first')).action(
    (file: string, options: ProveOptions) => take('prove', () => runProve(parts, file, options)),
  );
  withProof(
    root.command('make <FILE>').description('write cut and print files, program, parts list and build sheet'),
  )
    .requiredOption('--out <DIR>', 'folder for the files')
    .option('--only <PARTS>', 'make only these parts, commas between', (text: string) =>
      text.split(',').filter(Boolean),
    )
    .action((file: string, { out, only, builds, seed }: ProveOptions & { out: string; only?: string[] }) =>
      take('make', (stop) => runMake(parts, file, { builds, seed, out, only: only ?? null }, stop)),
    );
  for (const command of root.commands)
    command.option('--json', 'print one JSON document instead of text').exitOverride();
  return root;
}

/** Runs the work; Ctrl-C stops it between files, so that nothing half-written stays. */
async function settle(
  command: string,
  isJson: boolean,
  work: (stop: AbortSignal) => Promise<Outcome>,
): Promise<Exit> {
  const stopper = new AbortController();
  const stop = (): void => stopper.abort();
  process.once('SIGINT', stop).once('SIGTERM', stop);
  try {
    const { exit, text, document } = await work(stopper.signal);
    process.stdout.write(isJson ? `${JSON.stringify(document, null, 2)}\n` : `${text}\n`);
    return exit;
  } catch (error) {
    if (stopper.signal.aborted) {
      process.stderr.write('Stopped; nothing was written.\n');
      return EXIT.stopped;
    }
    if (!(error instanceof VanewrightError)) throw error;
    if (isJson) process.stdout.write(`${JSON.stringify(refusal(command, error.problems), null, 2)}\n`);
    else process.stderr.write(`${error.message}\n`);
    return EXIT.badInput;
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}

/**
 * The command line.
 *
 * @param words - What stands behind the command's name.
 * @returns 0 good, 1 the design falls short, 2 bad input, 130 stopped.
 */
export async function run(words: readonly string[]): Promise<Exit> {
  let chosen: { command: string; work: (stop: AbortSignal) => Promise<Outcome> } | null = null;
  try {
    program((command, work) => {
      chosen = { command, work };
    }).parse(words as string[], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.good : EXIT.badInput;
  }
  if (chosen === null) return EXIT.badInput;
  const { command, work } = chosen as { command: string; work: (stop: AbortSignal) => Promise<Outcome> };
  return settle(command, words.includes('--json'), work);
}
