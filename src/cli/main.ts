import { CommanderError } from 'commander';
import { VanewrightError } from '../core/error/index.ts';
import { EXIT, type Exit } from './exit.ts';
import { refusal } from './outcome.ts';
import { print } from './print.ts';
import { program } from './program.ts';
import { settle, type Chosen } from './settle.ts';
import { wire } from './wire.ts';

/** Words that could not be read as a command: said in the one document where `--json` is given. */
async function misread(words: readonly string[], isJson: boolean, error: CommanderError): Promise<Exit> {
  if (error.exitCode === 0) return EXIT.good;
  if (isJson) {
    const problem = {
      code: 'cli/usage',
      what: error.message.replace(/^error: /, '').replace(/^\(outputHelp\)$/, 'No command was given.'),
      where: 'command line',
      got: words.join(' '),
      allowed: 'a command and its options as `vanewright --help` lists them',
      fix: 'Run: vanewright --help',
    };
    const { problems } = new VanewrightError(problem);
    await print(process.stdout, `${JSON.stringify(refusal(words[0] ?? '', problems), null, 2)}\n`);
  }
  return EXIT.badInput;
}

/**
 * The command line.
 *
 * @param words - What stands behind the command's name.
 * @returns 0 good, 1 the design falls short, 2 bad input, 74 not printed, 130 stopped.
 */
export async function run(words: readonly string[]): Promise<Exit> {
  const isJson = words.includes('--json');
  const stopper = new AbortController();
  const chosen: Chosen[] = [];
  try {
    program(wire(stopper), isJson, (command, work) => chosen.push({ command, work })).parse(
      words as string[],
      {
        from: 'user',
      },
    );
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return misread(words, isJson, error);
  }
  const [first] = chosen;
  return first ? settle(first, isJson, stopper.signal) : EXIT.badInput;
}
