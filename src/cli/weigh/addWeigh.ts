import { Option, type Command } from 'commander';
import { purposeNames, weighInstrument } from '../../app/api.ts';
import { EXIT } from '../exit.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { weighText } from './weighText.ts';

/** What stands behind `weigh`, read. */
interface WeighWords {
  readonly wind?: string;
  readonly purpose?: string;
}

/** Adds `weigh`. */
export function addWeigh(root: Command, parts: Parts, take: Take): void {
  root
    .command('weigh')
    .argument('[FILE]', 'instrument file')
    .description('which way of sensing serves this need, and whether to build a disc at all')
    .option('--wind <CSV>', 'recorded directions of the site: time,heading_deg; else site.wind is taken')
    .addOption(
      new Option(
        '--purpose <NAME>',
        'what the readings are for: which positions and accuracy that asks for',
      ).choices(purposeNames),
    )
    .action((path: string | undefined, { wind, purpose }: WeighWords) =>
      take('weigh', async () => {
        const request = { path: path ?? null, wind: wind ?? null, purpose: purpose ?? null };
        const weighed = await weighInstrument(parts.files, request);
        const isServed = weighed.weighing?.verdict.advice !== 'nothing-serves';
        return {
          exit: isServed ? EXIT.good : EXIT.short,
          text: weighText(weighed),
          document: { command: 'weigh', ok: isServed, ...weighed },
        };
      }),
    );
}
