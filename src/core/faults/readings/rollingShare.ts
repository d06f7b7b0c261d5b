const HOUR_MS = 3_600_000;

interface Hour {
  readonly hour: number;
  yes: number;
  all: number;
  firstYesMs: number | null;
}

/** How many of the samples of the last hours are of one kind, in whole hours. */
export class RollingShare {
  readonly #hours: number;
  #kept: Hour[] = [];
  #last: Hour | null = null;
  lastYesMs: number | null = null;

  /** @param hours - How far it looks back. [h] */
  constructor(hours: number) {
    this.#hours = hours;
  }

  /** Adds a sample; tells whether it began a new hour. [ms UTC] */
  add(atMs: number, isYes: boolean): boolean {
    const hour = Math.floor(atMs / HOUR_MS);
    const isNew = this.#last?.hour !== hour;
    if (isNew) {
      this.#last = { hour, yes: 0, all: 0, firstYesMs: null };
      this.#kept = [...this.#kept.filter((kept) => kept.hour > hour - this.#hours), this.#last];
    }
    const last = this.#last!;
    last.all++;
    if (isYes) {
      last.yes++;
      last.firstYesMs ??= atMs;
      this.lastYesMs = atMs;
    }
    return isNew;
  }

  /** Samples of the last hours. [-] */
  counts(): { readonly yes: number; readonly all: number } {
    return this.#kept.reduce((sum, { yes, all }) => ({ yes: sum.yes + yes, all: sum.all + all }), {
      yes: 0,
      all: 0,
    });
  }

  /** First one of them; `null` = none. [ms UTC] */
  get firstYesMs(): number | null {
    return this.#kept.find(({ firstYesMs }) => firstYesMs !== null)?.firstYesMs ?? null;
  }
}
