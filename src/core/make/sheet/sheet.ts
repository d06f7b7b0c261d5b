import type { DiscPlan } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import {
  partsList,
  powerPlan,
  powerShortfalls,
  schematicPicture,
  wiringPlan,
  type PartRow,
} from '../../program/index.ts';
import { isSettled, type Proof } from '../../proof/index.ts';
import { element, joined, table, type Markup } from '../../report/index.ts';
import { CAUTIONS_DEFER, cautionsFor, type Caution } from '../cautions.ts';
import { discPicture } from '../pictures/discPicture.ts';
import { budgetPicture, buildsPicture, turnPicture } from '../pictures/proofPictures.ts';
import { signalPicture } from '../pictures/signalPicture.ts';
import { wordMap } from '../pictures/wordMap.ts';
import { discFacts, powerFacts, proofFacts, signalFacts, type Fact } from './facts.ts';
import { buildSteps } from './steps.ts';
import { sheetStyle } from './style.ts';

/** Everything a build sheet tells of: one design and its proof. */
export interface ProvedParts {
  readonly instrument: Instrument;
  readonly disc: DiscPlan;
  readonly head: HeadPlan;
  readonly proof: Proof;
}

function section(title: string, ...children: readonly Markup[]): Markup {
  return element('section', {}, element('h2', {}, title), ...children);
}

function figure(drawing: Markup, caption: string, size: 'wide' | 'tall' = 'wide'): Markup {
  return element('figure', { class: size }, drawing, element('figcaption', {}, caption));
}

function facts(rows: readonly Fact[]): Markup {
  const cells = rows.map(([what, howMuch]) =>
    element('tr', {}, element('th', { scope: 'row' }, what), element('td', {}, howMuch)),
  );
  return element('div', { class: 'scroll' }, element('table', {}, element('tbody', {}, ...cells)));
}

function cautionBox({ title, sentences, source }: Caution): Markup {
  return element(
    'div',
    { class: 'caution' },
    element('h3', {}, title),
    ...sentences.map((sentence) => element('p', {}, sentence)),
    element('p', { class: 'faint' }, `Source: ${source}`),
  );
}

function partsTable(rows: readonly PartRow[]): Markup {
  const cells = rows.map(({ quantity, part, value, note }) => [String(quantity), part, value, note]);
  return element('div', { class: 'scroll' }, table(['number', 'part', 'value', 'note'], cells));
}

function wiringTable(instrument: Instrument, head: HeadPlan): Markup {
  const { rows } = wiringPlan(instrument, head);
  return element(
    'div',
    { class: 'scroll' },
    table(
      ['from', 'to', 'note'],
      rows.map(({ from, to, note }) => [from, to, note]),
    ),
  );
}

function verdict(proof: Proof, need: Instrument['need']): Markup {
  const isSure = isSettled(proof.builds.yield, need.wantedYield);
  const yes = isSure
    ? 'Yes, this design will read right.'
    : 'Yes as far as it goes; more virtual builds would make it sure.';
  const words = proof.verdict === 'yes' ? yes : 'No, this design will not read right.';
  return element('p', { class: 'verdict' }, `${words} ${proof.reasons.join(' ')}`);
}

function body({ instrument, head, proof }: ProvedParts): Markup {
  const { code, spec } = head.disc;
  return joined([
    element('h1', {}, `Build sheet: ${instrument.name}`),
    element('p', { class: 'faint' }, instrument.site.place),
    verdict(proof, instrument.need),
    section(
      'Before you begin',
      element('div', { class: 'cautions' }, ...cautionsFor(instrument).map(cautionBox)),
      element('p', {}, CAUTIONS_DEFER),
    ),
    section(
      'The disc',
      figure(
        discPicture(head),
        'Seen from the patterned face, the index mark up. Rings with numbers show where each channel looks.',
      ),
      facts(discFacts(head)),
      figure(wordMap(code, spec.windowLevel), 'The same disc unrolled, clockwise from the index mark.'),
    ),
    section('Parts', partsTable(partsList(instrument, head))),
    section(
      'Wiring',
      figure(
        schematicPicture(instrument, head),
        'The whole circuit; wiring/schematic.svg is the same picture.',
      ),
      wiringTable(instrument, head),
    ),
    section(
      'Build it',
      element('ol', {}, ...buildSteps(instrument, head).map((step) => element('li', {}, step))),
    ),
    section(
      'What it should read',
      figure(signalPicture(head), 'Counts of each channel over one turn, with its two thresholds.'),
      facts(signalFacts(head)),
    ),
    section('Power', facts(powerFacts(powerPlan(instrument, head), powerShortfalls(instrument, head)))),
    section(
      'What the proof says',
      facts(proofFacts(proof)),
      figure(
        turnPicture(proof, instrument.need),
        'Error of the direction shown over one turn, made exactly as drawn.',
      ),
      figure(buildsPicture(proof, instrument.need), 'Largest error of each virtual build.'),
      figure(budgetPicture(proof), `${proof.budget.worst} Filled bars are the same on every build.`),
    ),
  ]);
}

/** The build sheet: one HTML page that needs nothing beside it. */
export function buildSheet(parts: ProvedParts): string {
  const head = joined([
    { html: '<meta charset="utf-8">' },
    { html: '<meta name="viewport" content="width=device-width, initial-scale=1">' },
    element('title', {}, `Build sheet: ${parts.instrument.name}`),
    { html: `<style>${sheetStyle}</style>` },
  ]);
  const page = element(
    'html',
    { lang: 'en' },
    element('head', {}, head),
    element('body', {}, element('main', {}, body(parts))),
  );
  return `<!doctype html>\n${page.html}\n`;
}
