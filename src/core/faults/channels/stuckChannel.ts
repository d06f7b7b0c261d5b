import type { CodeTable } from '../../codes/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';
import { lasting, minute } from '../saying.ts';
import { besideEdges } from './besideEdges.ts';

/**
 * Arrivals beside a channel's edge without one crossing. A free vane beside an edge crosses it at one arrival in ten
 * or more while the wind's spread is 10° or more, so that 200 arrivals without a crossing have odds of 0.9^200.
 */
const ARRIVALS = 200;
/** And at least this long. [ms] */
const LEAST_MS = 3 * 3_600_000;
/** Crossings after which it works again. [-] */
const WORKS = 3;
/** 0.9^200 for each channel and each month that a year tries, for the worst wind that was simulated: rounded up. [-] */
const CHANCE = 0.01;

/** What is remembered of one channel. */
interface Watched {
  level: string | null;
  arrivals: number;
  firstMs: number;
  lastChangeMs: number | null;
  changes: number;
}

/** A channel that never changes although the vane comes beside its edges again and again. */
export class StuckChannel implements Detector {
  readonly #episodes = new Episodes();
  readonly #beside: readonly (readonly boolean[])[];
  readonly #channels: Watched[];
  #last: string | null = null;

  constructor(code: CodeTable) {
    this.#beside = besideEdges(code);
    this.#channels = code.channels.map(() => ({
      level: null,
      arrivals: 0,
      firstMs: 0,
      lastChangeMs: null,
      changes: 0,
    }));
  }

  add({ atMs, word, position, before }: Seen): void {
    if (word === null || word.length !== this.#channels.length) return;
    const arrives = position !== null && before !== null && position !== before;
    if (word === this.#last && !arrives) return;
    this.#last = word;
    for (const [channel, watched] of this.#channels.entries()) {
      const level = word[channel]!;
      if (watched.level !== null && level !== watched.level) this.#changed(atMs, channel, watched);
      watched.level = level;
      if (!arrives || !this.#beside[channel]![position]) continue;
      if (watched.arrivals++ === 0) watched.firstMs = atMs;
      if (watched.arrivals >= ARRIVALS && atMs - watched.firstMs >= LEAST_MS)
        this.#found(atMs, channel, watched);
    }
  }

  #changed(atMs: number, channel: number, watched: Watched): void {
    watched.arrivals = 0;
    watched.lastChangeMs = atMs;
    if (!this.#episodes.isOpen(channel)) return;
    watched.changes++;
    if (watched.changes >= WORKS) this.#episodes.close(atMs, channel);
  }

  #found(atMs: number, channel: number, watched: Watched): void {
    watched.changes = 0;
    const { level, arrivals, firstMs, lastChangeMs } = watched;
    const last = lastChangeMs === null ? 'never since the record began' : `last at ${minute(lastChangeMs)}`;
    const evidence =
      `It changed ${last}. Since then the vane has come ${arrivals} times beside an edge of that channel ` +
      `within ${lasting(atMs - firstMs)} and never crossed it.`;
    if (this.#episodes.isOpen(channel)) return this.#episodes.update({ evidence }, channel);
    this.#episodes.open(
      {
        kind: 'stuck-channel',
        sinceMs: lastChangeMs ?? firstMs,
        noticedMs: atMs,
        channels: [channel],
        positions: [],
        title: `Channel ${channel} always reads ${level}`,
        evidence,
        falseAlarmChance: CHANCE,
        todo: `Check light, sensor and wire of channel ${channel}; cover its sensor and see whether the counts follow.`,
        spoils: 'heading',
        daysLeft: null,
      },
      channel,
    );
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
