import type { Command } from 'commander';
import { wholeNumber } from '../options.ts';
import type { Take } from '../work.ts';
import { runOpen, type OpenWords } from './openCommand.ts';

/** Adds `open` to the commands. */
export function addOpen(root: Command, take: Take): void {
  root
    .command('open')
    .argument('[FILE]', 'instrument file, or a folder to begin in; the folder you stand in when not given')
    .description('the workbench: the whole job in your browser')
    .option('--store <STORE>', 'record to show: the folder that log fills, or postgres://user@host/database')
    .option('--port <N>', 'port to listen on; 0 takes a free one', wholeNumber(0, 65_535))
    .option(
      '--serial <PORT>',
      'serial port to offer for recording a turn, besides those that are found',
      (text: string, before: readonly string[]) => [...before, text],
      [] as readonly string[],
    )
    .option('--no-browser', 'only print the address')
    .option(
      '--host <HOST>',
      'address to listen on; anything but this machine alone asks for a token',
      '127.0.0.1',
    )
    .option('--token <TOKEN>', 'token to ask for, 16 signs or more; a random one when not given')
    .action((file: string | undefined, words: OpenWords) => take('open', () => runOpen(file ?? null, words)));
}
