import { positionsApart, type CodeTable } from '../../codes/index.ts';
import { sampleFlags } from '../../record/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { RollingShare } from '../readings/rollingShare.ts';
import { percent } from '../saying.ts';

/** Illegal samples of six hours that are enough, and the share they must be. [-] */
const LEAST = 20;
const SHARE = 0.02;
/** And this many times the share of the station's own past, for codes whose edges show some. [-] */
const TIMES_USUAL = 4;
const HOURS = 6;
/** A sound single-step disc shows none at all; for others TIMES_USUAL holds it down. [-] */
const CHANCE = 0.01;

/** Words that the code does not have, and the channel that would explain them. */
export class IllegalWords implements Detector {
  readonly #code: CodeTable;
  readonly #episodes = new Episodes();
  readonly #share = new RollingShare(HOURS);
  readonly #votes: number[];
  readonly #words = new Map<string, number>();
  #last: number | null = null;
  #usual = { illegal: 0, samples: 0 };

  constructor(code: CodeTable) {
    this.#code = code;
    this.#votes = code.channels.map(() => 0);
  }

  add({ atMs, word, position, isIllegal, flags }: Seen): void {
    if (word === null && !isIllegal) return;
    if (position !== null) this.#last = position;
    const illegal = isIllegal || (flags & sampleFlags.illegalBefore) !== 0;
    if (illegal && word !== null) this.#blame(word);
    if (this.#share.add(atMs, illegal)) this.#hourEnded(atMs);
    if (illegal) this.#judge(atMs);
  }

  /** Votes for the channels whose turning round makes the word one near the last position. */
  #blame(word: string): void {
    if (this.#words.size < 64 || this.#words.has(word))
      this.#words.set(word, (this.#words.get(word) ?? 0) + 1);
    for (let channel = 0; channel < this.#votes.length; channel++) {
      const other = word[channel] === '0' ? '1' : '0';
      const position = this.#code.positionOf(word.slice(0, channel) + other + word.slice(channel + 1));
      if (position === null) continue;
      const isNear = this.#last === null || positionsApart(position, this.#last, this.#code.positions) <= 2;
      if (isNear) this.#votes[channel]!++;
    }
  }

  #hourEnded(atMs: number): void {
    const { yes, all } = this.#share.counts();
    if (this.#episodes.isOpen()) {
      if (yes >= LEAST / 4 && yes / all >= SHARE / 4) return;
      this.#episodes.close(this.#share.lastYesMs ?? atMs);
      this.#votes.fill(0);
      this.#words.clear();
    } else {
      this.#usual = { illegal: 0.99 * this.#usual.illegal + yes, samples: 0.99 * this.#usual.samples + all };
    }
  }

  #judge(atMs: number): void {
    if (this.#episodes.isOpen()) return;
    const { yes, all } = this.#share.counts();
    const usual = this.#usual.samples > 0 ? this.#usual.illegal / this.#usual.samples : 0;
    if (yes < LEAST || yes / all < Math.max(SHARE, TIMES_USUAL * usual)) return;
    const ranked = [...this.#votes.keys()].sort((a, b) => this.#votes[b]! - this.#votes[a]!);
    const channels = ranked.filter(
      (channel) => this.#votes[channel]! >= 0.5 * this.#votes[ranked[0]!]! && this.#votes[channel]! > 0,
    );
    const common = [...this.#words].sort((a, b) => b[1] - a[1]).slice(0, 3);
    this.#episodes.open({
      kind: 'illegal-words',
      sinceMs: this.#share.firstYesMs ?? atMs,
      noticedMs: atMs,
      channels,
      positions: [],
      title:
        channels.length === 1
          ? `Words that the disc does not have; channel ${channels[0]} explains them`
          : 'Words that the disc does not have',
      evidence:
        `${percent(yes / all)} of the last ${HOURS} hours' samples (${yes} of ${all})` +
        (common.length > 0 ? `, mostly ${common.map(([word]) => word).join(', ')}` : '') +
        (channels.length > 0
          ? `; turning channel ${channels.join(' or ')} round makes them the position before or beside it.`
          : '.'),
      falseAlarmChance: CHANCE,
      todo:
        channels.length > 0
          ? `Check light, sensor and wire of channel ${channels[0]}, then record a turn and run vanewright fit.`
          : 'Look whether all lights are on and no daylight comes in, then record a turn and run vanewright fit.',
      spoils: 'heading',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
