import { element, joined, type Markup } from '../../report/index.ts';
import { comparedReadings, type PageData } from './script/reading.ts';
import { comparedText } from './script/pageScript.ts';

/** Positions shown to either side of the sensors. [-] */
const SHOWN = 4;
/** Height of a ring, drawn straight. [user units] */
const RING = 26;
/** How far aside the coarsest ring's sensor stands when the page opens. [%] */
const ASIDE_PERCENT = 30;

const words = {
  binary: (k: number): number => k,
  gray: (k: number): number => k ^ (k >> 1),
};

/** All rings of a code drawn straight, once round and a little more at both ends, as one outline. */
function ringsPath(
  wordOf: (k: number) => number,
  { comparedPositions: count, comparedCell: cell }: PageData,
): string {
  const bits = Math.log2(count);
  const isLit = (ring: number, at: number): boolean =>
    ((wordOf(((at % count) + count) % count) >> (bits - 1 - ring)) & 1) === 1;
  const pieces: string[] = [];
  for (let ring = 0; ring < bits; ring++) {
    for (let from = -SHOWN - 1; from <= count + SHOWN;) {
      let to = from + 1;
      while (to <= count + SHOWN && isLit(ring, to) === isLit(ring, from)) to++;
      if (isLit(ring, from))
        pieces.push(`M${from * cell} ${ring * RING + 2}h${(to - from) * cell}v${RING - 4}H${from * cell}z`);
      from = to;
    }
  }
  return pieces.join('');
}

function codePart(name: 'binary' | 'gray', title: string, data: PageData): Markup {
  const { comparedPositions: count, comparedCell: cell, startDeg } = data;
  const bits = Math.log2(count);
  const place = (startDeg * count) / 360;
  const aside = ASIDE_PERCENT / 100;
  const read = comparedReadings(count, place, aside);
  const eyes = Array.from({ length: bits }, (_, ring) =>
    element('circle', {
      class: ring === 0 ? 'eye aside' : 'eye',
      ...(ring === 0 ? { id: `${name}-aside`, transform: `translate(${aside * cell} 0)` } : {}),
      cx: 0,
      cy: (ring + 0.5) * RING,
      r: 6,
    }),
  );
  const says = element(
    'p',
    { class: 'says' },
    joined([`${title} `]),
    element('span', { id: `${name}-says` }, comparedText(count, read[name], read.right)),
  );
  return element(
    'div',
    { class: 'code' },
    element(
      'svg',
      { viewBox: `${-SHOWN * cell} -6 ${2 * SHOWN * cell} ${bits * RING + 12}`, 'aria-hidden': 'true' },
      element('rect', {
        class: 'rings-ground',
        x: -SHOWN * cell,
        y: 0,
        width: 2 * SHOWN * cell,
        height: bits * RING,
      }),
      element(
        'g',
        { id: `${name}-rings`, transform: `translate(${-place * cell} 0)` },
        element('path', { class: 'rings', d: ringsPath(words[name], data) }),
      ),
      element('path', { class: 'sensors', d: `M0 -6V${bits * RING + 6}` }),
      ...eyes,
    ),
    says,
  );
}

/** Natural binary and Gray at the same place, with one sensor that stands aside. */
export function twoCodes(data: PageData): Markup {
  const { comparedPositions: count, startDeg } = data;
  return joined([
    element('h2', {}, 'Why neighbours should differ in one sensor only'),
    element(
      'p',
      {},
      `Here are two codes of ${count} positions, rolled out. The upper one counts as computers do: natural binary. The lower one is the code of F. Gray, in which one sensor changes at a time. The same sensor, the top one, stands a little aside in both. Halfway round, natural binary changes all its sensors at once, and for a moment the top one is already there while the others are not.`,
    ),
    codePart('binary', 'Natural binary', data),
    codePart('gray', 'Gray', data),
    element(
      'div',
      { class: 'controls' },
      element('label', { for: 'compared-turn' }, 'Move both codes'),
      element('input', {
        type: 'range',
        id: 'compared-turn',
        min: '0',
        max: '360',
        step: 'any',
        value: startDeg,
      }),
      element('label', { for: 'aside' }, 'How far the top sensor stands aside, in hundredths of a step'),
      element('input', { type: 'range', id: 'aside', min: '0', max: '50', step: '5', value: ASIDE_PERCENT }),
    ),
    element(
      'p',
      {},
      'With the sensor back in line both are right. Gray is never off by more than the step beside it; natural binary is off by half a turn.',
    ),
  ]);
}
