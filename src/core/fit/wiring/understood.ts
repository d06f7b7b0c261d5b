import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { allChanges, firstBits, tiedColumns } from '../levels/changes.ts';
import { columnLevels, type ColumnLevels, type LevelSettings } from '../levels/channelLevels.ts';
import { withoutSpikes } from '../levels/spikes.ts';
import { cutOf } from '../levels/changes.ts';
import type { Change } from '../levels/switching.ts';
import { undoings, undone } from '../reading/numbersAsWords.ts';
import type { Recording } from '../reading/recording.ts';
import { codeWalk, isSingleStep, type CodeWalk } from './codeWalk.ts';
import { findWirings, type Walked, type Wiring } from './findWirings.ts';
import type { FollowInput } from './followed.ts';
import { bitCount } from './guesses.ts';
import { movesOf } from './moves.ts';
import { explainedShare, rankWirings, type RankedWiring } from './rankWirings.ts';

/** A recording with its levels and every change, ready to be followed. */
export interface Prepared {
  readonly recording: Recording;
  readonly columns: readonly ColumnLevels[];
  readonly changes: readonly (readonly Change[])[];
  readonly inputs: readonly FollowInput[];
  /** Columns that change and are not tied to another, as bits. */
  readonly live: number;
  /** Moves for codes that change one channel at a time, and for others. */
  moves(single: boolean): readonly Walked[];
}

/** A recording understood: its wirings ranked, none where nothing explains it. */
export interface Understood extends Prepared {
  readonly walk: CodeWalk;
  readonly ranked: readonly RankedWiring[];
  readonly numbersWere: string | null;
}

/** Levels and changes of a recording. */
export function prepared(given: Recording, settings: LevelSettings): Prepared {
  const scale = given.content === 'counts' ? settings.scaleCounts : 1;
  const first = columnLevels(given, { ...settings, scaleCounts: scale });
  const { stretches, repairs } = withoutSpikes(given.stretches, first.map(cutOf));
  const recording = { ...given, stretches, repairs: [...given.repairs, ...repairs] };
  const bare = repairs.length > 0 ? columnLevels(recording, { ...settings, scaleCounts: scale }) : first;
  const tied = tiedColumns(stretches, bare);
  const columns = bare.map((level, c): ColumnLevels => {
    const other = tied.get(c);
    return other === undefined ? level : { ...level, verdict: 'tied', tiedTo: other };
  });
  const changes = allChanges(stretches, columns);
  const firsts = stretches.map((stretch) => firstBits(stretch, columns));
  const isLive = (c: number): boolean => columns[c]!.highPlateau > columns[c]!.lowPlateau && !tied.has(c);
  const live = columns.reduce((bits, _, c) => (isLive(c) ? (bits | (1 << c)) >>> 0 : bits), 0);
  const longestFirst = [...stretches.keys()].sort((a, b) => changes[b]!.length - changes[a]!.length);
  return {
    recording,
    columns,
    changes,
    live,
    inputs: stretches.map(({ timesMs }, i) => ({
      first: firsts[i]!,
      changes: changes[i]!.filter(({ column }) => isLive(column)),
      spanMs: [timesMs[0]!, timesMs.at(-1)!],
    })),
    moves: (single) =>
      longestFirst.map((i) => ({
        firstBits: firsts[i]!.reduce<number>((bits, bit, c) => (bit ? (bits | (1 << c)) >>> 0 : bits), 0),
        moves: movesOf(
          changes[i]!.filter(({ column }) => isLive(column)),
          single,
        ),
      })),
  };
}

/** Columns to try as live ones: all that change, and with one left out where there is one too many. */
function liveSets(live: number, channels: number): number[] {
  if (bitCount(live) !== channels + 1) return [live];
  return Array.from({ length: 32 }, (_, c) => (1 << c) >>> 0)
    .filter((bit) => (live & bit) !== 0)
    .map((bit) => (live & ~bit) >>> 0);
}

/** What a wiring is judged against. */
interface Drawing {
  readonly instrument: Instrument;
  readonly head: HeadPlan;
  readonly drawnColumns: readonly number[];
  readonly startsAtDeg: number | null;
}

function rankedOf(ready: Prepared, walk: CodeWalk, { instrument, head, drawnColumns, startsAtDeg }: Drawing) {
  const moves = ready.moves(isSingleStep(walk));
  const wirings: Wiring[] = liveSets(ready.live, walk.channels).flatMap((live) =>
    findWirings(walk, moves, live, ready.columns.length),
  );
  const litIsHigh = instrument.circuit.sensorTo === 'supply';
  return rankWirings(wirings, {
    walk,
    head,
    stretches: ready.recording.stretches,
    inputs: ready.inputs,
    levels: ready.columns,
    drawnColumns,
    // Recorded words and decoded numbers are words of the code already.
    drawnInverted: ready.recording.content === 'counts' && litIsHigh !== (instrument.disc.windowLevel === 1),
    patternedFace: instrument.head.patternedFace,
    startsAtDeg,
  });
}

/**
 * A recording taken apart into levels, changes and wirings; decoded numbers are undone in whichever way explains most.
 *
 * @param drawnColumns - Column on which the drawing has each channel. n = channels
 * @param startsAtDeg - Disc angle at the first row, where the maker has set it. [deg]
 */
export function understood(
  recording: Recording,
  instrument: Instrument,
  head: HeadPlan,
  drawnColumns: readonly number[],
  startsAtDeg: number | null,
): Understood {
  const walk = codeWalk(head.disc.code);
  const settings = { circuit: instrument.circuit, scaleCounts: 2 ** head.board.converterBits };
  const direct = (given: Recording): Understood => {
    const ready = prepared(given, settings);
    return {
      ...ready,
      walk,
      ranked: rankedOf(ready, walk, { instrument, head, drawnColumns, startsAtDeg }),
      numbersWere: null,
    };
  };
  if (recording.content !== 'numbers') return direct(recording);
  const tried = undoings(head.disc.code, instrument).flatMap((way): Understood[] => {
    const bits = undone(recording, way, walk.channels);
    return bits ? [{ ...direct(bits), numbersWere: way.what }] : [];
  });
  const share = ({ ranked }: Understood): number => {
    const [first] = ranked;
    // Of two ways that explain as much, the one with fewer mistakes of the maker is meant.
    return first ? explainedShare(first.followed) - 0.002 * (first.moved.length + first.inverted.length) : 0;
  };
  return tried.reduce((best, one) => (share(one) > share(best) ? one : best), tried[0] ?? direct(recording));
}
