import { positionsApart, type CodeTable } from '../../codes/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';

const DAY_MS = 86_400_000;
/** Far visits by one channel at one position from which it is told. [-] */
const VISITS = 25;
/** They must be this many times the usual visits to the position itself. [-] */
const TIMES = 4;
/** Counts fade by half in this time. [ms] */
const HALF_MS = 14 * DAY_MS;
/** Further than this share of a turn is far. [-] */
const FAR = 1 / 8;
/** Chance in a year of a clean disc. [-]; bench/faults.ts */
const CHANCE = 0.02;

interface Place {
  far: number;
  usual: number;
  atMs: number;
  firstMs: number;
}

/** A window that is stopped or a land that is open: one position reads as another far away, and back. */
export class DirtyWords implements Detector {
  readonly #episodes = new Episodes();
  readonly #code: CodeTable;
  /** For each word that is far from where it seems: position and channel that would explain it. */
  readonly #stands = new Map<number, { readonly position: number; readonly channel: number }[]>();
  readonly #places = new Map<number, Place>();
  /** Faded arrivals at each position that came from nearby: where the vane truly is. [-] */
  readonly #near: number[];
  #day = 0;
  #from: number | null = null;
  #visit: number | null = null;

  constructor(code: CodeTable) {
    this.#code = code;
    this.#near = code.words.map(() => 0);
    for (const [position, word] of code.words.entries()) {
      for (let channel = 0; channel < word.length; channel++) {
        const other = word[channel] === '0' ? '1' : '0';
        const shown = code.positionOf(word.slice(0, channel) + other + word.slice(channel + 1));
        if (shown === null || positionsApart(shown, position, code.positions) < FAR * code.positions)
          continue;
        this.#stands.set(shown, [...(this.#stands.get(shown) ?? []), { position, channel }]);
      }
    }
  }

  add({ atMs, position, before }: Seen): void {
    if (before === null) this.#from = this.#visit = null;
    if (position === null || position === before) return;
    const { positions } = this.#code;
    const isFar = before !== null && positionsApart(before, position, positions) >= FAR * positions;
    const [from, visit] = [this.#from, this.#visit];
    this.#from = before;
    this.#visit = isFar ? position : null;
    if (before !== null && !isFar) this.#usual(position, atMs);
    if (visit === null || from === null || !isFar) return;
    // There and back: the position between is the one that was misread.
    for (const { position: true_, channel } of this.#stands.get(visit) ?? []) {
      const isBeside =
        positionsApart(from, true_, positions) <= 2 && positionsApart(position, true_, positions) <= 2;
      if (isBeside) this.#far({ position: true_, channel, shown: visit }, atMs);
    }
  }

  #place(key: number, atMs: number): Place {
    let place = this.#places.get(key);
    if (!place) this.#places.set(key, (place = { far: 0, usual: 0, atMs, firstMs: atMs }));
    const fade = 0.5 ** ((atMs - place.atMs) / HALF_MS);
    place.far *= fade;
    place.usual *= fade;
    place.atMs = atMs;
    if (place.far < 1) place.firstMs = atMs;
    return place;
  }

  /** Arrivals beside a position, itself left out. [-] */
  #around(position: number): number {
    const { positions } = this.#code;
    return [-3, -2, -1, 1, 2, 3].reduce(
      (sum, d) => sum + this.#near[(position + d + positions) % positions]!,
      0,
    );
  }

  #usual(position: number, atMs: number): void {
    const day = Math.floor(atMs / DAY_MS);
    if (day !== this.#day)
      for (const [i, count] of this.#near.entries())
        this.#near[i] = count * 0.5 ** (((day - this.#day) * DAY_MS) / HALF_MS);
    this.#day = day;
    this.#near[position]!++;
    const channels = this.#code.channels.length;
    for (let channel = 0; channel < channels; channel++) {
      const key = position * channels + channel;
      if (!this.#places.has(key)) continue;
      const place = this.#place(key, atMs);
      place.usual++;
      if (place.usual > TIMES * place.far) this.#episodes.close(atMs, key);
    }
  }

  #far(
    { position, channel, shown: visited }: { position: number; channel: number; shown: number },
    atMs: number,
  ): void {
    const key = position * this.#code.channels.length + channel;
    const place = this.#place(key, atMs);
    place.far++;
    if (place.far < VISITS || place.far < TIMES * place.usual) return;
    // To and fro looks the same from the place that is shown by mistake, but the vane is seldom about there.
    if (this.#around(position) < this.#around(visited)) return;
    const shown = this.#code.words[position]!;
    this.#episodes.open(
      {
        kind: 'dirty-sector',
        sinceMs: place.firstMs,
        noticedMs: atMs,
        channels: [channel],
        positions: [position],
        title: `Channel ${channel} reads wrong at position ${position}`,
        evidence:
          `${Math.round(place.far)} times the vane seemed to leap from beside position ${position} far away and straight back, ` +
          `which is its word ${shown} with channel ${channel} turned round; the word itself came ${Math.round(place.usual)} times.`,
        falseAlarmChance: CHANCE,
        todo: `Turn the vane until position ${position} is under the head and look at the window of channel ${channel}: wipe it, or look for a torn land.`,
        spoils: 'heading',
        daysLeft: null,
      },
      key,
    );
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
