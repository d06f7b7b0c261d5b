import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { exampleNames, paperNames, partNames, type ExampleName, type PaperName } from '../app/api.ts';
import { runMake, runNew, runProve, type ProveOptions } from './commands.ts';
import { addFit } from './fit/addFit.ts';
import { addArchive, addLog } from './log/addLog.ts';
import { addOpen } from './open/addOpen.ts';
import { folderPath, withProof } from './options.ts';
import { addPublish } from './publish/addPublish.ts';
import { addReview } from './review/addReview.ts';
import { addWeigh } from './weigh/addWeigh.ts';
import type { Parts } from './wire.ts';
import type { Take } from './work.ts';

function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

function addNew(root: Command, parts: Parts, take: Take): void {
  root
    .command('new')
    .argument('<DIR>', 'folder for the file', folderPath)
    .description('write a commented instrument file to begin from')
    .addOption(
      new Option('--from <EXAMPLE>', 'begin from one of the invented examples').choices(exampleNames),
    )
    .action((folder: string, { from }: { readonly from?: ExampleName }) =>
      take('new', (stop) => runNew(parts, folder, from ?? null, stop)),
    );
}

function addProve(root: Command, parts: Parts, take: Take): void {
  withProof(root.command('prove <FILE>'))
    .description('will it read right, and what to tighten first')
    .option('--against <OTHER>', 'compare with another instrument file in the same virtual builds')
    .action((file: string, options: ProveOptions & { against?: string }) =>
      take('prove', () => runProve(parts, file, options)),
    );
}

/** What stands behind `make`, read. */
interface MakeWords extends ProveOptions {
  readonly out: string;
  readonly only?: string[];
  readonly paper: PaperName;
}

function addMake(root: Command, parts: Parts, take: Take): void {
  withProof(root.command('make <FILE>'))
    .description('write cut and print files, program, parts list and build sheet')
    .requiredOption('--out <DIR>', 'folder for the files', folderPath)
    .option(
      '--only <PARTS>',
      `only some of: ${partNames.join(',')}; the rest of an earlier result stays`,
      (text) => text.split(','),
    )
    .addOption(new Option('--paper <SIZE>', 'paper of the drawing sheets').choices(paperNames).default('a4'))
    .action((file: string, { out, only, builds, seed, paper }: MakeWords) =>
      take('make', (stop) => runMake(parts, file, { builds, seed, out, paper, only: only ?? null }, stop)),
    );
}

/**
 * The words the command understands; commander reads them and hands the chosen work to `take`.
 *
 * @param isJson - Keeps commander from printing faults, since they go into the one document.
 */
export function program(parts: Parts, isJson: boolean, take: Take): Command {
  const root = new Command('vanewright')
    .description(
      'Make a wind vane, or any slow shaft, that reads its bearing from a coded disc you made yourself.',
    )
    .version(version(), '--version', 'print the version')
    .helpOption('-h, --help', 'show help')
    // Options behind a command are its own: `fit north` and `fit` have some of the same name.
    .enablePositionalOptions();
  addNew(root, parts, take);
  addWeigh(root, parts, take);
  addProve(root, parts, take);
  addMake(root, parts, take);
  addLog(root, parts, take);
  addArchive(root, take);
  addFit(root, parts, take);
  addReview(root, parts, take);
  addPublish(root, parts, take);
  addOpen(root, take);
  const below = root.commands.flatMap((command) => command.commands);
  for (const command of [root, ...root.commands, ...below]) {
    command
      .option('--json', 'print one JSON document instead of text')
      .exitOverride()
      .configureOutput({ outputError: (text, write) => (isJson ? undefined : write(text)) });
  }
  return root;
}
