import type { Finding } from './finding.ts';
import type { Seen } from './readings/seen.ts';

/** Looks for one kind of fault, a sample at a time, with bounded memory. */
export interface Detector {
  add(seen: Seen): void;
  /** Everything found so far; what still lasts has no end. */
  findings(): readonly Finding[];
}

/** More findings of one kind than anyone reads; the oldest stay, and the last one says how many there were. [-] */
const KEPT_MOST = 400;

/** What is known when a fault opens. */
export type Opening = Omit<Finding, 'untilMs'>;

/** Findings of one detector: at most one open at a time for each subject, such as a channel. */
export class Episodes {
  readonly #closed: Finding[] = [];
  readonly #open = new Map<number, Finding>();

  /** Whether a fault of this subject is open. [-] */
  isOpen(subject = 0): boolean {
    return this.#open.has(subject);
  }

  open(opening: Opening, subject = 0): void {
    if (!this.#open.has(subject)) this.#open.set(subject, { ...opening, untilMs: null });
  }

  /** Says more of an open fault, once more is known. */
  update(more: Partial<Opening>, subject = 0): void {
    const finding = this.#open.get(subject);
    if (finding) this.#open.set(subject, { ...finding, ...more });
  }

  /** @param untilMs - When it was over. [ms UTC] */
  close(untilMs: number, subject = 0): void {
    const finding = this.#open.get(subject);
    if (!finding) return;
    this.#open.delete(subject);
    if (this.#closed.length < KEPT_MOST) this.#closed.push({ ...finding, untilMs });
    else {
      const last = this.#closed.at(-1)!;
      this.#closed[KEPT_MOST - 1] = {
        ...last,
        untilMs,
        title: `${last.title.replace(/ \(and again.*\)$/, '')} (and again up to ${new Date(untilMs).toISOString().slice(0, 10)})`,
      };
    }
  }

  all(): readonly Finding[] {
    return [...this.#closed, ...this.#open.values()];
  }
}
