import type { Problem } from '../../error/index.ts';
import { MOST_CHANNELS, POSITIONS_RANGE } from '../model.ts';

/** Most edges a track may have: two for every position of the largest disc, twice over. */
const MOST_EDGES = 4 * POSITIONS_RANGE.most;

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A field of a code file that is not what it should be. */
export function fieldProblem(where: string, got: string, allowed: string): Problem {
  return {
    code: 'codes/bad-code-field',
    what: 'A field of the code file is not what it should be.',
    where,
    got,
    allowed,
    fix: `Set it to ${allowed}.`,
  };
}

const isNumberIn = (value: unknown, least: number, below: number): value is number =>
  typeof value === 'number' && value >= least && value < below;

const isWhole = (value: unknown, count: number): value is number =>
  Number.isInteger(value) && isNumberIn(value, 0, count);

function trackProblems(track: unknown, where: string): Problem[] {
  if (!isRecord(track)) return [fieldProblem(where, typeof track, 'levelCount, startsDeg and levels')];
  const { levelCount, startsDeg, levels } = track;
  if (levelCount !== 2 && levelCount !== 3) {
    return [fieldProblem(`${where}.levelCount`, JSON.stringify(levelCount) ?? 'nothing', '2 or 3')];
  }
  if (!Array.isArray(startsDeg) || startsDeg.length < 1 || startsDeg.length > MOST_EDGES) {
    return [fieldProblem(`${where}.startsDeg`, typeof startsDeg, `a list of 1 to ${MOST_EDGES} angles`)];
  }
  const isAscending = startsDeg.every((start, i) => isNumberIn(start, i === 0 ? 0 : startsDeg[i - 1], 360));
  if (!isAscending || new Set(startsDeg).size !== startsDeg.length) {
    return [
      fieldProblem(
        `${where}.startsDeg`,
        'angles out of order or range',
        'ascending angles, 0 or more, below 360',
      ),
    ];
  }
  if (!Array.isArray(levels) || levels.length !== startsDeg.length) {
    return [
      fieldProblem(`${where}.levels`, 'another number of levels', `${startsDeg.length} levels, one an angle`),
    ];
  }
  const isChanging = levels.length === 1 || levels.every((level, i) => level !== levels.at(i - 1));
  if (!isChanging || !levels.every((level) => isWhole(level, levelCount))) {
    return [
      fieldProblem(
        `${where}.levels`,
        'levels out of range or repeated',
        `levels below ${levelCount}, each other than the one before`,
      ),
    ];
  }
  return [];
}

function channelProblems(channel: unknown, trackCount: number, where: string): Problem[] {
  const allowed = `a track below ${trackCount}, and an angle from -360 to 360 degrees`;
  if (!isRecord(channel)) return [fieldProblem(where, typeof channel, allowed)];
  const { track, angleDeg } = channel;
  if (isWhole(track, trackCount) && isNumberIn(angleDeg, -360, 360 + Number.EPSILON)) return [];
  return [fieldProblem(where, JSON.stringify(channel).slice(0, 60), allowed)];
}

/** What is wrong with the tracks and channels of a document, field by field. */
export function planProblems(document: Record<string, unknown>, file: string): Problem[] {
  const { tracks, channels, strobe, countingChannels } = document;
  const lists = Object.entries({ tracks, channels });
  const missing = lists.filter(
    ([, list]) => !Array.isArray(list) || list.length < 1 || list.length > MOST_CHANNELS,
  );
  if (missing.length > 0) {
    return missing.map(([name, list]) =>
      fieldProblem(
        `${file} › ${name}`,
        Array.isArray(list) ? `${list.length} entries` : typeof list,
        `a list of 1 to ${MOST_CHANNELS}`,
      ),
    );
  }
  const [trackList, channelList] = [tracks as unknown[], channels as unknown[]];
  const problems = [
    ...trackList.flatMap((track, i) => trackProblems(track, `${file} › tracks[${i}]`)),
    ...channelList.flatMap((channel, i) =>
      channelProblems(channel, trackList.length, `${file} › channels[${i}]`),
    ),
  ];
  const isStrobe =
    isRecord(strobe) && isWhole(strobe['channel'], channelList.length) && isWhole(strobe['level'], 3);
  if (strobe !== undefined && strobe !== null && !isStrobe) {
    problems.push(
      fieldProblem(`${file} › strobe`, JSON.stringify(strobe).slice(0, 60), 'null, or a channel and a level'),
    );
  }
  if (
    countingChannels !== undefined &&
    countingChannels !== null &&
    !isWhole(countingChannels, channelList.length + 1)
  ) {
    problems.push(
      fieldProblem(
        `${file} › countingChannels`,
        JSON.stringify(countingChannels),
        'null, or a number of channels',
      ),
    );
  }
  return problems;
}
