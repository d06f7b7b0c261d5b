import { describe, expect, it } from 'vitest';
import { nodeInstrumentFiles } from '../../src/adapters/nodeFiles/index.ts';
import { readDesign } from '../../src/app/design.ts';
import { markShares, seenMarks, type HeadPlan } from '../../src/core/head/index.ts';
import type { Instrument } from '../../src/core/instrument/index.ts';
import { programFor, wiringPlan } from '../../src/core/program/index.ts';
import { exactTurn } from '../../src/core/proof/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import { lineOf } from '../support/avrVane.ts';
import { denseCounts, faultless } from '../support/denseTurn.ts';

/** Time that each example is turned for; together well over ten seconds. [ms] */
const TURN_MS = 3600;

/** Every example, with lines often enough that the whole turn is looked at. */
async function exampleOf(name: string): Promise<{ instrument: Instrument; head: HeadPlan }> {
  const { instrument, head } = await readDesign(nodeInstrumentFiles, `examples/${name}/instrument.yaml`);
  return {
    instrument: { ...instrument, controller: { ...instrument.controller, lineIntervalMs: 40 } },
    head,
  };
}

/**
 * A wind that comes and goes: swings of two lengths on a drift, never faster than the shaft may turn.
 *
 * @returns Heading at a time. [deg]
 */
function scriptedWind(from: number, turnRate: number): (ms: number) => number {
  // Slopes of the three parts add up to at most 0.95 of the turn rate.
  const swing = (share: number, periodMs: number, ms: number): number =>
    (share * turnRate * periodMs * Math.sin((2 * Math.PI * ms) / periodMs)) / (2 * Math.PI * 1000);
  return (ms) => from + (0.35 * turnRate * ms) / 1000 + swing(0.4, 2100, ms) + swing(0.2, 370, ms);
}

/** What daylight alone gives every channel of the colours. [counts] */
const DAYLIGHT_COUNTS = 120;

/** Counts of a channel that looks at coloured marks while some of its lights are on. [counts] */
function colourCounts(
  head: HeadPlan,
  channel: number,
  discAngle: number,
  isLit: (role: string) => boolean,
): number {
  const { marks, disc, spec, channels } = head;
  if (marks?.kind !== 'colours') throw new Error('The head does not look at colours.');
  const { track, angleDeg } = channels[channel]!;
  const shares = markShares(seenMarks(disc, track, spec.aperture), discAngle + angleDeg);
  return ['red', 'green', 'blue'].reduce((sum, role, colour) => {
    if (!isLit(role)) return sum;
    return sum + shares.reduce((own, share, level) => own + share * marks.marksRgbCounts[level]![colour]!, 0);
  }, DAYLIGHT_COUNTS);
}

/** The chip under a vane whose light an independent model works out at the moment of each conversion. */
async function turnedVane(
  { instrument, head }: { instrument: Instrument; head: HeadPlan },
  wind: (ms: number) => number,
) {
  const chip = new AvrChip((await buildAvr(programFor(instrument, head).source)).hex);
  const plan = wiringPlan(instrument, head);
  const counts = head.marks?.kind === 'colours' ? null : denseCounts(head, faultless(head), 60); // no grid needed
  const pinOf = (role: string): string => plan.busPins.find((bus) => bus.role === role)!.pin;
  // The mark under the head goes back as the vane turns clockwise, when the patterned face looks up.
  const sense = instrument.head.patternedFace === 'up' ? -1 : 1;
  const volts = (channel: number): number => {
    const angle = sense * (wind(chip.nowUs / 1000) - instrument.site.northOffsetDeg);
    const now = counts
      ? counts[channel]!.at(angle)
      : colourCounts(head, channel, angle, (role) => chip.isHigh(pinOf(role)));
    return (Math.min(1023, Math.max(0, now)) / 1024) * 5;
  };
  const select = plan.busPins.filter(({ role }) => role.startsWith('select')).map(({ pin }) => pin);
  const channelOf = (input: number): number => {
    if (plan.input === 'direct') return plan.channelPins.indexOf(`A${input}`);
    const chosen = select.reduce((sum, pin, line) => sum + (chip.isHigh(pin) ? 1 << line : 0), 0);
    return plan.channelPins.indexOf(`Y${chosen}`);
  };
  chip.beforeConversion = (input) => {
    const channel = channelOf(input);
    if (channel >= 0) chip.setVolts(input, volts(channel));
  };
  return chip;
}

const apart = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

describe('a scripted wind', () => {
  it.each(['jetty', 'dome', 'sluice', 'tricolour'])(
    'comes back from the emulated chip of the %s within the error that the proof states',
    async (name) => {
      const example = await exampleOf(name);
      const { turnRateDegPerS } = example.instrument.need;
      const wind = scriptedWind(11, turnRateDegPerS);
      const chip = await turnedVane(example, wind);
      chip.runMs(TURN_MS);
      const lines = chip.lines.slice(0, -1).map(lineOf);
      expect(lines.length).toBeGreaterThan(TURN_MS / 40 - 5);
      // The static error of the drawn design, and how far the vane goes in one read and one written line.
      const band =
        exactTurn(example.head).errors.maxDeg! + (turnRateDegPerS * example.head.speed.loopMs) / 1000;
      for (const line of lines) {
        expect(line.headingDeg, JSON.stringify(line)).not.toBeNull();
        expect(apart(line.headingDeg!, wind(line.sinceStartMs))).toBeLessThanOrEqual(band + 0.01);
        expect(line.flags.filter((flag) => flag !== 'allDark' && flag !== 'allLight')).toEqual([]);
      }
      const seen = new Set(lines.map(({ word }) => word));
      expect(seen.size).toBeGreaterThan(1); // the vane did turn
    },
  );
});
