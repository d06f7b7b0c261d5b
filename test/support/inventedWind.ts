import { seededRandom, wrapDegrees, type Random } from '../../src/core/units/index.ts';

/** True wind of one moment. [deg], [m/s] */
export interface TrueWind {
  atMs: number;
  /** Where it comes from just then, turbulence included. [deg] */
  headingDeg: number;
  /** Mean since the moment before. [m/s] */
  speedMPerS: number;
}

/** What wanders and comes back: a value of mean 0 and spread 1 that forgets with `memoryMs`. */
function wanderer(random: Random, memoryMs: number, stepMs: number): () => number {
  const keep = Math.exp(-stepMs / memoryMs);
  const fresh = Math.sqrt(1 - keep ** 2);
  let value = random.normal();
  return () => (value = keep * value + fresh * random.normal());
}

const HOUR_MS = 3_600_000;
const YEAR_MS = 365.25 * 24 * HOUR_MS;

/**
 * Invented wind of a boathouse jetty: Weibull speeds (k 1.6) whose weather lasts a day or two and whose afternoons are
 * windier, directions that wander about 230° with the weather and a little with the season, and more turbulence by day
 * and in light wind than in a stable night. No such jetty was measured.
 *
 * One object is given again and again.
 */
export function* inventedWind(choice: {
  readonly seed: number;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly stepMs: number;
}): Generator<TrueWind> {
  const { fromMs, untilMs, stepMs } = choice;
  const random = seededRandom(choice.seed);
  const slow = (hours: number): (() => number) => wanderer(random, hours * HOUR_MS, stepMs);
  const [weather, spell, front, shift] = [slow(30), slow(2), slow(40), slow(4)];
  const [gust, swing] = [wanderer(random, 40_000, stepMs), wanderer(random, 60_000, stepMs)];
  const wind: TrueWind = { atMs: fromMs, headingDeg: 0, speedMPerS: 0 };
  for (let atMs = fromMs + stepMs; atMs <= untilMs; atMs += stepMs) {
    const day = Math.cos((2 * Math.PI * (atMs - 14 * HOUR_MS)) / (24 * HOUR_MS));
    const season = Math.cos((2 * Math.PI * atMs) / YEAR_MS);
    // Share below of a normal value, by the logistic curve that lies within 0.01 of it.
    const below = 1 / (1 + Math.exp(-1.702 * (0.9 * weather() + 0.436 * spell())));
    const mean = 4.8 * (1 + 0.2 * day) * (1 + 0.12 * season) * (-Math.log(1 - below)) ** (1 / 1.6);
    const calmNight = day < 0 && mean < 3 ? 0.5 : 1;
    const spreadDeg = Math.min(45, 7 + 20 / (mean + 0.3)) * calmNight;
    wind.atMs = atMs;
    wind.speedMPerS = Math.max(0, mean * (1 + 0.15 * gust()));
    wind.headingDeg = wrapDegrees(
      230 + 12 * season + 15 * day + 55 * front() + 20 * shift() + spreadDeg * swing(),
    );
    yield wind;
  }
}
