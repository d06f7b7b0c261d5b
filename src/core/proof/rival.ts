import { buildCode, codeProperties, families, positionCentreDeg, type CodeTable } from '../codes/index.ts';
import { planDisc, type DiscPlan } from '../disc/index.ts';
import { VanewrightError, type Problem } from '../error/index.ts';
import { planHead, ribMargin, type HeadPlan } from '../head/index.ts';
import { showDegrees } from '../units/index.ts';
import { goodOf } from './enoughBuilds.ts';
import type { BuildMaker } from './builds/causes.ts';
import { virtualBuilds, type BuildRequest } from './builds/virtualBuilds.ts';
import type { BuildStatistics, Proof } from './proof.ts';

/** The other code on the same disc, or why it cannot be compared. */
export interface RivalResult {
  readonly rival: Proof['rival'];
  /** Why there is none; `null` when there is one. */
  readonly refusal: string | null;
}

/** Names a family as a sentence does. */
export function familyTitle(name: string): string {
  return families.find((family) => family.name === name)?.title ?? name;
}

/** What a design is held against: natural binary, or reflected Gray where it is natural binary itself. */
function rivalOf(family: string): string {
  return family === 'natural-binary' ? 'reflected-gray' : 'natural-binary';
}

/**
 * The same disc, head and circuit with the other code, made in the same builds.
 *
 * Each rival edge and channel draws from the same streams, so the two differ by the code and not by luck.
 *
 * @param own - The design's own builds. What is asked of both. [-, deg]
 */
export function rivalBuilds(
  disc: DiscPlan,
  head: HeadPlan,
  request: BuildRequest,
  own: BuildStatistics,
  make: BuildMaker = virtualBuilds,
): RivalResult {
  const family = rivalOf(disc.code.family);
  const title = familyTitle(family);
  try {
    const code = buildCode(family, disc.code.positions);
    const { asked, circuit, board, rate } = head;
    const ribCost = ribMargin({ spec: asked, circuit, board });
    const rivalDisc = planDisc(code, { ...disc.spec, code: family, codeOptions: {} }, ribCost);
    const rivalHead = planHead(rivalDisc, asked, circuit, board, rate);
    const builds = make(rivalHead, request);
    const why = comparison({ code: disc.code, builds: own }, { code, builds });
    return { rival: { family, builds, why }, refusal: null };
  } catch (error) {
    if (!(error instanceof VanewrightError)) throw error;
    return { rival: null, refusal: `${capital(title)} cannot be compared: ${firstOf(error.problems)}` };
  }
}

function firstOf(problems: readonly Problem[]): string {
  return `${problems[0]!.what} (${problems[0]!.got})`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

interface Built {
  readonly code: CodeTable;
  readonly builds: BuildStatistics;
}

function comparison(own: Built, rival: Built): string {
  const misread = (built: Built): string =>
    `${capital(familyTitle(built.code.family))} was more than a step out over ${showShareOf(built.builds.misreadShare)} of the turn, ` +
    `and ${goodOf(built.builds)} builds met the need.`;
  const jumps = jumpText(rival.code) ?? jumpText(own.code);
  return [jumps, misread(rival), misread(own)].filter((sentence) => sentence !== null).join(' ');
}

/** Small shares keep two figures: 0.03 % is not 0. */
export function showShareOf(share: number): string {
  return share === 0 ? '0 %' : `${Number((100 * share).toPrecision(2))} %`;
}

/**
 * Where a code changes several channels at once and how far out that can read; `null` where it never does.
 *
 * @source derived: edges never fall at exactly one angle, so any mix of the old and new levels may show between them.
 */
export function jumpText(code: CodeTable): string | null {
  // A strobe hides what changes together, and a wheel that counts shows words in turn.
  if (code.strobe !== null || !code.absolute) return null;
  const { multiStepBoundaries, worstErrorPositions } = codeProperties(code);
  const most = Math.max(0, ...multiStepBoundaries.map(({ changing }) => changing.length));
  if (most < 2) return null;
  const busiest = multiStepBoundaries.filter(({ changing }) => changing.length === most);
  const named = busiest.slice(0, 2).map((at) => `${at.positionBefore}|${at.positionAfter}`);
  const more = busiest.length > named.length ? ` and ${busiest.length - named.length} more` : '';
  const step = positionCentreDeg(1, code.positions) - positionCentreDeg(0, code.positions);
  const harm =
    worstErrorPositions === 0
      ? 'what shows in between is no word of the code, and no position.'
      : `in between any mix of old and new can show: up to ${worstErrorPositions} positions out, ${showDegrees(worstErrorPositions * step)}.`;
  return (
    `In ${familyTitle(code.family)} ${multiStepBoundaries.length} of ${code.positions} boundaries change two channels or more at once, ` +
    `and ${named.join(' and ')}${more} change ${most}. Their edges never fall at exactly one angle, so ${harm}`
  );
}
