import { positionCentreDeg, type CodeTable } from '../../codes/index.ts';
import { VanewrightError } from '../../error/index.ts';
import {
  markReaderOf,
  seenMarks,
  seenNeighbours,
  seenTrack,
  type HeadPlan,
  type MarkReader,
  type SeenMarks,
  type SeenNeighbour,
  type SeenTrack,
} from '../../head/index.ts';
import { degToRad, wrapDegrees } from '../../units/index.ts';

/** One channel, ready to be turned many times. */
export interface ChannelModel {
  readonly seen: SeenTrack;
  readonly angleDeg: number;
  /** Index of its track's first edge in the model's edges, and of its own first event. */
  readonly firstEdge: number;
  readonly firstEvent: number;
  /** What the key of the word gains when the channel becomes lit, or its level one more. [-] */
  readonly keyStep: number;
  /** 1 where the channel is lit at the cut, or its level of three. [-] */
  readonly levelAtCut: number;
  /** True when every edge is a whole one, window to land and back, so that each can switch by itself. */
  readonly wholeMarks: boolean;
  /** Its track's marks where they are of three levels. */
  readonly marks: SeenMarks | null;
  /** Tracks that its spot may reach into. */
  readonly neighbours: readonly ModelNeighbour[];
}

/** A neighbour with the place of its edges among the model's; -1 for a track that no channel looks at. */
export type ModelNeighbour = SeenNeighbour & { readonly firstEdge: number };

/**
 * A head laid out as flat arrays: everything of the design that does not change from build to build.
 *
 * A word is held as its key, the sum of digit times base^channel, so that an event adds or takes one number.
 */
export interface TurnModel {
  readonly head: HeadPlan;
  /** How a channel as drawn tells three marks apart; `null` where none has to. */
  readonly reader: MarkReader | null;
  readonly channels: readonly ChannelModel[];
  /** Edges of all tracks that are looked at, track by track. [deg] with sine and cosine; n = edges */
  readonly edgesDeg: Float64Array;
  readonly edgeSin: Float64Array;
  readonly edgeCos: Float64Array;
  /** Radius at which each edge is looked at. [mm]; n = edges */
  readonly edgeRadiusMm: Float64Array;
  /** Sideways move of each edge in the drawing's own process. [mm] */
  readonly movesMm: Float64Array;
  /** Where each event would lie with a sharp spot and nothing wrong, from the cut on. [deg]; n = events */
  readonly drawnDeg: Float64Array;
  /** Angle at which a turn is cut open: the middle of the widest gap between events. [deg] */
  readonly cutDeg: number;
  readonly keyAtCut: number;
  /** True where the position depends on what was shown before: a strobe, or a wheel that counts. */
  readonly remembers: boolean;
  /** Position of a word's key, -1 where the code does not have it. */
  positionOfKey(key: number): number;
  /** Word of a key. */
  wordOfKey(key: number): string;
  /** Middle of each position's step. [deg]; n = positions */
  readonly centresDeg: Float64Array;
  readonly stepDeg: number;
}

/** Keys of words beyond this many channels would not be exact. */
const MOST_CHANNELS = 48;
const MOST_COLOUR_CHANNELS = 30;
/** Up to this many words a key is its own place in a table. */
const TABLE_WORDS = 65_536;

/**
 * The model of a head.
 *
 * @throws `proof/too-many-channels` above 48 channels, or 30 of three levels.
 */
export function turnModel(head: HeadPlan): TurnModel {
  const { code } = head.disc;
  const base = baseOf(code);
  const most = base === 2 ? MOST_CHANNELS : MOST_COLOUR_CHANNELS;
  if (head.channels.length > most) throw tooManyChannels(head.channels.length, most);
  const seen = seenTracks(head);
  const edges = [...seen.values()].flatMap((track) => track.edgesDeg);
  const events = head.channels.flatMap(({ track, angleDeg }) =>
    seen.get(track)!.edgesDeg.map((edge) => edge - angleDeg),
  );
  const cutDeg = widestGapMiddle(events);
  const channels = channelModels(head, seen, cutDeg, base);
  const dark = head.disc.spec.windowLevel === 1 ? 0 : 1;
  return {
    head,
    reader: drawnReader(head),
    channels,
    edgesDeg: Float64Array.from(edges),
    edgeSin: Float64Array.from(edges, (edge) => Math.sin(degToRad(edge))),
    edgeCos: Float64Array.from(edges, (edge) => Math.cos(degToRad(edge))),
    edgeRadiusMm: Float64Array.from(
      [...seen.values()].flatMap((track) => track.edgesDeg.map(() => track.radiusMm)),
    ),
    movesMm: Float64Array.from([...seen.values()].flatMap((track) => track.movesMm)),
    drawnDeg: Float64Array.from(events, (event) => cutDeg + wrapDegrees(event - cutDeg)),
    cutDeg,
    keyAtCut: channels.reduce(
      (key, { marks, keyStep, levelAtCut }, c) => key + (marks ? 0 : dark * base ** c) + levelAtCut * keyStep,
      0,
    ),
    remembers: code.strobe !== null || !code.absolute,
    ...keysOf(code, base),
    centresDeg: Float64Array.from(code.words, (_, k) => positionCentreDeg(k, code.positions)),
    stepDeg: 360 / code.positions,
  };
}

/** Digits of a word: as many as the levels of its richest track. */
function baseOf({ tracks }: CodeTable): 2 | 3 {
  return tracks.some(({ levelCount }) => levelCount === 3) ? 3 : 2;
}

