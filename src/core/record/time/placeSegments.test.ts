import { describe, expect, it } from 'vitest';
import { placedInstant, placeSegments, type Moment, type SegmentSpan } from './placeSegments.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const start = Date.parse('2026-03-01T10:00:00Z');

const span = (segment: number, toMs: number, known: readonly Moment[] = []): SegmentSpan => ({
  stream: 1,
  segment,
  fromLine: 1,
  toLine: 2,
  fromMs: 0,
  toMs,
  known,
});

const placing = (spans: readonly SegmentSpan[], moments: Readonly<Record<number, readonly Moment[]>>) =>
  placeSegments(spans, ({ segment }) => moments[segment] ?? []);

describe('times from remembered moments', () => {
  it('take out the drift of a counter that two moments tell', () => {
    // 3 minutes a month slow: 180 s of 30 days.
    const month = 30 * DAY;
    const rate = (month - 180_000) / month;
    const [placement] = placing([span(0, month * rate)], {
      0: [
        { counterMs: 0, atMs: start, withinMs: 1000 },
        { counterMs: month * rate, atMs: start + month, withinMs: 1000 },
      ],
    });
    for (const day of [0, 7, 15, 30, 40]) {
      const { atMs, withinMs } = placedInstant(day * DAY * rate, placement!);
      expect(Math.abs(atMs - (start + day * DAY))).toBeLessThan(1);
      expect(withinMs).toBeGreaterThanOrEqual(day > 30 ? 1600 : 999);
    }
  });

  it('are the less sure the further a single moment is away', () => {
    const [placement] = placing([span(0, DAY)], {
      0: [{ counterMs: 0, atMs: start, withinMs: 10 * 60_000 }],
    });
    expect(placedInstant(0, placement!)).toEqual({ atMs: start, withinMs: 600_000 });
    // 0.5 % of a day is 7 min 12 s.
    expect(placedInstant(DAY, placement!)).toEqual({ atMs: start + DAY, withinMs: 600_000 + 432_000 });
  });

  it('put runs without any moment between their neighbours, as unsure as the time left over', () => {
    const spans = [span(0, 2 * HOUR), span(1, HOUR), span(2, HOUR), span(3, HOUR)];
    const placements = placing(spans, {
      0: [{ counterMs: 0, atMs: start, withinMs: 0 }],
      3: [{ counterMs: 0, atMs: start + 6 * HOUR, withinMs: 0 }],
    });
    // 2 h to 6 h holds two runs of 1 h and 2 h of nothing.
    expect(placements.map(({ by }) => by)).toEqual(['moments', 'neighbours', 'neighbours', 'moments']);
    const first = placedInstant(0, placements[1]!);
    const second = placedInstant(0, placements[2]!);
    expect(first.atMs).toBe(start + 3 * HOUR);
    expect(second.atMs).toBe(start + 4 * HOUR);
    expect(first.withinMs).toBeGreaterThanOrEqual(HOUR);
    expect(first.withinMs).toBeLessThan(1.02 * HOUR);
  });

  it('are not made up where nothing tells them', () => {
    expect(
      placing([span(0, HOUR), span(1, HOUR)], { 0: [{ counterMs: 0, atMs: start, withinMs: 0 }] }),
    ).toHaveLength(1);
    const tooLong = placing([span(0, HOUR), span(1, 9 * HOUR), span(2, HOUR)], {
      0: [{ counterMs: 0, atMs: start, withinMs: 0 }],
      2: [{ counterMs: 0, atMs: start + 2 * HOUR, withinMs: 0 }],
    });
    expect(tooLong.map(({ segment }) => segment)).toEqual([0, 2]);
  });
});
