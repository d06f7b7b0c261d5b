import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COUNTER_SPAN, CounterUnwrap, type CounterReading, type CounterRule } from './counterUnwrap.ts';

const ms: CounterRule = { msPerCount: 1, span: COUNTER_SPAN };
const us: CounterRule = { msPerCount: 0.001, span: COUNTER_SPAN };

const reading = (count: number, more: Partial<CounterReading> = {}): CounterReading => ({
  count,
  lineNumber: null,
  arrivedMs: null,
  saidStart: false,
  ...more,
});

const steps = (rule: CounterRule, readings: readonly CounterReading[]) => {
  const unwrap = new CounterUnwrap(rule);
  return readings.map((r) => {
    const { step, sinceStartMs } = unwrap.take(r);
    return [step, sinceStartMs];
  });
};

describe('a counter that starts again at 0', () => {
  it('goes on after 49.7 days, when it comes from near its end', () => {
    const end = COUNTER_SPAN;
    expect(steps(ms, [reading(end - 1500), reading(end - 500), reading(500)])).toEqual([
      ['first', end - 1500],
      ['next', end - 500],
      ['wrapped', end + 500],
    ]);
  });

  it('has been restarted when it comes from the middle', () => {
    expect(steps(ms, [reading(90_000), reading(91_000), reading(200)]).at(-1)).toEqual(['went-back', 200]);
  });

  it('has been restarted when the controller says so, even near the end', () => {
    const last = steps(ms, [reading(COUNTER_SPAN - 500), reading(500, { saidStart: true })]).at(-1);
    expect(last).toEqual(['restarted', 500]);
  });

  it('is told by the line number, which a wrap leaves alone and a restart sets to 0', () => {
    const at = COUNTER_SPAN - 1000;
    expect(steps(ms, [reading(at, { lineNumber: 700 }), reading(10, { lineNumber: 701 })]).at(-1)).toEqual([
      'wrapped',
      COUNTER_SPAN + 10,
    ]);
    expect(steps(ms, [reading(at, { lineNumber: 700 }), reading(10, { lineNumber: 0 })]).at(-1)).toEqual([
      'restarted',
      10,
    ]);
  });

  it('in microseconds is followed through an outage of hours by the arrival times', () => {
    const roundMs = COUNTER_SPAN / 1000;
    const outageMs = 3 * roundMs + 12_345;
    const [, second] = steps(us, [
      reading(5_000_000, { arrivedMs: 1_700_000_000_000 }),
      reading(5_000_000 + 12_345_000, { arrivedMs: 1_700_000_000_000 + outageMs }),
    ]);
    expect(second![0]).toBe('wrapped');
    expect(second![1]).toBeCloseTo(5000 + outageMs, 6);
  });

  it('that shows more than before has yet been restarted when far less time is on it than has passed', () => {
    const day = 86_400_000;
    const readings = [
      reading(1000, { arrivedMs: 1_700_000_000_000 }),
      reading(3_600_000, { arrivedMs: 1_700_000_000_000 + 25 * day }),
    ];
    expect(steps(ms, readings).at(-1)).toEqual(['restarted', 3_600_000]);
  });

  it('goes on when it is the clock of this machine that was set', () => {
    const unwrap = new CounterUnwrap(ms);
    unwrap.take(reading(1000, { lineNumber: 4, arrivedMs: 5000 }));
    expect(unwrap.take(reading(1250, { lineNumber: 5, arrivedMs: 1_700_000_000_000 })).step).toBe('next');
  });

  it('gives back the true time over any number of rounds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 42 }),
        fc.array(fc.integer({ min: 1, max: 60_000 }), { minLength: 2, maxLength: 50 }),
        (start, gaps) => {
          const unwrap = new CounterUnwrap(ms);
          let trueMs = start;
          const first = unwrap.take(reading(trueMs % COUNTER_SPAN)).sinceStartMs;
          for (const gap of gaps) {
            trueMs += gap;
            const { sinceStartMs } = unwrap.take(reading(trueMs % COUNTER_SPAN));
            expect(sinceStartMs - first).toBe(trueMs - start);
          }
        },
      ),
      { seed: 3 },
    );
  });

  it('goes on from a stored state as if nothing had happened', () => {
    const whole = new CounterUnwrap(ms);
    const counts = [COUNTER_SPAN - 900, COUNTER_SPAN - 400, 100, 600];
    const expected = counts.map((count) => whole.take(reading(count)));
    let state = new CounterUnwrap(ms).state;
    const again = counts.map((count) => {
      const one = new CounterUnwrap(ms, JSON.parse(JSON.stringify(state)));
      const counted = one.take(reading(count));
      state = one.state;
      return counted;
    });
    expect(again).toEqual(expected);
  });
});
