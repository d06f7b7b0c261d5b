import { degToRad, showDegrees, showMm, showNumber } from '../../units/index.ts';
import type { CodeTable } from '../codeTable.ts';
import { deadChannels } from '../properties/faults.ts';
import { codeProperties, lightFaultsSeen, type CodeProperties } from '../properties/properties.ts';
import { smallestMark } from '../properties/smallestMark.ts';
import { layTracks } from './layTracks.ts';
import type { CodeNeed, Reason, Verdict } from './need.ts';

/** Marks this much larger than the process needs leave room for its bad days. Common practice, no source. */
const COMFORTABLE = 1.5;

/** Standard deviations kept between an edge and half a step: 95 edges of 100. */
const SIGMAS = 2;

/** What decides between codes, as numbers. */
export interface CodeMeasures {
  readonly tracks: number;
  readonly channels: number;
  /** Narrowest window or land on the disc that was asked about. [mm] */
  readonly smallestMarkMm: number;
  /** That, over what the process needs. [-] */
  readonly markMargin: number;
  readonly trackWidthMm: number;
  /** How far an edge or a sensor may be off before two changes come in the wrong order: half a step. [mm] */
  readonly toleranceMm: number;
  /** Worst decode error of any boundary, against the nearer true neighbour. [positions] */
  readonly worstErrorPositions: number;
  /** No light, and light everywhere, show themselves as illegal words. */
  readonly lampOffSeen: boolean;
  readonly floodedSeen: boolean;
  /** Of the positions that a dead channel spoils, the share that shows an illegal word. [-], 0..1 */
  readonly deadChannelSeen: number;
}

/** A code held against a need. */
export interface WeighedCode {
  readonly verdict: Verdict;
  readonly measures: CodeMeasures;
  /** What tells most first. */
  readonly reasons: readonly Reason[];
}

/** One reason with what it does to the verdict when it is bad. */
interface Finding extends Reason {
  readonly costs: 'nothing' | 'risk' | 'fit';
}

function measure(table: CodeTable, properties: CodeProperties, need: CodeNeed): CodeMeasures {
  const { radiiMm, widthMm } = layTracks(table, need);
  const markMm = smallestMark(table, radiiMm).arcMm;
  const { lampOff, flooded } = lightFaultsSeen(properties, need.windowLevel);
  const dead = deadChannels(table);
  const spoiled = dead.reduce((sum, { seen, wrong }) => sum + seen + wrong, 0);
  const seen = dead.reduce((sum, fault) => sum + fault.seen, 0);
  return {
    tracks: table.tracks.length,
    channels: table.channels.length,
    smallestMarkMm: markMm,
    markMargin: markMm / Math.max(need.minWindowMm, need.minLandMm),
    trackWidthMm: widthMm,
    toleranceMm: degToRad(180 / table.positions) * Math.min(...radiiMm),
    worstErrorPositions: properties.worstErrorPositions,
    lampOffSeen: lampOff,
    floodedSeen: flooded,
    deadChannelSeen: spoiled === 0 ? 1 : seen / spoiled,
  };
}

/** Can the disc be made, and do its sensors stand close enough? */
function makingFindings(measures: CodeMeasures, need: CodeNeed): Finding[] {
  const { smallestMarkMm, markMargin, trackWidthMm, toleranceMm, tracks, channels } = measures;
  const times = showNumber(markMargin, 1);
  const isWideEnough = trackWidthMm >= need.minTrackWidthMm;
  const isClose = SIGMAS * need.edgeSdMm <= toleranceMm;
  return [
    {
      isGood: markMargin >= COMFORTABLE,
      costs: markMargin < 1 ? 'fit' : 'risk',
      text: `The smallest mark is ${showMm(Number(smallestMarkMm.toFixed(2)))}, ${times} times what the process needs.`,
    },
    {
      isGood: isWideEnough,
      costs: 'fit',
      text:
        tracks === 1
          ? 'One track carries everything, as wide as the room allows.'
          : isWideEnough
            ? `${tracks} tracks are ${showMm(Number(trackWidthMm.toFixed(2)))} wide each.`
            : `${tracks} tracks would be ${showMm(Number(Math.max(0, trackWidthMm).toFixed(2)))} wide each; the process needs ${showMm(need.minTrackWidthMm)}.`,
    },
    {
      isGood: isClose,
      costs: 'risk',
      text: `Edges and sensors must be right within ${showMm(Number(toleranceMm.toFixed(2)))}, half a step; two standard deviations are ${showMm(SIGMAS * need.edgeSdMm)}.`,
    },
    {
      isGood: channels <= need.mostChannels,
      costs: 'fit',
      text: `It takes ${channels} light sensors; ${need.mostChannels} are allowed.`,
    },
  ];
}

