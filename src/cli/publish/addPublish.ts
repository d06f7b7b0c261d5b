import { InvalidArgumentError, Option, type Command } from 'commander';
import { licenceNames } from '../../app/api.ts';
import { folderPath, withProof } from '../options.ts';
import type { Take } from '../work.ts';
import type { Parts } from '../wire.ts';
import { runPublish, type PublishWords } from './publishCommand.ts';

/** Longest name of a maker. [characters] */
const NAME_MOST = 200;

/** Reads the name of a maker. */
function makerName(text: string): string {
  const name = text.trim();
  if (name !== '' && name.length <= NAME_MOST) return name;
  throw new InvalidArgumentError(`Allowed: a name of 1 to ${NAME_MOST} characters.`);
}

/** Adds `publish` to the commands. */
export function addPublish(root: Command, parts: Parts, take: Take): void {
  withProof(root.command('publish <FILE>'))
    .description(
      'everything to publish a build: files, how it works, certificate, photos, licences, one page, one zip',
    )
    .requiredOption('--out <DIR>', 'folder for the kit', folderPath)
    .option('--fit-folder <DIR>', 'folder that fit --out has written, with the certificate', folderPath)
    .option('--photos <DIR>', 'folder of your photos, named by what they show, such as disc.jpg', folderPath)
    .addOption(
      new Option(
        '--licence <NAME...>',
        'what others may do; each goes to the files it is written for',
      ).choices(licenceNames),
    )
    .option('--by <NAME>', 'who made it', makerName)
    .action((file: string, words: PublishWords) =>
      take('publish', (stop) => runPublish(parts, file, words, stop)),
    );
}
