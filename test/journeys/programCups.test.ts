import { beforeAll, describe, expect, it } from 'vitest';
import { programFor } from '../../src/core/program/index.ts';
import { seededRandom, type Random } from '../../src/core/units/index.ts';
import { buildAvr } from '../support/avrBuild.ts';
import { AvrChip } from '../support/avrChip.ts';
import { cupsOn, DARK_COUNTS, freshLine, jettyHead, jettyInstrument, setCounts } from '../support/avrVane.ts';

/** Longest bounce of the contact, when it closes and when it opens. [us] */
const BOUNCE_US = 1000;
/** Shortest time between two edges of a bounce; the chip needs about 15 us to see one. [us] */
const GAP_US = 40;
const CUP_PIN = 2;

let hex: string;

/** Times of the edges of one bouncing change, an odd number of them so that the level does change. [us] */
function bounce(random: Random): number[] {
  const edges = [0];
  for (;;) {
    const next = edges.at(-1)! + GAP_US + random.uniform() * 150;
    if (next > BOUNCE_US) break;
    edges.push(next);
  }
  if (edges.length % 2 === 0) edges.pop();
  return edges;
}

/** Lets the cups close a number of times at a rate; returns what was done and what the chip says of it. */
function turnCups(hertz: number, pulses: number) {
  const random = seededRandom(Math.round(hertz * 1000));
  const chip = new AvrChip(hex);
  for (let input = 0; input < 5; input++) setCounts(chip, input, DARK_COUNTS);
  chip.runMs(4);
  const halfUs = 1e6 / hertz / 2;
  let edges = 0;
  for (let change = 0; change < 2 * pulses; change++) {
    for (const [i, us] of bounce(random).entries()) {
      const high = (change % 2 === 1) !== (i % 2 === 1);
      chip.after(1000 + change * halfUs + us, () => chip.setDigital(CUP_PIN, high));
      edges++;
    }
  }
  chip.runMs((2 * pulses * halfUs) / 1000 + 6);
  return { edges, cups: freshLine(chip).cups! };
}

describe('cup pulses of a contact that bounces when it closes and when it opens', () => {
  beforeAll(async () => {
    const instrument = jettyInstrument({ cups: cupsOn('D2') });
    hex = (await buildAvr(programFor(instrument, jettyHead(instrument)).source)).hex;
  });

  // 1 / (2 * (1 ms of bounce + 1.5 ms of quiet)) = 200 Hz is the limit at equal open and closed times.
  it.each([
    [0.2, 1],
    [1, 2],
    [10, 2],
    [50, 8],
    [100, 16],
    [190, 30],
  ])('are counted exactly at %i Hz', (hertz, pulses) => {
    const { edges, cups } = turnCups(hertz, pulses);
    expect(cups.pulses).toBe(pulses);
    expect(edges).toBeGreaterThan(4 * pulses); // it did bounce
    expect(cups.edges).toBe(edges);
  });

  it('are lost above the limit, and the count of edges shows that the cups still turn', () => {
    const { edges, cups } = turnCups(240, 30);
    expect(cups.pulses).toBeLessThan(30);
    expect(cups.edges).toBe(edges);
  });

  it('are not counted at the start when the contact already rests closed', () => {
    const chip = new AvrChip(hex);
    for (let input = 0; input < 5; input++) setCounts(chip, input, DARK_COUNTS);
    chip.setDigital(CUP_PIN, false);
    chip.runMs(8);
    expect(freshLine(chip).cups).toMatchObject({ pulses: 0, edges: 0 });
    chip.setDigital(CUP_PIN, true);
    chip.runMs(4);
    chip.setDigital(CUP_PIN, false);
    chip.runMs(4);
    expect(freshLine(chip).cups).toMatchObject({ pulses: 1, edges: 2 });
  });

  it('ignores a spike, but shows its edges', () => {
    const chip = new AvrChip(hex);
    for (let input = 0; input < 5; input++) setCounts(chip, input, DARK_COUNTS);
    chip.runMs(4);
    chip.after(100, () => chip.setDigital(CUP_PIN, false));
    chip.after(1300, () => chip.setDigital(CUP_PIN, true));
    chip.runMs(6);
    expect(freshLine(chip).cups).toMatchObject({ pulses: 0, edges: 2 });
  });
});
