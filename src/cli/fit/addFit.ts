import { Option, type Command } from 'commander';
import type { Turned } from '../../core/fit/index.ts';
import { runFit } from '../commands.ts';
import { angleDeg, folderPath } from '../options.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { addCups } from './addCups.ts';
import { addNorth } from './addNorth.ts';
import { addRelease } from './addRelease.ts';

/** What stands behind `fit`, read. */
interface FitWords {
  readonly write?: boolean;
  readonly out?: string;
  readonly turned?: Turned;
  readonly startsAtDeg?: number;
  readonly decimalComma?: boolean;
}

function addTurn(fit: Command, parts: Parts, take: Take): void {
  fit
    .argument('<FILE>', 'instrument file')
    .argument('<RECORDING...>', 'recorded turn')
    .description('what is wrong with the build, and how to read it, from one turn by hand')
    .option('--write', 'put wiring, thresholds and table into FILE, comments kept')
    .option('--out <DIR>', 'folder for the certificate and the renewed program', folderPath)
    .addOption(
      new Option('--turned <WAY>', 'which way the vane was turned, seen from above').choices([
        'clockwise',
        'counter-clockwise',
      ]),
    )
    .option(
      '--starts-at-deg <ANGLE>',
      'disc angle under the sensors at the first row, 0 for the index mark',
      angleDeg,
    )
    .option('--decimal-comma', 'numbers such as 3,25 are 3.25')
    .action(
      (file: string, recordings: string[], { write, out, turned, startsAtDeg, decimalComma }: FitWords) => {
        const hints = {
          ...(turned ? { turned: Object.fromEntries(recordings.map((name) => [name, turned])) } : {}),
          ...(decimalComma ? { decimalComma } : {}),
        };
        const request = {
          path: file,
          recordings,
          hints,
          startsAtDeg: startsAtDeg ?? null,
          write: write ?? false,
          out: out ?? null,
        };
        take('fit', (stop) => runFit(parts, request, stop));
      },
    );
}

/** Adds `fit`, and below it the other things that are measured on a finished build. */
export function addFit(root: Command, parts: Parts, take: Take): void {
  const fit = root.command('fit').enablePositionalOptions();
  addTurn(fit, parts, take);
  addNorth(fit, parts, take);
  addCups(fit, parts, take);
  addRelease(fit, parts, take);
}