/** What it shows when an edge is in doubt, when power was lost, and when something breaks. */
function readingFindings(
  table: CodeTable,
  properties: CodeProperties,
  measures: CodeMeasures,
  need: CodeNeed,
): Finding[] {
  const far = measures.worstErrorPositions;
  const farDeg = showDegrees((far * 360) / table.positions);
  const findings: Finding[] = [
    {
      isGood: far === 0,
      costs: 'risk',
      text:
        far === 0
          ? 'An edge in doubt shows one of the two neighbours, never a far direction.'
          : `Stopped on a boundary it can show a direction ${far} positions away (${farDeg}).`,
    },
    {
      isGood: table.absolute,
      costs: need.mustSurvivePowerLoss ? 'fit' : 'nothing',
      text: table.absolute
        ? 'It tells the direction at switching on.'
        : 'It only counts: after a loss of power the direction is unknown.',
    },
    {
      isGood: measures.lampOffSeen && measures.floodedSeen,
      costs: 'nothing',
      text: lightFaultText(measures),
    },
    {
      isGood: measures.deadChannelSeen > 0.5,
      costs: 'nothing',
      text: `A dead channel shows an illegal word at ${Math.round(100 * measures.deadChannelSeen)} of 100 positions it spoils.`,
    },
  ];
  if (table.strobe) {
    findings.push({
      isGood: false,
      costs: 'nothing',
      text: `Up to ${mostChanging(properties)} channels change together, so the clock track decides when to read.`,
    });
  }
  return findings;
}

function mostChanging(properties: CodeProperties): number {
  return Math.max(...properties.boundaries.map(({ changing }) => changing.length));
}

function lightFaultText({ lampOffSeen, floodedSeen }: CodeMeasures): string {
  if (lampOffSeen && floodedSeen) return 'A dead lamp and full daylight are both recognised.';
  if (lampOffSeen) return 'A dead lamp is recognised; full daylight looks like a direction.';
  if (floodedSeen) return 'Full daylight is recognised; a dead lamp looks like a direction.';
  return 'A dead lamp and full daylight both look like a direction.';
}

/** Whether the sensors can tell the code's marks. */
function marksFinding(table: CodeTable, properties: CodeProperties, need: CodeNeed): Finding[] {
  const levels = Math.max(...table.tracks.map((track) => track.levelCount));
  if (levels === 2) return [];
  if (need.marks === 'light-dark') {
    return [{ isGood: false, costs: 'fit', text: 'It needs sensors that tell three marks apart.' }];
  }
  if (need.marks === 'colours') {
    return [{ isGood: true, costs: 'nothing', text: 'Three colours tell more on every track.' }];
  }
  const isSafe = properties.worstErrorPositions === 0;
  const text = isSafe
    ? 'Every change goes one grey level, so none passes through a wrong one.'
    : 'Changes between the lightest and the darkest level pass through the middle one and show a wrong direction.';
  return [{ isGood: isSafe, costs: 'fit', text }];
}

/**
 * Holds a code table against a need: what it measures, what speaks for it and against it, and a verdict.
 *
 * @check src/core/codes/ranking/rankCodes.test.ts
 */
export function weighCode(table: CodeTable, need: CodeNeed): WeighedCode {
  const properties = codeProperties(table, need.marks === 'greys' ? 'ordered' : 'unordered');
  const measures = measure(table, withoutSeam(table, properties, need), need);
  const findings = [
    ...marksFinding(table, properties, need),
    ...makingFindings(measures, need),
    ...readingFindings(table, properties, measures, need),
  ];
  const bad = findings.filter(({ isGood }) => !isGood);
  const doesFit = bad.every(({ costs }) => costs !== 'fit');
  const verdict = !doesFit ? 'does-not-fit' : bad.some(({ costs }) => costs === 'risk') ? 'risky' : 'fits';
  return { verdict, measures, reasons: byWeight(findings).map(({ isGood, text }) => ({ isGood, text })) };
}

/** The boundary from the last position to the first does not count where the shaft never gets there. */
function withoutSeam(table: CodeTable, properties: CodeProperties, need: CodeNeed): CodeProperties {
  if (need.turnsFully) return properties;
  const reached = properties.boundaries.filter(
    ({ positionBefore, positionAfter }) => positionBefore !== table.positions - 1 || positionAfter !== 0,
  );
  const worst = reached.reduce((most, { halfTurned }) => Math.max(most, halfTurned.worstErrorPositions), 0);
  return { ...properties, worstErrorPositions: worst };
}

/** What rules a code out first, then what makes it risky, then the rest in the order found. */
function byWeight(findings: readonly Finding[]): Finding[] {
  const weight = ({ isGood, costs }: Finding): number =>
    isGood ? 2 : costs === 'fit' ? 0 : costs === 'risk' ? 1 : 2;
  return [...findings].sort((a, b) => weight(a) - weight(b));
}
