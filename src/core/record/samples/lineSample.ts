import type { Line } from '../line.ts';
import type { Placed } from '../time/arrivalClock.ts';
import type { ReadContext } from './readContext.ts';
import { sampleFlags, type Sample } from './sample.ts';

/** Gusts are counted over this time (WMO-No. 8). [s] */
const GUST_S = 3;

/** Wind speed of a pulse rate; standing cups show no wind, whatever the fitted line says. [m/s] */
export function windOf(perS: number, cups: ReadContext['rule']['cups']): number | null {
  if (!cups) return null;
  return perS === 0 ? 0 : cups.startSpeedMPerS + cups.runPerPulseM * perS;
}

/**
 * The sample of a line whose time is known.
 *
 * @param line - As it was read.
 * @param context - Its source and how that is read.
 * @param told - Its number in the source [-], its time [ms UTC], the mean wind since the line before [m/s] and the
 *   counts to be kept [counts]; `null` where that is not known.
 */
export function lineSample(
  line: Line,
  { head, rule }: Pick<ReadContext, 'head' | 'rule'>,
  told: Pick<Sample, 'speedMPerS' | 'counts'> & { readonly number: number; readonly placed: Placed },
): Sample {
  const gustPulses = line.cups?.gustPulses ?? null;
  return {
    station: head.station,
    atMs: told.placed.atMs,
    withinMs: told.placed.withinMs,
    headingDeg: line.headingDeg,
    halfWidthDeg: line.halfWidthDeg,
    meanHeadingDeg: line.average?.headingDeg ?? null,
    agreement: line.average?.agreement ?? null,
    speedMPerS: told.speedMPerS,
    gustMPerS: gustPulses === null ? null : windOf(gustPulses / GUST_S, rule.cups),
    flags: line.flags.reduce((sum, flag) => sum | sampleFlags[flag], 0),
    word: line.word,
    counts: told.counts,
    pulses: line.cups?.pulses ?? null,
    edges: line.cups?.edges ?? null,
    stream: head.stream,
    line: told.number,
  };
}
