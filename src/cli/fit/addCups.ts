import type { Command } from 'commander';
import { fitCups, type CupsRequest } from '../../app/api.ts';
import { EXIT } from '../exit.ts';
import { folderPath, wholeNumber } from '../options.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { cupsDocument, cupsText } from './cupsText.ts';

/** More turns or pulses than a hand makes. */
const MOST = 1_000_000;

/** What stands behind `fit cups`, read. */
interface CupsWords {
  readonly turns?: number;
  readonly pulses?: number;
  readonly edges?: string;
  readonly count?: string;
  readonly reference?: string;
  readonly track?: string;
  readonly blockS: number;
  readonly write?: boolean;
  readonly out?: string;
}

/** Adds `fit cups`. */
export function addCups(fit: Command, parts: Parts, take: Take): void {
  fit
    .command('cups')
    .argument('<FILE>', 'instrument file')
    .description('pulses a turn, quiet time, and wind speed from the rate of the pulses')
    .option('--turns <N>', 'turns of the cups by hand', wholeNumber(1, MOST))
    .option(
      '--pulses <N>',
      'pulses that were counted in those turns; else they are counted in --edges',
      wholeNumber(0, MOST),
    )
    .option('--edges <CSV>', 'moments of all edges, opening and closing: edge_us')
    .option('--count <CSV>', 'running count of the pulses: time_s,pulses')
    .option('--reference <CSV>', 'speed by the same clock: time_s,speed_m_s')
    .option(
      '--track <CSV>',
      'track of a car, by any clock: time_s,latitude_deg,longitude_deg or time_s,speed_m_s,course_deg',
    )
    .option('--block-s <N>', 'length of the means compared with --reference', wholeNumber(1, 86_400), 60)
    .option('--write', 'put what was found into the section cups of FILE, comments kept')
    .option('--out <DIR>', 'folder for the picture of what is left beside the line', folderPath)
    .action((path: string, words: CupsWords) => {
      const request: CupsRequest = {
        path,
        turns: words.turns ?? null,
        pulses: words.pulses ?? null,
        edges: words.edges ?? null,
        count: words.count ?? null,
        reference: words.reference ?? null,
        track: words.track ?? null,
        blockS: words.blockS,
        write: words.write ?? false,
        out: words.out ?? null,
      };
      take('fit cups', async (stop) => {
        const cups = await fitCups(parts, request, stop);
        return { exit: EXIT.good, text: cupsText(cups, path), document: cupsDocument(cups) };
      });
    });
}
