import type { WeighedNeed } from '../../app/api.ts';
import { showDegrees, showNumber, showSignificant } from '../../core/units/index.ts';
import type { WeighedPrinciple } from '../../core/weigh/index.ts';
import { part } from '../textParts.ts';

const serviceWords = {
  serves: 'serves',
  'with-care': 'serves with care',
  'does-not-serve': 'does not serve',
} as const satisfies Record<WeighedPrinciple['verdict'], string>;

/** Figures on one line, for comparing. */
function figureLine({ figures, costClass, upToEur, workHours }: WeighedPrinciple): string {
  const { stepDeg, largestErrorDeg, lifeYears } = figures;
  return [
    `step ${showDegrees(Number(stepDeg.toFixed(2)))}`,
    `error up to ${showDegrees(Number(largestErrorDeg.toFixed(1)))}`,
    lifeYears === null ? 'no wear' : `worn after ${showSignificant(lifeYears, 2)} years`,
    `parts ${costClass}, up to ${upToEur} EUR`,
    `${workHours} h of work`,
  ].join('; ');
}

/** One principle: its figures, then what counts, bad before good. */
function principleLines(principle: WeighedPrinciple): string[] {
  const { title, verdict, about, findings } = principle;
  const bad = findings.filter(({ isGood }) => !isGood);
  const good = findings.filter(({ isGood }) => isGood);
  // One that does not serve is told by what rules it out; its merits are in --json.
  const told = verdict === 'does-not-serve' ? bad : [...bad, ...good];
  return [
    '',
    `${title}: ${serviceWords[verdict]}`,
    `  ${about}`,
    `  ${figureLine(principle)}`,
    ...told.map(({ isGood, text }) => `  ${isGood ? '+' : '-'} ${text}`),
  ];
}

/** What a purpose asks for, with the lines to copy. */
function purposeLines({ purpose }: WeighedNeed): string[] {
  if (!purpose) return [];
  const { purpose: row, says, need } = purpose;
  return [
    `For ${row.title}`,
    ...says.map((sentence) => `  ${sentence}`),
    `  In the instrument file: need: { positions: ${need.positions}, accuracyDeg: ${need.accuracyDeg} }`,
  ];
}

/** What `weigh` prints of a need: the verdict first, then each way of sensing, best first. */
function weighingLines({ name, weighing, leftOut }: WeighedNeed): string[] {
  if (!weighing) return [];
  const { need, verdict, principles, turnsPerYear, windBasis } = weighing;
  return [
    `${name}: ${need}`,
    '',
    verdict.headline,
    ...verdict.reasons.map((reason) => `  ${reason}`),
    ...part('What would change it', verdict.wouldChange),
    '',
    'The ten ways of sensing, best first',
    ...principles.flatMap(principleLines),
    ...part('What the figures rest on', [
      `The shaft turns about ${showNumber(turnsPerYear, 0)} turns a year, to and fro added up.`,
      windBasis === 'recorded'
        ? 'Waits and gaps come from the recorded wind.'
        : 'Waits and gaps come from site.wind, a model; --wind FILE takes a recorded wind instead.',
      'Cost classes and hours of work are assumptions of ours; docs/weigh.md lists every one.',
    ]),
    ...part(
      'Lines left out while reading',
      leftOut.length === 0 ? [] : [`${leftOut.length} lines, the first of them line ${leftOut[0]}`],
    ),
  ];
}

/** What `weigh` prints: what a purpose asks for, then how a need is served. */
export function weighText(weighed: WeighedNeed): string {
  const [purpose, weighing] = [purposeLines(weighed), weighingLines(weighed)];
  return [...purpose, ...(purpose.length > 0 && weighing.length > 0 ? [''] : []), ...weighing].join('\n');
}
