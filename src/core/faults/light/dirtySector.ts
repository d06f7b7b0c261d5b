import { Episodes } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { percent } from '../saying.ts';
import type { HourDetector, HourLight } from './hourLight.ts';

/** Moments whose brightest counts, so that those half over an edge do not. [-] */
const GROUP = 8;
/** Moments of one hour that count at one position: those after each other tell the same. [-] */
const HOURLY = 2;
/** Groups that are learnt from, and groups in a row that must have lost light. [-] */
const LEARNT = 5;
const IN_A_ROW = 2;
/** Loss of light, of the channel's own, that is told, and below which it is over. [-] */
const LOSS = 0.25;
const OVER = 0.12;
/** Chance in a year, over all positions and channels: all of 16 moments over an edge, of which one in ten is. [-] */
const CHANCE = 0.02;

interface Cell {
  moments: number;
  best: number;
  firstMs: number;
  readonly learnt: number[];
  lost: number;
  lostMs: number;
}

/** One channel that loses light at one position and nowhere else: dirt in that window. */
export class DirtySector implements HourDetector {
  readonly #episodes = new Episodes();
  readonly #positions: number;
  readonly #cells = new Map<number, Cell>();

  /** @param positions - Of the disc. [-] */
  constructor(channels: number, positions: number) {
    this.#positions = positions;
    // A disc of many positions would need more memory and time than its dirt is worth: half a step is far finer there.
    if (channels * positions > 16_384) this.hour = () => {};
  }

  hour({ startMs, endMs, lit, moments }: HourLight): void {
    const taken = new Map<number, number>();
    for (const { position, lights, isLit } of moments) {
      if (position === null) continue;
      const times = (taken.get(position) ?? 0) + 1;
      taken.set(position, times);
      if (times > HOURLY) continue;
      for (const [channel, light] of lights.entries()) {
        const best = lit[channel];
        if (isLit[channel] && best !== null && best !== undefined && best > 0)
          this.#take(channel * this.#positions + position, light / best, startMs, endMs);
      }
    }
  }

  #take(key: number, share: number, startMs: number, endMs: number): void {
    let cell = this.#cells.get(key);
    if (!cell) {
      cell = { moments: 0, best: 0, firstMs: startMs, learnt: [], lost: 0, lostMs: 0 };
      this.#cells.set(key, cell);
    }
    if (cell.moments++ === 0) cell.firstMs = startMs;
    cell.best = Math.max(cell.best, share);
    if (cell.moments < GROUP) return;
    const { best, firstMs, learnt } = cell;
    cell.moments = cell.best = 0;
    if (learnt.length < LEARNT) return void learnt.push(best);
    const usual = [...learnt].sort((a, b) => a - b)[LEARNT >> 1]!;
    const loss = 1 - best / usual;
    if (loss < OVER) this.#episodes.close(firstMs, key);
    if (loss < LOSS) {
      cell.lost = 0;
      return;
    }
    if (cell.lost++ === 0) cell.lostMs = firstMs;
    if (cell.lost >= IN_A_ROW) this.#found(key, cell, loss, endMs);
  }

  #found(key: number, cell: Cell, loss: number, endMs: number): void {
    if (this.#episodes.isOpen(key)) return;
    const [channel, position] = [Math.floor(key / this.#positions), key % this.#positions];
    this.#episodes.open(
      {
        kind: 'dirty-sector',
        sinceMs: cell.lostMs,
        noticedMs: endMs,
        channels: [channel],
        positions: [position],
        title: `Channel ${channel} gets less light at position ${position} than it did`,
        evidence:
          `In ${IN_A_ROW * GROUP} moments in a row it had at least ${percent(loss)} less of its light there than when the record ` +
          'began, and elsewhere it has not.',
        falseAlarmChance: CHANCE,
        todo: `Turn the vane until position ${position} is under the head, look for dirt or a web in the window of channel ${channel}, and wipe the disc.`,
        spoils: 'nothing',
        daysLeft: null,
      },
      key,
    );
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
