import type { Problem } from '../error/index.ts';
import type { CodePlan, Level } from './model.ts';
import type { SearchLimits } from './search/limits.ts';

/** What a maker may ask of a code beyond its count. Absent or undefined: the family chooses. */
export interface CodeOptions {
  /** Channels wanted; a family refuses a number it cannot use. [-] */
  readonly channels?: number | undefined;
  /** Shortest mark that is enough; the search ends there, and fails if it cannot be had. [steps], 1..channels */
  readonly leastMarkSteps?: number | undefined;
  /** Heads of a single-track code: spread evenly round the turn, or all within half a turn. */
  readonly headPlacement?: 'even' | 'half-turn' | undefined;
  /** Whether a shift-register disc has a second track that tells when the word may be read. */
  readonly clockTrack?: boolean | undefined;
  /** Whether a counting wheel has a second track with one window that sets the count. */
  readonly indexTrack?: boolean | undefined;
  /** `open` lets more than one channel change between the last position and the first: for turns of less than 360°. */
  readonly seam?: 'closed' | 'open' | undefined;
}

/** What a search did. */
export interface SearchReport {
  /** Words tried. [-] */
  readonly steps: number;
  /** Whether it is proved that this family has no code with a better figure; else the steps ran out looking for one. */
  readonly provedBest: boolean;
}

/** A channel that tells when the others may be read. */
export interface Strobe {
  readonly channel: number;
  /** The word counts while the channel reads this level; meanwhile the last position stands. */
  readonly level: Level;
}

/** Tracks and channels of a family, with what the words alone do not tell. */
export interface CodeBuild extends CodePlan {
  readonly strobe?: Strobe | null;
  /** The first so many channels only count steps: their words repeat, and a reader must remember where it was. */
  readonly countingChannels?: number | null;
  readonly search?: SearchReport | null;
}

/** A refusal; `where` and `got` stand only where it is not about the count. */
export type Refusal = Pick<Problem, 'code' | 'what' | 'allowed' | 'fix'> &
  Partial<Pick<Problem, 'where' | 'got'>>;

/** One way to mark a disc. Adding a code is adding one file with one of these, and its row in families.ts. */
export interface CodeFamily {
  /** Name in the instrument file, as the trade says it. */
  readonly name: string;
  /** Name in a sentence. */
  readonly title: string;
  /** Options this family looks at; any other is refused. */
  readonly options: readonly (keyof CodeOptions)[];
  /** Why this family cannot make that many positions, or `null` when it can. */
  refusal(positions: number, options: CodeOptions): Refusal | null;
  /**
   * Tracks and channels for a request that is not refused.
   *
   * @throws `codes/search-ran-out`, `codes/no-such-code`, `codes/search-cancelled` where the family has to search.
   */
  build(positions: number, options: CodeOptions, search: SearchLimits): CodeBuild;
}
