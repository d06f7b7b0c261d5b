import { element, joined, table, type Markup } from '../../report/index.ts';
import { showDegrees } from '../../units/index.ts';
import { childTelling } from './child.ts';
import { curiousTelling } from './curious.ts';
import { engineerTelling } from './engineer.ts';
import type { Explained } from './explained.ts';
import { pageData } from './pageData.ts';
import { poster } from './poster.ts';
import { readingText } from './script/pageScript.ts';
import { readingUnder, type PageData, type PageReading } from './script/reading.ts';
import { scriptText } from './script/scriptText.ts';
import { stagePicture, type StageParts } from './stage.ts';
import { explainStyle } from './style.ts';
import { twoCodes } from './twoCodes.ts';

/** What runs and what styles within the page: the same for every disc, so that a server's policy can name their hashes. */
export const explainInline = { script: scriptText, style: explainStyle } as const;

/** Nothing is ever asked of anyone: the page works in a cellar. */
const POLICY = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:";

/** Data that stays data, whatever name it holds. */
function dataText(data: PageData): string {
  return JSON.stringify(data).replace(/[<>&\u2028\u2029]/g, (sign) => {
    return `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
}

function leadText({ head }: Explained): string {
  const { code, tracks, strip } = head.disc;
  const rings = `${tracks.length} ${tracks.length === 1 ? 'track' : 'tracks'}`;
  const sensors = head.channels.length === 1 ? 'One sensor looks' : `${head.channels.length} sensors look`;
  const own = code.absolute ? 'a word of its own' : 'a word, though some share one';
  return `${strip ? 'The travel' : 'A turn'} is cut into ${code.positions} positions of ${showDegrees(360 / code.positions)}. ${sensors} at ${rings}; what they see together is a word, and every position has ${own}.`;
}

function sensorTable({ head, data, reading }: StageParts): Markup {
  const rows = head.channels.map(({ channel, track }) => {
    const level = reading.levels[channel]!;
    const sees = element('span', { id: `sees-${channel}` }, `${level}: ${data.levelNames[level]}`);
    // Worded, so that no row looks like one of the table of words when the page is read back.
    return [String(channel), `track ${track}`, sees];
  });
  return element(
    'div',
    { class: 'sensors-list', tabindex: '0', role: 'region', 'aria-label': 'What each sensor sees' },
    table(['channel', 'looks at', 'sees'], rows),
  );
}

function readMarkup({ word, position, headingDeg }: PageReading): Markup {
  const entry = (name: string, id: string, text: string): Markup =>
    joined([element('dt', {}, name), element('dd', { id }, text)]);
  return element(
    'dl',
    { class: 'reads' },
    entry('Word', 'word', word),
    entry('Position', 'position', position === null ? 'none of its own' : String(position)),
    entry('Heading', 'heading', headingDeg === null ? 'none' : showDegrees(Number(headingDeg.toFixed(2)))),
  );
}

function turning(parts: StageParts): Markup {
  const { data, reading } = parts;
  const isStrip = data.strip !== null;
  return element(
    'section',
    { class: 'turning', 'aria-label': isStrip ? 'The strip, moving' : 'The disc, turning' },
    element(
      'div',
      {},
      stagePicture(parts, 'stage'),
      element(
        'p',
        { class: 'faint' },
        `Rings with a number are the sensors: they stand still while the ${isStrip ? 'strip' : 'disc'} moves under their beams. The triangle is the index mark.`,
      ),
    ),
    element(
      'div',
      {},
      element('label', { for: 'turn' }, isStrip ? 'Move the strip' : 'Turn the disc'),
      element('input', {
        type: 'range',
        id: 'turn',
        min: '0',
        max: '360',
        step: 'any',
        value: data.startDeg,
        'aria-describedby': 'hint',
        'aria-valuetext': readingText(reading),
      }),
      element(
        'p',
        { id: 'hint', class: 'faint no-print' },
        `Drag the ${isStrip ? 'strip' : 'disc'} or the slider. Arrow keys turn by a quarter of a step, Page Up and Page Down by a whole one.`,
      ),
      readMarkup(reading),
      sensorTable(parts),
    ),
  );
}

const tellings = [
  { id: 'child', name: 'For a child', tell: childTelling },
  { id: 'curious', name: 'For the curious', tell: curiousTelling },
  { id: 'engineer', name: 'For an engineer', tell: engineerTelling },
] as const;

function told(explained: Explained): Markup {
  const choices = tellings.map(({ id, name }) =>
    element(
      'label',
      { for: `tell-${id}` },
      element('input', {
        type: 'radio',
        name: 'telling',
        id: `tell-${id}`,
        checked: id === 'child' ? 'checked' : null,
      }),
      name,
    ),
  );
  return element(
    'section',
    {},
    element('h2', {}, 'How it works'),
    element('fieldset', { class: 'no-print' }, element('legend', {}, 'Told for'), ...choices),
    ...tellings.map(({ id, name, tell }) =>
      element(
        'article',
        { id, 'aria-label': name },
        element('h3', { class: 'telling-name' }, name),
        tell(explained),
      ),
    ),
  );
}

function takeIt(): Markup {
  return element(
    'section',
    { class: 'no-print' },
    element('h2', {}, 'Take it with you'),
    element(
      'p',
      {},
      'This page is one file. It asks nothing of any network, so it works wherever you keep it.',
    ),
    element('button', { type: 'button', id: 'print-poster' }, 'Print the poster'),
    element('button', { type: 'button', id: 'print-all' }, 'Print the whole page'),
  );
}

/**
 * A page that tells how this very disc is read: for whoever finds the instrument later, and for its maker to publish.
 *
 * It turns under drag, keys and slider; it is told for a child, for the curious and for an engineer; it prints as a poster.
 *
 * @param explained - The instrument and its planned head.
 * @returns A whole HTML page that needs nothing beside it; equal designs give equal bytes.
 * @check src/core/make/explain/explainPage.test.ts, test/journeys/explainPage.test.ts (in a browser, without network)
 */
export function explainPage(explained: Explained): string {
  const { instrument, head } = explained;
  const data = pageData(explained);
  const parts: StageParts = { head, data, reading: readingUnder(data, data.startDeg) };
  const title = `How the disc of ${instrument.name} works`;
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      { html: `<meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${POLICY}">` },
      { html: '<meta name="viewport" content="width=device-width, initial-scale=1">' },
      element('title', {}, title),
      { html: `<style>${explainStyle}</style>` },
    ),
    element(
      'body',
      {},
      element(
        'main',
        {},
        element('header', {}, element('h1', {}, title), element('p', { class: 'lead' }, leadText(explained))),
        turning(parts),
        told(explained),
        element('section', {}, twoCodes(data)),
        takeIt(),
        poster(explained, parts),
      ),
      { html: `<script type="application/json" id="data">${dataText(data)}</script>` },
      { html: `<script>${scriptText}</script>` },
    ),
  );
  return `<!doctype html>\n${page.html}\n`;
}
