import type { Finding } from '../../faults/index.ts';
import { element, type Markup } from '../../report/index.ts';
import { showSignificant } from '../../units/index.ts';
import type { ReviewTable } from './reviewTable.ts';
import { instantText } from './words.ts';

const spoilsText: Record<Finding['spoils'], string> = {
  heading: 'direction is left out of every mean',
  speed: 'speed is left out of every mean',
  both: 'direction and speed are left out of every mean',
  nothing: 'nothing is left out',
};

/** From when to when a fault lasts, in words. */
function timeText({ sinceMs, untilMs }: Finding): string {
  return `${instantText(sinceMs)} to ${untilMs === null ? 'the end of the record' : instantText(untilMs)}`;
}

/** How likely the record would look like this with a sound instrument. */
function chanceText({ falseAlarmChance }: Finding): string {
  return falseAlarmChance < 1e-6 ? 'below 1 in 1 000 000' : `${showSignificant(100 * falseAlarmChance, 2)} %`;
}

/** The faults as a table. */
export function faultsTable(findings: readonly Finding[]): ReviewTable {
  return {
    name: 'faults',
    title: 'Faults',
    defined: ['faults'],
    headings: [
      'fault',
      'since',
      'until',
      'evidence',
      'chance of a false alarm in a year, own estimate',
      'what to do',
      'left out',
    ],
    rows: findings.map((finding) => [
      finding.title,
      instantText(finding.sinceMs),
      finding.untilMs === null ? 'still lasts' : instantText(finding.untilMs),
      finding.evidence,
      chanceText(finding),
      finding.todo,
      spoilsText[finding.spoils],
    ]),
  };
}

function box(finding: Finding): Markup {
  const { title, evidence, todo, spoils, daysLeft } = finding;
  const left =
    daysLeft === null ? '' : ` About ${Math.round(daysLeft)} days are left until readings go wrong.`;
  return element(
    'div',
    { class: 'finding' },
    element('h3', {}, title),
    element('p', { class: 'faint' }, `${timeText(finding)}; in that time ${spoilsText[spoils]}.`),
    element('p', {}, `Evidence: ${evidence}${left}`),
    element(
      'p',
      {},
      `A sound instrument shows as much in a year with a chance of ${chanceText(finding)} (own estimate).`,
    ),
    element('p', {}, `What to do: ${todo}`),
  );
}

/** What is wrong with the instrument, or that nothing was found. */
export function findingsParts(findings: readonly Finding[]): Markup[] {
  if (findings.length === 0) return [element('p', {}, 'No fault was found in this record.')];
  return findings.map(box);
}
