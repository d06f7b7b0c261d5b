import { positionsApart } from '../../codes/index.ts';
import { sampleFlags } from '../../record/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { RollingShare } from '../readings/rollingShare.ts';
import type { Seen } from '../readings/seen.ts';
import { percent } from '../saying.ts';

const HOURS = 24;
/** Samples with a skipped step in a day, and their share, from which it is told. [-]; common practice, no source */
const LEAST = 20;
const SHARE = 0.01;
/** A disc that is read fast enough skips none; gusts beyond the limit come to far less than the share. [-] */
const CHANCE = 0.02;

/** Positions passed over faster than the head can follow. */
export class SkippedSteps implements Detector {
  readonly #episodes = new Episodes();
  readonly #share = new RollingShare(HOURS);
  readonly #positions: number;
  readonly #limitDegPerS: number;

  /** @param limitDegPerS - Fastest turn that is read at every position. [deg/s] */
  constructor(positions: number, limitDegPerS: number) {
    this.#positions = positions;
    this.#limitDegPerS = limitDegPerS;
  }

  add({ atMs, stepMs, position, before, flags }: Seen): void {
    const said = (flags & sampleFlags.impossibleJump) !== 0;
    if (this.#share.add(atMs, said || this.#isTooFast(stepMs, position, before))) this.#hourEnded(atMs);
    if (said) this.#judge(atMs);
  }

  /** Samples further apart than half a turn at the limit tell nothing. */
  #isTooFast(stepMs: number, position: number | null, before: number | null): boolean {
    if (position === null || before === null || stepMs === 0) return false;
    const step = 360 / this.#positions;
    const turnDeg = (positionsApart(position, before, this.#positions) - 1) * step;
    return turnDeg > (this.#limitDegPerS * stepMs) / 1000;
  }

  #hourEnded(atMs: number): void {
    const { yes, all } = this.#share.counts();
    if (this.#episodes.isOpen() && (yes < LEAST / 4 || yes / all < SHARE / 3))
      this.#episodes.close(this.#share.lastYesMs ?? atMs);
    this.#judge(atMs);
  }

  #judge(atMs: number): void {
    const { yes, all } = this.#share.counts();
    if (yes < LEAST || yes / all < SHARE || this.#episodes.isOpen()) return;
    this.#episodes.open({
      kind: 'skipped-steps',
      sinceMs: this.#share.firstYesMs ?? atMs,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'The vane turns faster than the head can follow',
      evidence:
        `${percent(yes / all)} of the last ${HOURS} hours' samples (${yes} of ${all}) skip positions, ` +
        `which asks for more than the ${this.#limitDegPerS.toFixed(0)} deg/s that are read at every position.`,
      falseAlarmChance: CHANCE,
      todo: 'Damp the vane or read faster: a detector with less lag, or fewer lines; vanewright prove tells the limit.',
      spoils: 'nothing',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
