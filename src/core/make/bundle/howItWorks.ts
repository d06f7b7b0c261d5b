import { positionCentreDeg } from '../../codes/index.ts';
import { balanceOf, formOf } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import { element, joined, table, type Markup } from '../../report/index.ts';
import { showDegrees, showMm, showNumber } from '../../units/index.ts';
import { discPicture } from '../pictures/discPicture.ts';
import { wordMap } from '../pictures/wordMap.ts';
import { sheetStyle } from '../sheet/style.ts';

const paragraph = (text: string): Markup => element('p', {}, text);
const section = (title: string, ...children: readonly Markup[]): Markup =>
  element('section', {}, element('h2', {}, title), ...children);
const figure = (drawing: Markup, caption: string): Markup =>
  element('figure', {}, drawing, element('figcaption', {}, caption));

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

function wordRows({ disc: { code } }: HeadPlan): [string, string, string][] {
  const { positions, words } = code;
  const shown = [0, 1, 2, Math.floor(positions / 2), positions - 1];
  return [...new Set(shown)].map((position) => [
    String(position),
    words[position]!,
    showDegrees(positionCentreDeg(position, positions)),
  ]);
}

/** How many channels change from one position to the next, at most. */
function mostChanges(words: readonly string[]): number {
  return Math.max(
    ...words.map(
      (word, k) => [...word].filter((level, c) => level !== words[(k + 1) % words.length]![c]).length,
    ),
  );
}

function changesText({ disc: { code } }: HeadPlan): string {
  const most = mostChanges(code.words);
  if (most === 1)
    return 'From each position to the next only one channel changes. At the moment of change it does not matter which of the two words is read: both are right to half a step.';
  return `From one position to the next up to ${most} channels change. They never do so at the very same moment, so words between may be read that belong elsewhere: that is the weakness of this code.`;
}

function balanceText({ disc }: HeadPlan): string {
  const { massG, centreRadiusMm, centreDeg, leanTorqueNmm, counterweight } = balanceOf(disc);
  const weighs = `It weighs ${showNumber(massG, 1)} g.`;
  if (centreDeg === null) return `${weighs} Its weight acts on its axis.`;
  const acts = `Its weight acts ${showNumber(centreRadiusMm, 2)} mm from the axis, towards disc angle ${showDegrees(Number(centreDeg.toFixed(0)))}: where the shaft leans by one degree, that turns it with ${showNumber(leanTorqueNmm, 4)} N mm.`;
  if (!counterweight) return `${weighs} ${acts} That is too little to be felt.`;
  const { massG: weight, radiusMm, angleDeg } = counterweight;
  return `${weighs} ${acts} Glue ${showNumber(weight, 2)} g on the hub, ${showMm(Number(radiusMm.toFixed(1)))} from the axis at disc angle ${showDegrees(Number(angleDeg.toFixed(0)))}, so that it stays where it is put.`;
}

/**
 * A page that tells how this very disc is read, for whoever finds the instrument later.
 *
 * @param name - Of the instrument.
 * @param head - Its planned head.
 * @returns A whole HTML page that needs nothing beside it.
 */
export function howItWorks(name: string, head: HeadPlan): string {
  const { code, spec, tracks } = head.disc;
  const step = 360 / code.positions;
  const body = joined([
    element('h1', {}, `How the disc of ${name} works`),
    paragraph(
      `A turn is cut into ${code.positions} positions of ${showDegrees(step)}. ${code.channels.length} sensors look at ${tracks.length} ${tracks.length === 1 ? 'track' : 'tracks'}; what they see together is a word, and every position has ${code.absolute ? 'a word of its own' : 'a word, though some share one'}.`,
    ),
    figure(
      discPicture(head),
      'The disc from its patterned face, the index mark up; rings show where each channel looks.',
    ),
    section('What a sensor sees', paragraph(lightText(head))),
    section(
      'From word to direction',
      figure(wordMap(code, spec.windowLevel), 'The same disc unrolled, clockwise from the index mark.'),
      element(
        'div',
        { class: 'scroll' },
        table(['position', 'word, channel 0 first', 'middle of its step'], wordRows(head)),
      ),
      paragraph(
        `The controller looks the word up in a table and reports the middle of its step, so it is off by at most ${showDegrees(step / 2)} where everything is made as drawn.`,
      ),
      paragraph(changesText(head)),
    ),
    section('Its weight', paragraph(balanceText(head))),
  ]);
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      { html: '<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">' },
      element('title', {}, `How the disc of ${name} works`),
      { html: `<style>${sheetStyle}</style>` },
    ),
    element('body', {}, element('main', {}, body)),
  );
  return `<!doctype html>\n${page.html}\n`;
}
