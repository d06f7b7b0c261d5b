import { element, type Markup } from '../../report/index.ts';
import { wordMap } from '../pictures/wordMap.ts';
import { childTelling } from './child.ts';
import type { Explained } from './explained.ts';
import { stagePicture, type StageParts } from './stage.ts';

/** One sheet for the wall, seen only on paper: the disc as it stands, its words, and how it is told to a child. */
export function poster(explained: Explained, parts: StageParts): Markup {
  const { instrument, head } = explained;
  const { code, spec } = head.disc;
  return element(
    'section',
    { class: 'poster', 'aria-hidden': 'true' },
    element('h1', {}, `How the disc of ${instrument.name} works`),
    element('div', { class: 'disc' }, stagePicture(parts, null)),
    element('div', { class: 'strip' }, wordMap(code, spec.windowLevel)),
    element('div', { class: 'columns' }, childTelling(explained)),
  );
}
