import { HeadingSum } from '../../wind/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { Habit } from './habit.ts';

const DAY_MS = 86_400_000;
/** Wind in which a direction means something. [m/s] */
const WINDY_M_PER_S = 2;
/** Part of a day's samples that must be windy. [-] */
const SAMPLES_LEAST = 100;
/** Days that are learnt from. [-] */
const LEARNT = 90;
/** Days of one direction in spreads: allowed drift, and the sum that is told. [-]; measured in bench/faults.ts */
const RULE = { allowed: 1, told: 20 };
/** Chance in a year where the weather keeps its habits; a season of another kind shows as much. [-] */
const CHANCE = 0.2;

/** Mean directions of days that turned against the station's own past, and stayed so. */
export class SlippedClamp implements Detector {
  readonly #episodes = new Episodes();
  readonly #habit = new Habit(LEARNT, RULE);
  #sum = new HeadingSum();
  #samples = 0;
  #day = -Infinity;

  add({ atMs, headingDeg, speedMPerS }: Seen): void {
    const day = Math.floor(atMs / DAY_MS);
    if (day !== this.#day) {
      this.#dayEnded();
      this.#day = day;
    }
    if (headingDeg === null || (speedMPerS !== null && speedMPerS < WINDY_M_PER_S)) return;
    this.#sum.add(headingDeg);
    this.#samples++;
  }

  #dayEnded(): void {
    const mean = this.#samples >= SAMPLES_LEAST ? this.#sum.mean() : null;
    this.#sum = new HeadingSum();
    this.#samples = 0;
    if (mean === null || mean.headingDeg === null) return;
    const turned = this.#habit.add(this.#day * DAY_MS, mean.headingDeg);
    if (!turned) return;
    const { sinceMs, byDeg, count } = turned;
    this.#episodes.close(sinceMs);
    if (turned.way === 'back') return;
    this.#episodes.open({
      kind: 'slipped-clamp',
      sinceMs,
      noticedMs: (this.#day + 1) * DAY_MS,
      channels: [],
      positions: [],
      title: 'Directions have turned against the past: the clamp may have slipped',
      evidence:
        `Daily means over ${count} days lie ${Math.round(Math.abs(byDeg))}° ${byDeg > 0 ? 'clockwise' : 'counter-clockwise'} ` +
        `of those before; the ${LEARNT} days that were learnt from spread by ${Math.round(this.#habit.home!.spreadDeg)}°.`,
      falseAlarmChance: CHANCE,
      todo: 'Look along the vane at a landmark and compare (vanewright fit north); a change of weather looks the same, so compare with a station nearby.',
      spoils: 'heading',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
