import { balanceOf, type DiscPlan } from '../../disc/index.ts';
import { element, joined, table, type Markup } from '../../report/index.ts';
import { radToDeg, showDegrees, showMm, showNumber } from '../../units/index.ts';
import { discFacts, signalFacts, type Fact } from '../sheet/facts.ts';
import type { Explained } from './explained.ts';

/** How it weighs on its shaft. */
function balanceText(disc: DiscPlan): string {
  const { massG, centreRadiusMm, centreDeg, leanTorqueNmm, counterweight } = balanceOf(disc);
  const weighs = `It weighs ${showNumber(massG, 1)} g.`;
  if (centreDeg === null) return `${weighs} Its weight acts on its axis.`;
  const acts = `Its weight acts ${showNumber(centreRadiusMm, 2)} mm from the axis, towards disc angle ${showDegrees(Number(centreDeg.toFixed(0)))}: where the shaft leans by one degree, that turns it with ${showNumber(leanTorqueNmm, 4)} N mm.`;
  if (!counterweight) return `${weighs} ${acts} That is too little to be felt.`;
  const { massG: weight, radiusMm, angleDeg } = counterweight;
  return `${weighs} ${acts} Glue ${showNumber(weight, 2)} g on the hub, ${showMm(Number(radiusMm.toFixed(1)))} from the axis at disc angle ${showDegrees(Number(angleDeg.toFixed(0)))}, so that it stays where it is put.`;
}

/** A formula with its symbols, its value on this disc, and where it is from. */
interface Formula {
  readonly title: string;
  readonly formula: string;
  readonly here: string;
  readonly source: string;
}

const deg = (angle: number): string => showDegrees(Number(angle.toFixed(3)));

function stepFormulas({ head }: Explained): Formula[] {
  const { positions } = head.disc.code;
  const step = 360 / positions;
  return [
    {
      title: 'Step',
      formula: 'q = 360° / N',
      here: `N = ${positions}, q = ${deg(step)}`,
      source: 'definition',
    },
    {
      title: 'Error of the step alone',
      formula: 'at most q / 2; root mean square q / √12',
      here: `at most ${deg(step / 2)}; ${deg(step / Math.sqrt(12))}`,
      source: 'rectangular distribution: JCGM 100:2008, 4.3.7',
    },
    {
      title: 'Gray’s code',
      formula: 'g(k) = k XOR ⌊k/2⌋',
      here: 'g(k) and g(k+1) differ in one digit',
      source: 'F. Gray, Pulse code communication, US patent 2,632,058 (1953)',
    },
  ];
}

function placeFormulas({ head, instrument }: Explained): Formula[] {
  const { process } = head.disc.spec;
  const radii = head.channels.map(({ radiusMm }) => radiusMm);
  const [inner, outer] = [Math.min(...radii), Math.max(...radii)];
  const off = process.boreSdMm;
  const shift = (sizeMm: number, radiusMm: number): string =>
    deg(radToDeg(Math.asin(Math.min(1, sizeMm / radiusMm))));
  const isUp = instrument.head.patternedFace === 'up';
  return [
    ...(head.disc.strip
      ? []
      : [
          {
            title: 'Bore off the middle of the pattern by e, at radius r',
            formula: 'error = arcsin((e / r) · sin(φ − θ)), once a turn',
            here: `e = ${showMm(off)} (scatter of this process): at most ${shift(off, inner)} at r = ${showMm(Number(inner.toFixed(2)))}`,
            source: 'sine rule',
          },
        ]),
    {
      title: 'Edge off its place by d, at radius r',
      formula: 'shift = d / r',
      here: `d = ${showMm(process.edgeSdMm)} (scatter of this process): ${shift(process.edgeSdMm, inner)} at the innermost channel, ${shift(process.edgeSdMm, outer)} at the outermost`,
      source: 'length of an arc',
    },
    {
      title: 'Heading from disc angle a',
      formula: isUp ? 'heading = north offset − a' : 'heading = north offset + a',
      here: `north offset ${deg(instrument.site.northOffsetDeg)}; patterned face ${isUp ? 'up' : 'down'}`,
      source: 'the head stands still and the disc turns',
    },
  ];
}

function speedFormula({ head }: Explained): Formula {
  const { lagMs, loopMs, limitDegPerS } = head.speed;
  return {
    title: 'Fastest turn with every position read',
    formula: 'ω = (narrowest step − what its edges take of it) / (lag + read loop)',
    here: `lag ${showNumber(lagMs, 1)} ms, loop ${showNumber(loopMs, 1)} ms: ${showNumber(limitDegPerS, 0)}°/s`,
    source: 'a position must stay in view for one lag and one read',
  };
}

function formulaMarkup({ title, formula, here, source }: Formula): Markup {
  return joined([
    element('dt', {}, title),
    element(
      'dd',
      {},
      element('span', { class: 'formula' }, formula),
      element('span', {}, here),
      element('small', {}, `Source: ${source}.`),
    ),
  ]);
}

const scrolled = (name: string, content: Markup): Markup =>
  element('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': name }, content);

/** Told for an engineer: figures of this disc, formulas and their sources. */
export function engineerTelling(explained: Explained): Markup {
  const { head } = explained;
  const facts: readonly Fact[] = head.marks ? discFacts(head) : [...discFacts(head), ...signalFacts(head)];
  const formulas = [...stepFormulas(explained), ...placeFormulas(explained), speedFormula(explained)];
  return joined([
    element(
      'p',
      {},
      'Tracks and channels are the whole model: a channel at head angle c reads the level of its track at disc angle a + c, and the levels of all channels, channel 0 first, are the word. The table of words is worked out from them, never the other way round.',
    ),
    element('dl', { class: 'formulas' }, ...formulas.map(formulaMarkup)),
    element('h3', {}, 'Figures of this disc'),
    scrolled('Figures of this disc', table(['what', 'how much'], facts)),
    element('h3', {}, 'Its weight'),
    element('p', {}, balanceText(head.disc)),
  ]);
}
