import { faultSetting, findFaults, type FaultSample, type Finding } from '../../src/core/faults/index.ts';
import type { Damage } from './damage.ts';
import { exampleInstrument, plannedHead } from './plannedHead.ts';
import { vaneYear } from './vaneYear.ts';

export const DAY_MS = 86_400_000;
/** Beginning of a day of the invented year. [ms UTC] */
export const day = (text: string): number => Date.parse(`2026-${text}T00:00:00Z`);

const example = exampleInstrument('jetty');
/** The jetty with a place of its own, so that the sun is known. */
export const jetty = { ...example, site: { ...example.site, latitudeDeg: 54, longitudeDeg: 10 } };
export const jettyHead = plannedHead(jetty);

/** What is found in part of an invented year of the jetty's vane with damage. */
export function foundIn(
  seed: number,
  from: string,
  days: number,
  damages: readonly Damage[],
  stepMs = 60_000,
): readonly Finding[] {
  const fromMs = day(from);
  const untilMs = fromMs + days * DAY_MS;
  function* samples(): Generator<FaultSample> {
    const year = { instrument: jetty, head: jettyHead, seed, fromMs, untilMs, stepMs, damages };
    for (const { sample } of vaneYear(year)) yield sample;
  }
  return findFaults(samples(), faultSetting(jetty, jettyHead));
}
