import { publishInstrument } from '../../app/api.ts';
import { EXIT } from '../exit.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { publishDocument, publishText } from './publishText.ts';

/** What stands behind `publish`, read. */
export interface PublishWords {
  readonly out: string;
  readonly fitFolder?: string;
  readonly photos?: string;
  readonly licence?: string[];
  readonly by?: string;
  readonly builds: number;
  readonly seed: number;
}

/** `vanewright publish FILE --out DIR` */
export async function runPublish(
  parts: Parts,
  path: string,
  words: PublishWords,
  stop: AbortSignal,
): Promise<Outcome> {
  const published = await publishInstrument(
    parts,
    {
      path,
      builds: words.builds,
      seed: words.seed,
      out: words.out,
      fitFolder: words.fitFolder ?? null,
      photos: words.photos ?? null,
      licences: words.licence ?? [],
      by: words.by ?? null,
    },
    stop,
  );
  const { ok, ...document } = publishDocument(published, words.out);
  return {
    exit: ok ? EXIT.good : EXIT.short,
    text: publishText(published, words.out),
    document: { command: 'publish', ok, ...document },
  };
}
