import { headingOfPosition, type Instrument } from '../../core/instrument/index.ts';
import { windShares } from '../../core/weigh/index.ts';
import { turnBetween, wrapDegrees, type Random } from '../../core/units/index.ts';

/** One moment of an invented log; a speed only where there are cups. */
interface Moment {
  readonly headingDeg: number;
  readonly speedMPerS?: number;
}

/** A log begins here and has a line each so often. */
export interface LogSpan {
  readonly startMs: number;
  readonly stepMinutes: number;
  readonly lines: number;
}

/** The heading that the disc shows: the middle of the nearest position. */
function shownDeg(instrument: Instrument, headingDeg: number): number {
  const { positions } = instrument.need;
  let best = headingOfPosition(instrument, 0);
  for (let k = 1; k < positions; k++) {
    const centre = headingOfPosition(instrument, k);
    if (Math.abs(turnBetween(centre, headingDeg)) < Math.abs(turnBetween(best, headingDeg))) best = centre;
  }
  return best;
}

/** Lines of `time,heading_deg` and, with cups, the speed. */
export function logCsv(instrument: Instrument, span: LogSpan, moment: (line: number) => Moment): string {
  const rows = Array.from({ length: span.lines }, (_, i) => {
    const { headingDeg, speedMPerS } = moment(i);
    const at = new Date(span.startMs + i * span.stepMinutes * 60_000).toISOString().replace('.000', '');
    const shown = Number(shownDeg(instrument, headingDeg).toFixed(2));
    return [at, shown, ...(speedMPerS === undefined ? [] : [speedMPerS.toFixed(1)])].join(',');
  });
  const headings = ['time', 'heading_deg', ...(instrument.cups ? ['speed_ms'] : [])];
  return `${headings.join(',')}\n${rows.join('\n')}\n`;
}

/** An invented wind over the water: weather that changes, a breeze by day, gusts; as `site.wind` describes it. */
export function windMoments({ site }: Instrument, span: LogSpan, random: Random): (line: number) => Moment {
  const { wind } = site;
  const shares = windShares(wind.sectorShares);
  const hours = span.stepMinutes / 60;
  let weather = shares.draw(random);
  let strength = 4;
  return (line) => {
    if (random.uniform() < hours / wind.weatherHours) {
      weather = shares.draw(random);
      strength = 2 + 5 * random.uniform();
    }
    weather = wrapDegrees(weather + wind.hourChangeDeg * Math.sqrt(hours) * random.normal());
    const hourOfDay = ((line * hours) % 24) - 14;
    const breeze = 0.8 + 0.3 * Math.cos((2 * Math.PI * hourOfDay) / 24);
    const speedMPerS = Math.max(0, strength * breeze * (1 + 0.25 * random.normal()));
    return { headingDeg: weather + wind.swingDeg * random.normal(), speedMPerS };
  };
}

/** Parked in the south by day; in a clear night it follows a star by 15 degrees an hour. */
export function domeMoments(span: LogSpan, random: Random): (line: number) => Moment {
  const PARKED_DEG = 180;
  let bearing = PARKED_DEG;
  return (line) => {
    const hourOfDay = ((line * span.stepMinutes) / 60) % 24;
    const isNight = hourOfDay >= 21 || hourOfDay < 3;
    if (!isNight) bearing = PARKED_DEG;
    else if (bearing === PARKED_DEG || random.uniform() < 0.02) bearing = 90 + 200 * random.uniform();
    else bearing += (15 * span.stepMinutes) / 60;
    return { headingDeg: wrapDegrees(bearing) };
  };
}

/** A shaft that hands turn a few times a day, within a range, and else leave alone. [deg] */
export function handMoments(rangeDeg: number, span: LogSpan, random: Random): (line: number) => Moment {
  const perDay = 6;
  let angle = 0.1 * rangeDeg;
  return () => {
    if (random.uniform() < (perDay * span.stepMinutes) / 1440) angle = rangeDeg * random.uniform();
    return { headingDeg: angle };
  };
}
