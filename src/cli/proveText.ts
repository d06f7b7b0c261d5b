import { nameCode, OWN_WORDS, type CodeTable } from '../core/codes/index.ts';
import { isSettled, worthwhileCauses, type Share } from '../core/proof/index.ts';
import { problemText } from '../core/error/index.ts';
import { showDegrees, showNumber, showSignificant } from '../core/units/index.ts';
import type { ProvedDesign } from '../app/api.ts';

/** A share in percent with the range that holds the true one in 95 of 100 cases. */
function showShare({ value, low, high }: Share): string {
  const percent = (share: number): string => showNumber(100 * share, 1);
  return `${percent(value)} % (${percent(low)} to ${percent(high)})`;
}

/** Small shares keep two figures: 0.03 % is not 0. */
function showSmallShare(share: number): string {
  return share === 0 ? '0 %' : `${Number((100 * share).toPrecision(2))} %`;
}

function indent(lines: readonly string[], by = '  '): string[] {
  return lines.map((line) => (line === '' ? line : by + line));
}

/** What the builds do, told so that many good ones do not gainsay a no that is about something else. */
function metText({ proof, design }: ProvedDesign): string {
  const isOther = proof.verdict === 'no' && proof.builds.yield.value >= design.instrument.need.wantedYield;
  return isOther
    ? 'have their edges where the need wants them; the NO is for the reasons above, not for tolerances'
    : 'meet the need';
}

function asBuilt(proved: ProvedDesign): string[] {
  const { builds, exactTurn } = proved.proof;
  const { p50, p95, worst } = builds.maxErrorDeg;
  return [
    `As drawn   ${asDrawn(exactTurn.errors)}`,
    `As built   ${builds.builds} virtual builds, seed ${builds.seed}: ${showShare(builds.yield)} ${metText(proved)}`,
    `           largest error: half of them within ${showDegrees(p50)}, 95 % within ${showDegrees(p95)}, worst ${showDegrees(worst)}`,
    `           more than one step out over ${showSmallShare(builds.misreadShare)} of the turn, words that do not exist over ${showSmallShare(builds.illegalShare)}`,
  ];
}

function asDrawn({ rmsDeg, maxDeg }: ProvedDesign['proof']['exactTurn']['errors']): string {
  if (rmsDeg === null || maxDeg === null) return 'no position ever shows, for the reasons above';
  return `error ${showDegrees(rmsDeg)} rms, ${showDegrees(maxDeg)} at most`;
}

/** What the sensors read, and where they cut it. */
function lightLines({ levels, circuit, marks }: ProvedDesign['design']['head']): string[] {
  const counts = (value: number): string => showNumber(value, 1);
  const own =
    circuit.thresholds === 'per-channel'
      ? ', to be measured for each channel'
      : ', the same for all channels';
  if (marks?.kind === 'colours') {
    return [
      `Light      red, green and blue counts ${marks.marksRgbCounts.map((rgb) => rgb.map(counts).join('/')).join(', ')}${own}`,
      `           the nearest colour counts when it is at most ${marks.rejectRatio} times as far off as the second nearest`,
      `           margin ${showSignificant(marks.marginSigma, 2)} standard deviations of a reading`,
    ];
  }
  if (marks?.kind === 'greys') {
    const pair = ({ lowCounts, highCounts }: (typeof marks.thresholds)[0]): string =>
      `${counts(lowCounts)} and ${counts(highCounts)}`;
    return [
      `Light      ${marks.counts.map(counts).join(', ')} counts over the three greys, through ${showNumber(levels.resistorOhm, 0)} ohm`,
      `           thresholds ${pair(marks.thresholds[0])} below, ${pair(marks.thresholds[1])} above the middle one${own}`,
    ];
  }
  return [
    `Light      ${counts(levels.litCounts)} counts lit, ${counts(levels.darkCounts)} dark, through ${showNumber(levels.resistorOhm, 0)} ohm (best: ${showNumber(levels.bestResistorOhm, 0)})`,
    `           thresholds ${counts(levels.lowCounts)} and ${counts(levels.highCounts)}${own}`,
    `           margins ${counts(levels.litMarginCounts)} counts lit, ${counts(levels.darkMarginCounts)} dark`,
  ];
}

function signals({ design }: ProvedDesign): string[] {
  const { head, instrument } = design;
  const { speed } = head;
  return [
    ...lightLines(head),
    `Speed      every position is read up to ${showSignificant(speed.limitDegPerS, 2)}°/s; you ask for ${showSignificant(instrument.need.turnRateDegPerS, 6)}°/s`,
  ];
}

