import { documentOf } from '../../server/askServer.ts';

interface Definition {
  readonly id: string;
  readonly term: string;
  readonly meaning: string;
  readonly source: string;
}

/** A review as the server works it out and draws it. */
export interface ShownReview {
  readonly answer: readonly string[];
  /** Why the data falls short; empty where it does not. */
  readonly reasons: readonly string[];
  readonly samples: number;
  readonly pictures: readonly {
    readonly name: string;
    readonly caption: string;
    readonly defined: readonly string[];
    readonly svg: string;
  }[];
  readonly tables: readonly {
    readonly name: string;
    readonly title: string;
    readonly defined: readonly string[];
    readonly headings: readonly string[];
    readonly rows: readonly (readonly string[])[];
    readonly isLong?: boolean;
    readonly csv: string;
  }[];
  readonly definitions: Readonly<Record<string, Definition>>;
  /** The whole report, a page of its own. */
  readonly page: string;
}

/** Reviews a station's window; the hours are those of this reader's clock. @throws Refused, Away */
export function askReview(
  station: string,
  window: { readonly sinceMs: number; readonly untilMs: number },
  signal: AbortSignal,
): Promise<ShownReview> {
  const query = new URLSearchParams({
    station,
    sinceMs: String(window.sinceMs),
    untilMs: String(window.untilMs),
    utcOffsetMin: String(-new Date().getTimezoneOffset()),
  });
  return documentOf(`review?${query}`, { signal });
}