/** The track that a channel's own edges come from: of windows, or of marks whose levels stand for light. */
type OwnTrack = SeenTrack & { readonly marks: SeenMarks | null };

function channelModels(
  head: HeadPlan,
  seen: ReadonlyMap<number, OwnTrack>,
  cutDeg: number,
  base: 2 | 3,
): ChannelModel[] {
  const { spec, disc } = head;
  const spot = {
    aperture: spec.aperture,
    penumbra: spec.penumbra ?? null,
    radialSdMm: Math.hypot(spec.radialSdMm, disc.spec.process.boreSdMm),
  };
  const neighbours = new Map(
    [...seen.keys()].map((track): [number, ModelNeighbour[]] => [
      track,
      seenNeighbours(disc, track, spot).map((neighbour) => ({
        ...neighbour,
        firstEdge: seen.has(neighbour.track) ? firstEdgeOf(seen, neighbour.track) : -1,
      })),
    ]),
  );
  let firstEvent = 0;
  return head.channels.map(({ track, angleDeg }, c): ChannelModel => {
    const own = seen.get(track)!;
    const sign = own.marks || disc.spec.windowLevel === 1 ? 1 : -1;
    const level = sharpLevel(own, cutDeg + angleDeg);
    const first = firstEvent;
    firstEvent += own.edgesDeg.length;
    return {
      seen: own,
      angleDeg,
      firstEdge: firstEdgeOf(seen, track),
      firstEvent: first,
      keyStep: sign * base ** c,
      levelAtCut: own.marks ? level : Number(level >= 0.5),
      wholeMarks:
        own.marks === null && own.gains.every((gain) => Math.abs(gain) === 1) && own.levels.every(isWhole),
      marks: own.marks,
      neighbours: own.marks ? [] : neighbours.get(track)!,
    };
  });
}

function drawnReader({ marks, spec, circuit, board, levels }: HeadPlan): MarkReader | null {
  if (marks === null) return null;
  const { detector } = spec;
  return markReaderOf({ detector, circuit, board, resistorOhm: levels.resistorOhm, plan: marks });
}

function isWhole(level: number): boolean {
  return level === 0 || level === 1;
}

function tooManyChannels(channels: number, most: number): VanewrightError {
  return new VanewrightError({
    code: 'proof/too-many-channels',
    what: 'The disc has more channels than a turn can be followed with.',
    where: 'disc.code',
    got: `${channels} channels`,
    allowed: `${most} channels at most`,
    fix: 'Set disc.code to reflected-gray, which needs 12 channels for 4096 positions.',
  });
}

/** Each track that some channel looks at, once, in order. */
function seenTracks({ channels, disc, spec }: HeadPlan): Map<number, OwnTrack> {
  const tracks = [...new Set(channels.map((channel) => channel.track))].sort((a, b) => a - b);
  const { aperture, penumbra = null } = spec;
  return new Map(
    tracks.map((track): [number, OwnTrack] => {
      if (disc.code.tracks[track]!.levelCount === 2) {
        return [track, { ...seenTrack(disc, track, aperture, penumbra), marks: null }];
      }
      const marks = seenMarks(disc, track, aperture, penumbra);
      const gains = marks.edgesDeg.map(() => 1);
      return [track, { ...marks, gains, widestMoveMm: 0, spill: [], marks }];
    }),
  );
}

function firstEdgeOf(seen: ReadonlyMap<number, OwnTrack>, track: number): number {
  let first = 0;
  for (const [other, { edgesDeg }] of seen) {
    if (other < track) first += edgesDeg.length;
  }
  return first;
}

/** Level of the run at an angle, as with a spot of no width. */
function sharpLevel({ edgesDeg, levels }: SeenTrack, angle: number): number {
  const at = wrapDegrees(angle);
  const passed = edgesDeg.filter((edge) => edge <= at).length;
  // Before the first edge, or without any, it is the last run, which spans the index mark.
  return levels.at(passed - 1)!;
}

function widestGapMiddle(angles: readonly number[]): number {
  const sorted = angles.map(wrapDegrees).sort((a, b) => a - b);
  let widest = { gap: -1, middle: 0 };
  for (const [i, angle] of sorted.entries()) {
    const gap = (sorted[i + 1] ?? sorted[0]! + 360) - angle;
    // A hair wider is the same gap with other rounding: keep the first, so that the cut does not hop about.
    if (gap > widest.gap + 1e-9) widest = { gap, middle: wrapDegrees(angle + gap / 2) };
  }
  return widest.middle;
}

function keysOf(code: CodeTable, base: 2 | 3): Pick<TurnModel, 'positionOfKey' | 'wordOfKey'> {
  const keyOf = (word: string): number =>
    Array.from(word).reduce((key, digit, c) => key + Number(digit) * base ** c, 0);
  const channels = code.channels.length;
  const wordOfKey = (key: number): string =>
    Array.from({ length: channels }, (_, c) => Math.floor(key / base ** c) % base).join('');
  if (base ** channels > TABLE_WORDS) {
    const positions = new Map(code.words.map((word, k) => [keyOf(word), k]));
    return { positionOfKey: (key) => positions.get(key) ?? -1, wordOfKey };
  }
  const table = new Int16Array(base ** channels).fill(-1);
  for (const [k, word] of code.words.entries()) table[keyOf(word)] = k;
  return { positionOfKey: (key) => table[key]!, wordOfKey };
}
