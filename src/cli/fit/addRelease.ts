import type { Command } from 'commander';
import { fitRelease, type ReleaseRequest } from '../../app/api.ts';
import { EXIT } from '../exit.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { releaseDocument, releaseText } from './releaseText.ts';
import { numberFrom } from './words.ts';

/** What stands behind `fit release`, read. */
interface ReleaseWords {
  readonly swing?: string;
  readonly speedMPerS?: number;
  readonly resolutionDeg?: number;
  readonly spinDown?: string;
}

/** Adds `fit release`. */
export function addRelease(fit: Command, parts: Parts, take: Take): void {
  fit
    .command('release')
    .argument('<FILE>', 'instrument file')
    .description('damping of the vane held off the wind and let go, and spin-down of the cups')
    .option('--swing <CSV>', 'headings from holding to rest: time_s,heading_deg')
    .option('--speed-m-per-s <SPEED>', 'speed of the stream during the swing', numberFrom(0.1, 60, 'm/s'))
    .option(
      '--resolution-deg <ANGLE>',
      'smallest change the headings show; else one step',
      numberFrom(0.001, 90, 'degrees'),
    )
    .option('--spin-down <CSV>', 'moments of the pulses of cups spun by hand and let go: time_s')
    .action((path: string, words: ReleaseWords) => {
      const request: ReleaseRequest = {
        path,
        swing: words.swing ?? null,
        speedMPerS: words.speedMPerS ?? null,
        resolutionDeg: words.resolutionDeg ?? null,
        spinDown: words.spinDown ?? null,
      };
      take('fit release', async () => {
        const release = await fitRelease(parts.files, request);
        return {
          exit: release.isWithin ? EXIT.good : EXIT.short,
          text: releaseText(release),
          document: releaseDocument(release),
        };
      });
    });
}
