import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { lasting } from '../saying.ts';

/** Wind that moves any vane worth the name. [m/s]; common practice, no source */
const WINDY_M_PER_S = 2;
/** Time in wind without a change on a disc of 32 positions that no free vane shows. [ms]; measured in bench/faults.ts */
const LIMIT_MS = 2 * 3_600_000;
/** Step that the limit is for: on a coarser disc a free vane stays longer on one position. [deg] */
const STEP_DEG = 11.25;
/** Chance that a free vane of the simulated year stands so long. [-]; bench/faults.ts counts them */
const CHANCE = 0.05;

/** A vane that stands while the cups turn: frozen, jammed or gone. */
export class FrozenVane implements Detector {
  readonly #episodes = new Episodes();
  readonly #limitMs: number;
  #position: number | null = null;
  #sinceMs = 0;
  #windyMs = 0;
  #windRunM = 0;

  /** @param positions - Of the disc. [-] */
  constructor(positions: number) {
    this.#limitMs = LIMIT_MS * Math.max(1, 360 / positions / STEP_DEG) ** 2;
  }

  add({ atMs, stepMs, position, speedMPerS }: Seen): void {
    if (position === null) return;
    if (position !== this.#position) {
      this.#episodes.close(atMs);
      this.#position = position;
      this.#sinceMs = atMs;
      this.#windyMs = this.#windRunM = 0;
      return;
    }
    if (speedMPerS === null || speedMPerS < WINDY_M_PER_S) return;
    this.#windyMs += stepMs;
    this.#windRunM += (speedMPerS * stepMs) / 1000;
    if (this.#windyMs < this.#limitMs) return;
    const evidence =
      `Position ${position} for ${lasting(atMs - this.#sinceMs)}, of which ${lasting(this.#windyMs)} in wind of 2 m/s and more, ` +
      `mean ${(this.#windRunM / (this.#windyMs / 1000)).toFixed(1)} m/s; a free vane leaves it within ${lasting(this.#limitMs)}.`;
    if (this.#episodes.isOpen()) return this.#episodes.update({ evidence });
    this.#episodes.open({
      kind: 'frozen-vane',
      sinceMs: this.#sinceMs,
      noticedMs: atMs,
      channels: [],
      positions: [position],
      title: `The vane stands at position ${position} while the cups turn`,
      evidence,
      falseAlarmChance: CHANCE,
      todo: 'Look whether ice, a bird or a cable holds the vane; turn it by hand once it is safe to reach.',
      spoils: 'heading',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
