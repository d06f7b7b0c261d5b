import { describe, expect, it } from 'vitest';
import {
  builtBy,
  designOf,
  recordedText,
  turnedBy,
  twinFile,
  type Design,
  type TwinFaults,
} from '../../../test/support/fitTwin.ts';
import {
  draws,
  handEdgeDeg,
  normal,
  type HandBuild,
  type HandMotion,
} from '../../../test/support/handTurn.ts';
import { fitRecording, readRecording, type Fit, type FitOptions, type ReadingHints } from './index.ts';

const jetty = designOf(twinFile());
const AT = '2024-05-17T10:30:00Z';

/** A hand that changes its speed by 30 % up and down in every turn. */
const smooth = (turns: number, random: () => number): Omit<HandMotion, 'startDeg'> => ({
  turns,
  degPerS: 20,
  change: 0.3,
  phase: 2 * Math.PI * random(),
  perTurn: 0.8 + 0.4 * random(),
});

interface Turned {
  readonly build: HandBuild;
  readonly fit: Fit;
  readonly startDeg: number;
}

function fitted(
  design: Design,
  faults: TwinFaults,
  turns: readonly number[],
  seed: number,
  options: Partial<FitOptions> & { index?: boolean; hints?: ReadingHints } = {},
): Turned {
  const random = draws(seed);
  const build = builtBy(design, { ...faults, random });
  const startDeg = 360 * random();
  const angles = turnedBy(
    build,
    turns.map((n) => smooth(n, random)),
    startDeg,
  );
  // The patterned face looks up: a vane turned clockwise brings smaller disc angles.
  const name = turns[0]! > 0 ? 'turn_ccw.csv' : 'turn_cw.csv';
  const text = recordedText(build, angles, random);
  const recording = readRecording([{ name, text }], {
    channels: design.code.channels.length,
    scaleCounts: 1024,
    ...options.hints,
  });
  const fit = fitRecording(design.instrument, design.disc, design.head, recording, {
    recordedAt: AT,
    startsAtDeg: options.index ? startDeg : null,
  });
  return { build, fit, startDeg };
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
const apart = (a: number, b: number): number => ((((a - b) % 360) + 540) % 360) - 180;

/** Error of the middles of all words against the independent build, a common offset taken out. [deg] */
function centreErrors(design: Design, { build, fit }: Turned): number[] {
  const step = 360 / design.code.positions;
  const edges = design.code.words.map((word, k) => {
    const before = design.code.words.at(k - 1)!;
    const channel = [...word].findIndex((digit, c) => digit !== before[c]);
    return handEdgeDeg(build, build.channels[channel]!, k * step);
  });
  const errors = fit.asBuilt!.positions.map(({ word, centreDeg }) => {
    const k = design.code.positionOf(word)!;
    const [from, to] = [edges[k]!, edges[k + 1] ?? edges[0]! + 360];
    return apart(centreDeg, (from + to) / 2);
  });
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  return errors.map((error) => error - mean);
}

describe('a build with swapped wires, an inverted channel, a dim lamp and a bore off centre', () => {
  const faults: TwinFaults = {
    columns: [0, 3, 2, 1, 4],
    inverted: [2],
    boreMm: [0.3 * Math.cos(1), 0.3 * Math.sin(1)],
    litCounts: { 4: 300 },
    edgeSdMm: 0.01,
  };
  const { fit } = fitted(jetty, faults, [-1.4, 1.2], 4);
  const cause = (kind: string) => fit.causes.find((one) => one.kind === kind);

  it('is explained completely, with one instruction for each fault', () => {
    expect(fit.causes.map(({ kind }) => kind).sort()).toEqual(['bore', 'inverted', 'swapped', 'weak']);
    expect(cause('swapped')!.channels).toEqual([1, 3]);
    expect(cause('inverted')!.channels).toEqual([2]);
    expect(cause('weak')!.channels).toEqual([4]);
    expect(cause('weak')!.instruction).toMatch(
      /^Channel 4's light is dim: replace it or use threshold (19\d|20\d)\.$/,
    );
    expect(cause('bore')!.instruction).toMatch(
      /^Bore is 0\.\d+ mm off towards position \d+: .*already corrected in the table\.$/,
    );
  });

  it('is measured: the bore within 10 % and 10 degrees, the wires on their pins', () => {
    const { offMm, patternTowardsDeg } = fit.disc!.bore;
    expect(Math.abs(offMm.value - 0.3)).toBeLessThan(0.03);
    expect(Math.abs(apart(patternTowardsDeg, 180 / Math.PI))).toBeLessThan(10);
    expect(fit.channels.map(({ pin }) => pin)).toEqual(['A0', 'A3', 'A2', 'A1', 'A4']);
    expect(fit.channels.map(({ litIsHigh }) => litIsHigh)).toEqual([true, true, false, true, true]);
  });

  it('reads right by its table, and not by the drawing', () => {
    expect(fit.verdict).toBe('yes');
    expect(fit.disc!.byTable.misreadShare + fit.disc!.byTable.illegalShare).toBeLessThan(0.002);
    expect(fit.disc!.byDrawing.misreadShare).toBeGreaterThan(0.5);
    expect(fit.asBuilt).toMatchObject({ recordedAt: AT, sense: 'same' });
    expect(fit.asBuilt!.positions).toHaveLength(32);
  });
});

describe('over many builds', () => {
  const seeds = Array.from({ length: 12 }, (_, i) => i + 1);

  it.each([
    ['reflected-gray', 32, 84],
    ['single-track-gray', 30, 84],
    ['balanced-gray', 32, 84],
    ['natural-binary', 32, 84],
  ] as const)('finds every wire of a disc of %s with %i positions', (code, positions, diameterMm) => {
    const design = designOf(twinFile({ code, positions, diameterMm }));
    const n = design.code.channels.length;
    for (const seed of seeds.slice(0, 6)) {
      const random = draws(1000 + seed);
      const columns = Array.from({ length: n }, (_, c) => ({ c, at: random() }))
        .sort((a, b) => a.at - b.at)
        .map(({ c }) => c);
      const inverted = columns.filter(() => random() < 0.3);
      const way = random() < 0.5 ? 1 : -1;
      const { fit } = fitted(
        design,
        { columns, inverted, edgeSdMm: 0.03, alongSdMm: 0.05 },
        [1.2 * way],
        seed,
        { index: true },
      );
      expect(
        fit.channels.map(({ column }) => column),
        `seed ${seed}`,
      ).toEqual(fit.channels.map((_, c) => columns.indexOf(c)));
      expect(
        fit.channels.filter((channel) => channel.inverted).map(({ channel }) => channel),
        `seed ${seed}`,
      ).toEqual([...inverted].sort((a, b) => a - b));
    }
  });

  it('puts the middle of every word within 0.15 step in one turn, 0.05 in five', () => {
    const step = 360 / 32;
    for (const [turns, allowed] of [
      [1.1, 0.15],
      [5.1, 0.05],
    ] as const) {
      const errors = seeds.flatMap((seed) => {
        const random = draws(50 + seed);
        const boreMm = [0.2 * normal(random), 0.2 * normal(random)] as const;
        const turned = fitted(jetty, { edgeSdMm: 0.1, alongSdMm: 0.1, boreMm }, [turns], seed);
        return centreErrors(jetty, turned);
      });
      console.log(`middles after ${turns} turns: ${(rms(errors) / step).toFixed(3)} step`);
      expect(rms(errors) / step).toBeLessThan(allowed);
    }
  });

  it('finds a bore 0.3 mm off within 10 % and 10 degrees where edges are true', () => {
    const found = seeds.map((seed) => {
      const towards = 2 * Math.PI * draws(seed + 300)();
      const { fit } = fitted(
        jetty,
        { boreMm: [0.3 * Math.cos(towards), 0.3 * Math.sin(towards)], edgeSdMm: 0 },
        [2.1, -2.1],
        seed,
      );
      const { offMm, patternTowardsDeg } = fit.disc!.bore;
      return {
        off: offMm.value / 0.3 - 1,
        deg: apart(patternTowardsDeg, (towards * 180) / Math.PI),
        sigma: offMm.sigma,
      };
    });
    console.log(
      `bore: ${rms(found.map(({ off }) => off)).toFixed(3)} of it, ${rms(found.map(({ deg }) => deg)).toFixed(1)} degrees`,
    );
    expect(rms(found.map(({ off }) => off))).toBeLessThan(0.1);
    expect(rms(found.map(({ deg }) => deg))).toBeLessThan(10);
  });

  it('knows how well it knows the bore where edges are rough', () => {
    const scaled = seeds.flatMap((seed) => {
      const random = draws(seed + 900);
      const bore = [0.3 * normal(random), 0.3 * normal(random)] as const;
      const { fit } = fitted(jetty, { boreMm: bore, edgeSdMm: 0.1, alongSdMm: 0.1 }, [1.2], seed);
      const { offMm } = fit.disc!.bore;
      return [(offMm.value - Math.hypot(...bore)) / offMm.sigma];
    });
    // Scatter of the edges is known itself only within a third from one turn.
    expect(rms(scaled)).toBeLessThan(2);
  });

  it('sets thresholds inside the true gap', () => {
    for (const seed of seeds.slice(0, 5)) {
      const { fit } = fitted(jetty, { litCounts: { 1: 260, 3: 500 }, noiseCounts: 4 }, [1.1], seed);
      for (const { channel, levels } of fit.channels) {
        const lit = { 1: 260, 3: 500 }[channel] ?? 900;
        expect(levels!.lowCounts).toBeGreaterThan(100 + 3 * 4);
        expect(levels!.highCounts).toBeLessThan(lit - 3 * 4);
      }
    }
  });
});

describe('what a recording cannot tell', () => {
  it('is said: a quarter turn makes no table', () => {
    const { fit } = fitted(jetty, {}, [0.25], 3);
    expect(fit.asBuilt).toBeNull();
    expect(fit.verdict).toBe('no');
    expect(fit.unknowns.map(({ recordNext }) => recordNext).join(' ')).toMatch(/whole turn/);
  });

  it.each([
    ['dead', 100],
    ['stuck', 900],
  ] as const)('is said: a channel that is %s stops the table, the rest is still told', (kind, counts) => {
    const { fit } = fitted(jetty, { stuckAt: { 3: counts } }, [1.3], 5);
    expect(fit.asBuilt).toBeNull();
    expect(fit.causes[0]).toMatchObject({ kind, standing: 'mend' });
    expect(fit.reasons.join(' ')).toContain(fit.causes[0]!.title);
  });

  it('is said: two wires that are one', () => {
    const { fit } = fitted(jetty, { columns: [0, 1, 2, 3, 3] }, [1.3], 5);
    expect(fit.causes[0]).toMatchObject({ kind: 'tied' });
    expect(fit.asBuilt).toBeNull();
  });

  it('is said: nobody told which way the vane was turned', () => {
    const random = draws(8);
    const build = builtBy(jetty, { random });
    const text = recordedText(build, turnedBy(build, [smooth(1.2, random)], 10), random);
    const recording = readRecording([{ name: 'turn.csv', text }], { scaleCounts: 1024 });
    const fit = fitRecording(jetty.instrument, jetty.disc, jetty.head, recording, { recordedAt: AT });
    expect(fit.wiring!.reversed).toBeNull();
    expect(fit.unknowns.map(({ what }) => what)).toContain('Whether headings run the right way round');
  });

  it('is refused when nothing ever changes', () => {
    const stuckAt = { 0: 90, 1: 90, 2: 90, 3: 90, 4: 90 };
    expect(() => fitted(jetty, { stuckAt }, [1], 1)).toThrow('fit/nothing-changes');
  });
});

describe('a wrong disc', () => {
  it('is named by the code that fits', () => {
    const other = designOf(twinFile({ code: 'single-track-gray', positions: 30 }));
    const random = draws(3);
    const build = builtBy(other, { random });
    const text = recordedText(build, turnedBy(build, [smooth(1.4, random)], 0), random);
    const recording = readRecording([{ name: 'turn_ccw.csv', text }], { scaleCounts: 1024 });
    const fit = fitRecording(jetty.instrument, jetty.disc, jetty.head, recording, { recordedAt: AT });
    expect(fit.otherCode!.code).toMatchObject({ family: 'single-track-gray', positions: 30 });
    expect(fit.causes[0]!.kind).toBe('other-code');
    expect(fit.asBuilt).toBeNull();
  });
});

describe('a sense of turning against the drawing', () => {
  it('is found when the maker says which way the vane was turned', () => {
    const { fit } = fitted(jetty, {}, [1.2], 6, { index: true, hints: { turned: { '*': 'clockwise' } } });
    expect(fit.asBuilt!.sense).toBe('reversed');
    expect(fit.causes.map(({ kind }) => kind)).toContain('sense-reversed');
  });
});

describe('play between vane and disc', () => {
  it('is measured from marks held coming from either side', () => {
    const random = draws(12);
    const build = builtBy(jetty, { random, backlashDeg: 3 });
    // Up through the marks and down again, a rest at each.
    const marks = Array.from({ length: 24 }, (_, i) => 15 * i + 3);
    const path: { deg: number; mark: number | null }[] = [];
    for (const stops of [marks, [...marks].reverse()]) {
      for (const [i, mark] of stops.entries()) {
        const from = path.at(-1)?.deg ?? -20;
        const steps = Math.max(2, Math.round(Math.abs(mark - from) / 0.3));
        for (let s = 1; s <= steps; s++) path.push({ deg: from + ((mark - from) * s) / steps, mark: null });
        for (let s = 0; s < 20; s++) path.push({ deg: mark, mark });
        if (i === stops.length - 1)
          for (let s = 1; s < 150; s++)
            path.push({ deg: mark + (stops === marks ? 0.2 * s : -0.2 * s), mark: null });
      }
    }
    const rows = recordedText(
      build,
      path.map(({ deg }) => deg),
      random,
    ).split('\n');
    const text = rows.map((row, i) => `${row},${i === 0 ? 'mark' : (path[i - 1]!.mark ?? '')}`).join('\n');
    const recording = readRecording([{ name: 'marks.csv', text }], { scaleCounts: 1024 });
    const fit = fitRecording(jetty.instrument, jetty.disc, jetty.head, recording, { recordedAt: AT });
    expect(fit.disc!.playDeg).not.toBeNull();
    expect(Math.abs(fit.disc!.playDeg!.value - 3)).toBeLessThan(3 * fit.disc!.playDeg!.sigma + 0.3);
  });
});
