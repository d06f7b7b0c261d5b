import type { CodeTable } from '../../codes/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';

const HOUR_MS = 3_600_000;
/** Changes there and back over one edge in an hour of standing cups. [-]; measured in bench/faults.ts */
const TOGGLES = 20;
/** Share of all changes of that hour that they are. [-] */
const SHARE = 0.9;
/** Cups must have stood this long before changes count. [ms] */
const STILL_MS = 10 * 60_000;
/** Hours without it until it is over. [ms] */
const OVER_MS = 14 * 24 * HOUR_MS;
/** Chance in a year of a sound head. [-]; bench/faults.ts */
const CHANCE = 0.05;

/** A channel that flickers on an edge while nothing moves: too little hysteresis, or noise. */
export class Chatter implements Detector {
  readonly #episodes = new Episodes();
  readonly #code: CodeTable;
  #stillMs = 0;
  #hour = { startMs: 0, changes: 0, toggles: new Map<number, number>() };
  #lastEdge: number | null = null;
  #lastSeenMs = -Infinity;

  constructor(code: CodeTable) {
    this.#code = code;
  }

  add({ atMs, stepMs, position, before, speedMPerS, pulses }: Seen): void {
    if (this.#episodes.isOpen() && atMs - this.#lastSeenMs > OVER_MS) this.#episodes.close(this.#lastSeenMs);
    if (atMs - this.#hour.startMs >= HOUR_MS) this.#hour = { startMs: atMs, changes: 0, toggles: new Map() };
    const stands = speedMPerS === 0 || (speedMPerS === null && pulses === 0);
    this.#stillMs = stands ? this.#stillMs + stepMs : 0;
    if (this.#stillMs < STILL_MS || position === null || before === null || position === before) return;
    const edge = this.#edgeBetween(before, position);
    this.#hour.changes++;
    if (edge !== null && edge === this.#lastEdge) this.#toggled(atMs, edge);
    this.#lastEdge = edge;
  }

  /** The lower position of two neighbours, or `null`. */
  #edgeBetween(a: number, b: number): number | null {
    const { positions } = this.#code;
    if ((a + 1) % positions === b) return a;
    return (b + 1) % positions === a ? b : null;
  }

  #toggled(atMs: number, edge: number): void {
    const { toggles, changes, startMs } = this.#hour;
    const times = (toggles.get(edge) ?? 0) + 1;
    toggles.set(edge, times);
    if (times < TOGGLES || times < SHARE * (changes - 1)) return;
    this.#lastSeenMs = atMs;
    if (this.#episodes.isOpen()) return;
    const { words, positions } = this.#code;
    const [low, high] = [words[edge]!, words[(edge + 1) % positions]!];
    const channels = [...low].flatMap((level, channel) => (level === high[channel] ? [] : [channel]));
    this.#episodes.open({
      kind: 'chatter',
      sinceMs: startMs,
      noticedMs: atMs,
      channels,
      positions: [edge, (edge + 1) % positions],
      title: `Channel ${channels.join(', ')} flickers while nothing moves`,
      evidence: `With the cups standing, ${times} changes there and back between positions ${edge} and ${(edge + 1) % positions} within an hour, of ${changes} changes in all.`,
      falseAlarmChance: CHANCE,
      todo: 'Put the two thresholds further apart than the noise (vanewright fit --write), and look for a loose wire.',
      spoils: 'nothing',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