/** Items of the budget that a maker would notice, largest first. */
const LEAST_ITEM_DEG = 0.005;

function budgetLines({ proof }: ProvedDesign): string[] {
  const { items, worst, combinedDeg } = proof.budget;
  return [
    worst,
    ...items
      .filter(({ maxDeg }) => maxDeg >= LEAST_ITEM_DEG)
      .map(({ title, maxDeg, formula }) => `${showDegrees(Number(maxDeg.toFixed(2)))}  ${title}: ${formula}`),
    `${showDegrees(Number(combinedDeg.toFixed(2)))}  all together, fixed items added and scattered ones as squares`,
  ];
}

/** The three most useful changes, each with what it does. */
function changeLines({ proof }: ProvedDesign): string[] {
  if (proof.changes.length === 0) return ['None of the changes tried would be noticed.'];
  return proof.changes.map(
    ({ title, how, verdict, yield: good, p95Deg, limitDegPerS }, i) =>
      `${i + 1}. ${title}. ${how} Then ${showNumber(100 * good.value, 1)} % meet the need, 95 % within ${showDegrees(p95Deg)}, ` +
      `read up to ${showSignificant(limitDegPerS, 2)}°/s: ${verdict === 'yes' ? 'it reads right' : 'still not enough by itself'}.`,
  );
}

/** How loose all tolerances may be together. */
function looseness({ proof, design }: ProvedDesign): string {
  const wanted = showNumber(100 * design.instrument.need.wantedYield, 1);
  if (proof.loosestFactor === null) return `No tolerances, however tight, reach ${wanted} %.`;
  return proof.loosestFactor >= 1
    ? `All tolerances together may be ${showNumber(proof.loosestFactor, 1)} times as loose and still reach ${wanted} %.`
    : `All tolerances together must come down to ${showNumber(100 * proof.loosestFactor, 0)} % of what they are to reach ${wanted} %.`;
}

/** The tolerances that matter, or that none does. */
function tightenFirst({ proof }: ProvedDesign): string[] {
  const causes = worthwhileCauses(proof);
  if (causes.length === 0) {
    return [
      proof.verdict === 'yes'
        ? 'Nothing: no single tolerance would be noticed.'
        : 'No tolerance helps: the fault lies in the design itself, for the reasons above.',
    ];
  }
  return causes.map(
    ({ title, advice, yieldWithout, p95WithoutDeg }, i) =>
      `${i + 1}. ${title}: without it ${showNumber(100 * yieldWithout.value, 1)} % meet the need, 95 % within ${showDegrees(p95WithoutDeg)}. ${advice}`,
  );
}

/** Name of a code; a maker's own words are named for what they are. */
function codeTitle(code: CodeTable): string {
  return code.family === OWN_WORDS ? `${OWN_WORDS}, which is ${nameCode(code).title}` : code.family;
}

/** The verdict in one line, no firmer than the builds it rests on. */
function headline({ design, proof }: ProvedDesign): string {
  if (proof.verdict === 'no') return 'NO, this design will not read right.';
  const { builds } = proof.builds;
  return isSettled(proof.builds.yield, design.instrument.need.wantedYield)
    ? 'YES, this design will read right.'
    : `YES as far as it goes, but ${builds} virtual ${builds === 1 ? 'build is' : 'builds are'} too few to be sure.`;
}

/** What `prove` prints: the verdict first, then what it rests on. */
export function proveText(proved: ProvedDesign): string {
  const { design, proof, warnings } = proved;
  const { code, instrument } = design;
  const step = showDegrees(360 / code.positions);
  const lines = [
    `${instrument.name}: ${codeTitle(code)}, ${code.positions} positions of ${step}`,
    '',
    headline(proved),
    ...indent(proof.reasons),
    '',
    ...asBuilt(proved),
    ...signals(proved),
    '',
    'Errors in degrees',
    ...indent(budgetLines(proved)),
    '',
    'What to tighten first',
    ...indent([...tightenFirst(proved), looseness(proved)]),
    '',
    'The most useful changes',
    ...indent(changeLines(proved)),
    '',
    'Finer than the disc',
    ...indent([...proof.fine.reasons]),
  ];
  if (proof.rival) {
    lines.push('', `The same disc in ${proof.rival.family}`, ...indent([proof.rival.why]));
    lines.push(...indent([`${showShare(proof.rival.builds.yield)} of the same builds meet the need.`]));
  }
  if (warnings.length > 0)
    lines.push('', 'To know', ...indent(warnings.flatMap((w) => problemText(w).split('\n'))));
  return lines.join('\n');
}
