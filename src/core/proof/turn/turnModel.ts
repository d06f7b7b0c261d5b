import { positionCentreDeg, type CodeTable } from '../../codes/index.ts';
import { VanewrightError } from '../../error/index.ts';
import { seenTrack, type HeadPlan, type SeenTrack } from '../../head/index.ts';
import { degToRad, wrapDegrees } from '../../units/index.ts';

/** One channel, ready to be turned many times. */
export interface ChannelModel {
  readonly seen: SeenTrack;
  readonly angleDeg: number;
  /** Index of its track's first edge in the model's edges, and of its own first event. */
  readonly firstEdge: number;
  readonly firstEvent: number;
  /** What the key of the word gains when the channel becomes lit. [-] */
  readonly keyStep: number;
  readonly litAtCut: boolean;
  /** True when every edge is a whole one, window to land and back, so that each can switch by itself. */
  readonly wholeMarks: boolean;
}

/**
 * A head laid out as flat arrays: everything of the design that does not change from build to build.
 *
 * A word is held as its key, the sum of digit times 2^channel, so that an event adds or takes one number.
 */
export interface TurnModel {
  readonly head: HeadPlan;
  readonly channels: readonly ChannelModel[];
  /** Edges of all tracks that are looked at, track by track. [deg] with sine and cosine; n = edges */
  readonly edgesDeg: Float64Array;
  readonly edgeSin: Float64Array;
  readonly edgeCos: Float64Array;
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
/** Up to this many channels a key is its own place in a table. */
const TABLE_CHANNELS = 16;

/**
 * The model of a head.
 *
 * @throws `proof/too-many-channels` above 48 channels.
 */
export function turnModel(head: HeadPlan): TurnModel {
  const { code, spec } = head.disc;
  if (head.channels.length > MOST_CHANNELS) throw tooManyChannels(head.channels.length);
  const seen = seenTracks(head);
  const edges = [...seen.values()].flatMap((track) => track.edgesDeg);
  const channels = head.channels.map(({ track, angleDeg }) => ({ track, angleDeg, seen: seen.get(track)! }));
  const events = channels.flatMap((channel) => channel.seen.edgesDeg.map((edge) => edge - channel.angleDeg));
  const cutDeg = widestGapMiddle(events);
  const models: ChannelModel[] = [];
  let firstEvent = 0;
  for (const [c, channel] of channels.entries()) {
    models.push({
      seen: channel.seen,
      angleDeg: channel.angleDeg,
      firstEdge: firstEdgeOf(seen, channel.track),
      firstEvent,
      keyStep: (spec.windowLevel === 1 ? 1 : -1) * 2 ** c,
      litAtCut: sharpLevel(channel.seen, cutDeg + channel.angleDeg) >= 0.5,
      wholeMarks:
        channel.seen.gains.every((gain) => Math.abs(gain) === 1) && channel.seen.levels.every(isWhole),
    });
    firstEvent += channel.seen.edgesDeg.length;
  }
  const dark = spec.windowLevel === 1 ? 0 : 2 ** channels.length - 1;
  return {
    head,
    channels: models,
    edgesDeg: Float64Array.from(edges),
    edgeSin: Float64Array.from(edges, (edge) => Math.sin(degToRad(edge))),
    edgeCos: Float64Array.from(edges, (edge) => Math.cos(degToRad(edge))),
    movesMm: Float64Array.from([...seen.values()].flatMap((track) => track.movesMm)),
    drawnDeg: Float64Array.from(events, (event) => cutDeg + wrapDegrees(event - cutDeg)),
    cutDeg,
    keyAtCut: models.reduce((key, model) => key + (model.litAtCut ? model.keyStep : 0), dark),
    remembers: code.strobe !== null || !code.absolute,
    ...keysOf(code),
    centresDeg: Float64Array.from(code.words, (_, k) => positionCentreDeg(k, code.positions)),
    stepDeg: 360 / code.positions,
  };
}

function isWhole(level: number): boolean {
  return level === 0 || level === 1;
}

function tooManyChannels(channels: number): VanewrightError {
  return new VanewrightError({
    code: 'proof/too-many-channels',
    what: 'The disc has more channels than a turn can be followed with.',
    where: 'disc.code',
    got: `${channels} channels`,
    allowed: `${MOST_CHANNELS} channels at most`,
    fix: 'Set disc.code to reflected-gray, which needs 12 channels for 4096 positions.',
  });
}

/** Each track that some channel looks at, once, in order. */
function seenTracks(head: HeadPlan): Map<number, SeenTrack> {
  const tracks = [...new Set(head.channels.map((channel) => channel.track))].sort((a, b) => a - b);
  return new Map(tracks.map((track) => [track, seenTrack(head.disc, track, head.spec.aperture)]));
}

function firstEdgeOf(seen: ReadonlyMap<number, SeenTrack>, track: number): number {
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

function keysOf(code: CodeTable): Pick<TurnModel, 'positionOfKey' | 'wordOfKey'> {
  const keyOf = (word: string): number =>
    Array.from(word).reduce((key, digit, c) => key + Number(digit) * 2 ** c, 0);
  const channels = code.channels.length;
  const wordOfKey = (key: number): string =>
    Array.from({ length: channels }, (_, c) => Math.floor(key / 2 ** c) % 2).join('');
  if (channels > TABLE_CHANNELS) {
    const positions = new Map(code.words.map((word, k) => [keyOf(word), k]));
    return { positionOfKey: (key) => positions.get(key) ?? -1, wordOfKey };
  }
  const table = new Int16Array(2 ** channels).fill(-1);
  for (const [k, word] of code.words.entries()) table[keyOf(word)] = k;
  return { positionOfKey: (key) => table[key]!, wordOfKey };
}
