// How often the detectors blame a sound vane, and how long each fault takes to be noticed, over many invented years.
import type { Damage } from '../test/support/damage.ts';
import { DAY_MS, day, foundIn } from '../test/support/faultRuns.ts';

type Report = (row: { name: string; value: number; unit: string }) => void;

/** Whole years without damage, and draws of each fault. [-] */
const YEARS = 12;
const DRAWS = 8;

type Bare = Damage extends infer D ? (D extends unknown ? Omit<D, 'fromMs' | 'untilMs'> : never) : never;

/** What is broken for how many days, after how many sound ones, seen how often; a sample a minute where nothing is said. */
interface Broken {
  readonly name: string;
  readonly damage: Bare;
  readonly days: number;
  readonly soundDays?: number;
  readonly stepMs?: number;
}

const faults: readonly Broken[] = [
  { name: 'stuck channel, finest', damage: { kind: 'stuck-channel', channel: 4, level: '1' }, days: 10 },
  { name: 'stuck channel, coarsest', damage: { kind: 'stuck-channel', channel: 0, level: '0' }, days: 40 },
  { name: 'frozen vane', damage: { kind: 'frozen-vane' }, days: 10 },
  { name: 'seized cups', damage: { kind: 'seized-cups' }, days: 10 },
  { name: 'bearing wear to 1.5 m/s in 3 weeks', damage: { kind: 'bearing-wear', startMPerS: 1.5 }, days: 90 },
  { name: 'contact bounce', damage: { kind: 'contact-bounce' }, days: 10 },
  { name: 'dim light, 2 % a day', damage: { kind: 'dim-light', channel: 2, perDay: 0.02 }, days: 30 },
  { name: 'ambient leak', damage: { kind: 'ambient-leak', share: 0.02 }, days: 10 },
  { name: 'condensation', damage: { kind: 'condensation' }, days: 10 },
  { name: 'dirty sector', damage: { kind: 'dirty-sector', channel: 3, position: 12, left: 0.5 }, days: 40 },
  {
    name: 'blocked window',
    damage: { kind: 'dirty-sector', channel: 1, position: 12, left: 0 },
    days: 40,
  },
  ...[
    { channel: 4, chance: 0.5 },
    { channel: 2, chance: 0.3 },
  ].map(({ channel, chance }) => ({
    name: `chatter of channel ${channel}, four samples a second`,
    damage: { kind: 'chatter', channel, chance } as const,
    days: 1.5,
    soundDays: 2,
    stepMs: 250,
  })),
  { name: 'slipped clamp by 120°', damage: { kind: 'slipped-clamp', byDeg: 120 }, days: 100, soundDays: 110 },
  { name: 'skipped steps', damage: { kind: 'skipped-steps', chance: 0.05 }, days: 10 },
  { name: 'lost power', damage: { kind: 'lost-power' }, days: 10 },
  { name: 'clock jump', damage: { kind: 'clock-jump' }, days: 5 },
];

/** Rows: false alarms a year, and for each fault how often and how late it is found. */
export function run(report: Report): void {
  let blamed = 0;
  for (let seed = 100; seed < 100 + YEARS; seed++) {
    const findings = foundIn(seed, '01-01', 365, []);
    blamed += findings.length;
    for (const { kind } of findings)
      report({ name: `false alarm, draw ${seed}: ${kind}`, value: 1, unit: '-' });
  }
  report({ name: 'false alarms a year', value: blamed / YEARS, unit: '1/a' });
  for (const { name, damage, days, soundDays = 45, stepMs } of faults) {
    const fromMs = day('01-01') + soundDays * DAY_MS;
    const delays: number[] = [];
    let others = 0;
    for (let seed = 200; seed < 200 + DRAWS; seed++) {
      const whole = { ...damage, fromMs, untilMs: fromMs + days * DAY_MS } as Damage;
      const findings = foundIn(seed, '01-01', soundDays + days, [whole], stepMs);
      const own = findings.find(({ kind }) => kind === damage.kind);
      if (own) delays.push((own.noticedMs - fromMs) / DAY_MS);
      others += findings.filter(({ kind }) => kind !== damage.kind).length;
    }
    delays.sort((a, b) => a - b);
    report({ name: `${name}: found of ${DRAWS}`, value: delays.length, unit: '-' });
    if (delays.length > 0) report({ name: `${name}: longest delay`, value: delays.at(-1)!, unit: 'd' });
    if (others > 0) report({ name: `${name}: others blamed`, value: others, unit: '-' });
  }
}
