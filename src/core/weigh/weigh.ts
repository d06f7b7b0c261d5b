import type { Instrument } from '../instrument/index.ts';
import { byService, judged, needText, type WeighedPrinciple } from './judging/judge.ts';
import { verdictOn, type WeighVerdict } from './judging/verdict.ts';
import { principles } from './principles/principles.ts';
import { situationOf } from './situation.ts';
import type { WindView } from './wait/windView.ts';

/** Ten ways of sensing held against one need. */
export interface Weighing {
  readonly need: string;
  readonly verdict: WeighVerdict;
  /** Best first. */
  readonly principles: readonly WeighedPrinciple[];
  /** To and fro in a year. [turns] */
  readonly turnsPerYear: number;
  /** Where waits and gaps come from. */
  readonly windBasis: WindView['basis'];
}

/**
 * Compares ten ways of sensing for a need: what each comes to in figures, whether it serves, and what to do.
 *
 * @param instrument - Need, sensing, site, process and sensors are used; a disc is not planned. [deg], [h]
 * @param wind - Of the site, modelled or recorded. [deg], [h]
 * @check src/core/weigh/weigh.test.ts
 */
export function weighPrinciples(instrument: Instrument, wind: WindView): Weighing {
  const situation = situationOf(instrument, wind);
  const ranked = principles.map((principle) => judged(principle, situation)).sort(byService);
  return {
    need: needText(instrument),
    verdict: verdictOn(ranked),
    principles: ranked,
    turnsPerYear: situation.turnsPerYear,
    windBasis: wind.basis,
  };
}
