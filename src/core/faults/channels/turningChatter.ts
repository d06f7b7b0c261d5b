import type { CodeTable } from '../../codes/index.ts';
import { Episodes, type Detector } from '../detector.ts';
import type { Finding } from '../finding.ts';
import { percent } from '../saying.ts';
import type { Seen } from '../readings/seen.ts';
import { edgeChannels } from './besideEdges.ts';

/** Changes over the edges of one channel that are judged together, and are learnt from. [-] */
const BLOCK = 1500;
/** Changes over the edges of all others meanwhile, without which there is nothing to compare with. [-] */
const OTHERS = 300;
/** Share of changes that go straight back, beyond what the others' make of what was learnt, that is told. [-] */
const EXCESS = 0.06;
/** Standard errors that it must be, blocks in a row that must show it, and excess below which it is over. [-] */
const SIGMAS = 3.5;
const IN_A_ROW = 2;
const OVER = 0.03;
/** Own estimate for a year of a sound head. [-] */
const CHANCE = 0.02;

interface Share {
  back: number;
  all: number;
}

interface Watched {
  startMs: number;
  own: Share;
  others: Share;
  readonly edges: Map<number, number>;
  /** Its share over that of the others at first; `null` = not yet. [-] */
  learnt: number | null;
  row: number;
  rowMs: number;
}

const shareOf = ({ back, all }: Share): number => (all === 0 ? 0 : back / all);

/** A channel whose edges are crossed there and straight back, more than those of the others and more than before. */
export class TurningChatter implements Detector {
  readonly #episodes = new Episodes();
  readonly #positions: number;
  readonly #channelOf: readonly (number | null)[];
  readonly #watched: readonly Watched[];
  #lastEdge: number | null = null;

  constructor(code: CodeTable) {
    this.#positions = code.positions;
    this.#channelOf = edgeChannels(code);
    this.#watched = code.channels.map(() => ({ ...fresh(0), learnt: null, row: 0, rowMs: 0 }));
  }

  add({ atMs, position, before }: Seen): void {
    const last = this.#lastEdge;
    this.#lastEdge = null;
    if (position === null || before === null || position === before) return;
    const edge = this.#edgeBetween(before, position);
    const channel = edge === null ? null : this.#channelOf[edge];
    if (edge === null || channel === null || channel === undefined) return;
    this.#lastEdge = edge;
    const back = edge === last ? 1 : 0;
    for (const [c, watched] of this.#watched.entries()) {
      const share = c === channel ? watched.own : watched.others;
      share.all++;
      share.back += back;
    }
    const own = this.#watched[channel]!;
    if (own.startMs === 0) own.startMs = atMs;
    if (back) own.edges.set(edge, (own.edges.get(edge) ?? 0) + 1);
    if (own.own.all >= BLOCK) this.#ended(atMs, channel, own);
  }

  /** The lower position of two neighbours, or `null`. */
  #edgeBetween(a: number, b: number): number | null {
    if ((a + 1) % this.#positions === b) return a;
    return (b + 1) % this.#positions === a ? b : null;
  }

  #ended(atMs: number, channel: number, watched: Watched): void {
    const { own, others, startMs } = watched;
    const edge = [...watched.edges].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
    Object.assign(watched, fresh(atMs));
    if (others.all < OTHERS) return;
    const [now, theirs] = [shareOf(own), shareOf(others)];
    if (watched.learnt === null) {
      // How much goes straight back is a matter of the weather; that one channel does so more than the others is not.
      if (theirs > 0) watched.learnt = Math.max(1, now / theirs);
      return;
    }
    const usual = Math.min(0.9, watched.learnt * theirs);
    const error = Math.sqrt(usual * (1 - usual) * (1 / own.all + 1 / others.all));
    const excess = now - usual;
    if (excess < OVER) this.#episodes.close(startMs, channel);
    if (excess < Math.max(EXCESS, SIGMAS * error)) {
      watched.row = 0;
      return;
    }
    if (watched.row++ === 0) watched.rowMs = startMs;
    if (watched.row < IN_A_ROW) return;
    this.#episodes.open(
      {
        kind: 'chatter',
        sinceMs: watched.rowMs,
        noticedMs: atMs,
        channels: [channel],
        positions: [edge, (edge + 1) % this.#positions],
        title: `Channel ${channel} flickers on its edges`,
        evidence:
          `${percent(now)} of ${own.all} changes over its edges went straight back with the next sample; ` +
          `over those of the other channels ${percent(theirs)} did, and by what was learnt it should be ${percent(usual)}.`,
        falseAlarmChance: CHANCE,
        todo: 'Put the two thresholds further apart than the noise (vanewright fit --write), and look for a loose wire.',
        spoils: 'nothing',
        daysLeft: null,
      },
      channel,
    );
  }

  findings(): readonly Finding[] {
    return this.#episodes.all();
  }
}

function fresh(startMs: number): Pick<Watched, 'startMs' | 'own' | 'others' | 'edges'> {
  return { startMs, own: { back: 0, all: 0 }, others: { back: 0, all: 0 }, edges: new Map() };
}
