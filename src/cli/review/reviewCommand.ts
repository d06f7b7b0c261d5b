import { reviewRecord } from '../../app/api.ts';
import type { EqualWeight } from '../../core/wind/index.ts';
import { EXIT } from '../exit.ts';
import { openStore } from '../log/wire.ts';
import type { Outcome } from '../outcome.ts';
import type { Parts } from '../wire.ts';
import { reviewDocument } from './reviewDocument.ts';
import { reviewText } from './reviewText.ts';
import { shareLine } from './shareLine.ts';

/** What stands behind `review`, read. */
export interface ReviewWords {
  readonly store: string;
  readonly raw?: string;
  readonly station?: string;
  readonly since?: number;
  readonly until?: number;
  readonly against?: string;
  readonly sectors: number;
  readonly equalWeight: EqualWeight;
  readonly utcOffset: number;
  readonly calmBelowMPerS?: number;
  readonly out: string;
}

/** `vanewright review FILE --store STORE --out DIR` */
export async function runReview(
  parts: Parts,
  file: string,
  words: ReviewWords,
  stop: AbortSignal,
): Promise<Outcome> {
  const opened = await openStore({ store: words.store, raw: words.raw ?? null });
  const progress = shareLine(process.stderr);
  try {
    const reviewed = await reviewRecord(
      { ...parts, store: opened.store, onProgress: progress.show },
      {
        path: file,
        station: words.station ?? null,
        sinceMs: words.since ?? null,
        untilMs: words.until ?? null,
        against: words.against ?? null,
        sectors: words.sectors,
        equalWeight: words.equalWeight,
        utcOffsetMin: words.utcOffset,
        calmBelowMPerS: words.calmBelowMPerS ?? null,
        out: words.out,
      },
      stop,
    );
    progress.end();
    return {
      exit: reviewed.reasons.length === 0 ? EXIT.good : EXIT.short,
      text: reviewText(reviewed, words.out),
      document: reviewDocument(reviewed, words.out),
    };
  } finally {
    progress.end();
    await opened.close();
  }
}
