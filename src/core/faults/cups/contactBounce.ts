import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import type { Seen } from '../readings/seen.ts';

/** Pulses that make one block. [-] */
const BLOCK = 2000;
/** Blocks that are learnt from, and blocks in a row that must show it. [-] */
const LEARNT = 10;
const IN_A_ROW = 3;
/** Times the usual edges a pulse. [-]; a clean contact gives 2 edges, one bounce doubles them */
const TIMES = 1.5;
/** Chance in a year of a sound contact. [-] */
const CHANCE = 0.01;

/** A contact that bounces more than it did: worn, burnt or wet. */
export class ContactBounce implements Detector {
  readonly #episodes = new Episodes();
  #block = { pulses: 0, edges: 0, startMs: 0 };
  #usual = 0;
  #blocks = 0;
  #row = 0;
  #rowMs = 0;

  add({ atMs, pulses, edges }: Seen): void {
    if (pulses === null || edges === null) return;
    if (this.#block.pulses === 0) this.#block.startMs = atMs;
    this.#block.pulses += pulses;
    this.#block.edges += edges;
    if (this.#block.pulses >= BLOCK) this.#ended(atMs);
  }

  #ended(atMs: number): void {
    const { edges, pulses, startMs } = this.#block;
    this.#block = { pulses: 0, edges: 0, startMs: 0 };
    const each = edges / pulses;
    if (this.#blocks < LEARNT) {
      this.#usual += (each - this.#usual) / ++this.#blocks;
      return;
    }
    if (each < TIMES * this.#usual) {
      this.#row = 0;
      return this.#episodes.close(startMs);
    }
    if (this.#row++ === 0) this.#rowMs = startMs;
    if (this.#row < IN_A_ROW) return;
    this.#episodes.open({
      kind: 'contact-bounce',
      sinceMs: this.#rowMs,
      noticedMs: atMs,
      channels: [],
      positions: [],
      title: 'The contact of the cups bounces more than it did',
      evidence: `${each.toFixed(2)} edges a pulse, and ${this.#usual.toFixed(2)} when the record began.`,
      falseAlarmChance: CHANCE,
      todo: 'Look at magnet, contact and wire of the cups; vanewright fit on a pulse recording tells the quiet time they need.',
      spoils: 'nothing',
      daysLeft: null,
    });
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}
