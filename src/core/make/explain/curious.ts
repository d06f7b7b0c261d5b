import { positionCentreDeg } from '../../codes/index.ts';
import { formOf } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { headingOfPosition } from '../../instrument/index.ts';
import { element, joined, table, type Markup } from '../../report/index.ts';
import { showDegrees } from '../../units/index.ts';
import { wordMap } from '../pictures/wordMap.ts';
import { mostChanges, type Explained } from './explained.ts';

/** Rows of the table of words; with more positions only some are shown. [-] */
const ROWS_MOST = 64;

const paragraph = (text: string): Markup => element('p', {}, text);

/** What makes a channel see light, in the words of the disc's form. */
function lightText({ disc }: HeadPlan): string {
  const form = formOf(disc.spec);
  if (form.kind === 'relief') {
    const [high, low] = form.raised === 'dark' ? ['no light', 'light'] : ['light', 'no light'];
    return `What stands up gives ${high} back to its sensor, and the floor gives ${low}.`;
  }
  if (form.kind === 'copper' && form.copper === 'light')
    return 'Copper gives light back to its sensor, bare board does not.';
  if (form.kind === 'copper') return 'Copper keeps the light from its sensor; bare board lets it through.';
  if (form.kind === 'inlay' || (form.kind === 'overlay' && form.colours))
    return 'Each colour is a level, told apart by how much light of the lamp it gives back.';
  return 'A window lets light through to its sensor; a land stops it.';
}

function wordRows({ head, instrument }: Explained): string[][] {
  const { positions, words } = head.disc.code;
  const few = [0, 1, 2, Math.floor(positions / 2), positions - 1];
  const shown = positions <= ROWS_MOST ? [...words.keys()] : [...new Set(few)];
  return shown.map((position) => [
    String(position),
    words[position]!,
    showDegrees(positionCentreDeg(position, positions)),
    showDegrees(headingOfPosition(instrument, position)),
  ]);
}

function changesText(explained: Explained): string {
  const most = mostChanges(explained);
  if (most === 1)
    return 'From each position to the next only one channel changes. At the moment of change it does not matter which of the two words is read: both are right to half a step.';
  return `From one position to the next up to ${most} channels change. They never do so at the very same moment, so words between may be read that belong elsewhere: that is the weakness of this code.`;
}

function northText({ instrument }: Explained): string {
  const { northOffsetDeg } = instrument.site;
  const way = instrument.head.patternedFace === 'up' ? 'falls' : 'grows';
  return `The disc knows nothing of north. When its index mark stands at the head’s line, the heading is ${showDegrees(northOffsetDeg)}, as set once on the mast; from there the heading ${way} as the disc angle grows.`;
}

function absoluteText({ head: { disc } }: Explained): string {
  const { code } = disc;
  const rings = code.tracks.length === 1 ? 'one ring' : `${code.tracks.length} rings`;
  if (code.absolute)
    return `A disc that only counts steps loses its place when the power fails. This one is absolute: its ${rings} give every position a word of its own, so the first look after switching on is enough.`;
  return `This disc counts: its ${rings} give some positions the same word, so after switching on it knows its place only once a word of its own has passed.`;
}

/** Told for a curious adult. */
export function curiousTelling(explained: Explained): Markup {
  const { head, instrument } = explained;
  const { code, spec } = head.disc;
  const half = 180 / code.positions;
  const rows = wordRows(explained);
  const unrolled = `The same ${head.disc.strip ? 'strip' : 'disc unrolled, clockwise from the index mark'}: one row a channel, light where it sees a window.`;
  return joined([
    paragraph(lightText(head)),
    paragraph(absoluteText(explained)),
    element(
      'figure',
      {},
      element(
        'div',
        {
          class: 'scroll',
          tabindex: '0',
          role: 'region',
          'aria-label': 'What each channel sees over one turn',
        },
        wordMap(code, spec.windowLevel),
      ),
      element('figcaption', {}, unrolled),
    ),
    paragraph(changesText(explained)),
    paragraph(
      `The controller looks the word up in a table and reports the middle of its step, so it is off by at most ${showDegrees(half)} where everything is made as drawn. Smaller steps need more sensors, or finer marks.`,
    ),
    paragraph(northText(explained)),
    element(
      'details',
      {},
      element('summary', {}, rows.length === code.positions ? 'All words' : 'Some of the words'),
      element(
        'div',
        { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': `Words of ${instrument.name}` },
        table(['position', 'word, channel 0 first', 'middle of its step', 'heading'], rows),
      ),
    ),
  ]);
}
