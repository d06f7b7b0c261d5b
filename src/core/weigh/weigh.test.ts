import { describe, expect, it } from 'vitest';
import { readInstrument, type Instrument } from '../instrument/index.ts';
import { modelledWind, weighPrinciples, type WeighedPrinciple, type Weighing } from './index.ts';

/** Invented needs on one plain disc. */
function instrumentOf(need = '', sensing = '', site = '', code = ''): Instrument {
  const text = `vanewright: 1
name: invented
need: { ${need.includes('positions') ? '' : 'positions: 32, '}${need.includes('accuracyDeg') ? '' : 'accuracyDeg: 10, '}${need} }
sensing: { ${sensing} }
disc: { diameterMm: 90, ${code} process: { kind: fdm } }
site: { ${site} }
`;
  return readInstrument(text, 'f.yaml').instrument;
}

function weigh(...fields: Parameters<typeof instrumentOf>): Weighing {
  const instrument = instrumentOf(...fields);
  return weighPrinciples(
    instrument,
    modelledWind(instrument.site.wind, { powerUps: 200, seed: 1, horizonH: 8760 }),
  );
}

function named({ principles }: Weighing, name: string): WeighedPrinciple {
  return principles.find((principle) => principle.name === name)!;
}

describe('the ten ways of sensing', () => {
  const plain = weigh();

  it('are all told, each with what it is made of', () => {
    expect(plain.principles.map(({ name }) => name).sort()).toEqual([
      'continuous-potentiometer',
      'counting-wheel',
      'counting-wheel-with-index',
      'disc-in-colours',
      'disc-in-room-light',
      'disc-with-focused-beams',
      'magnetic-angle-chip',
      'multi-turn-trimmer',
      'single-turn-potentiometer',
      'switch-ring',
    ]);
    expect(plain.principles.every(({ parts, about }) => parts.length > 0 && about.endsWith('.'))).toBe(true);
  });

  it('come best first', () => {
    const places = plain.principles.map(({ verdict }) =>
      ['serves', 'with-care', 'does-not-serve'].indexOf(verdict),
    );
    expect(places).toEqual([...places].sort());
  });

  it('have errors that add up', () => {
    for (const { figures } of plain.principles) {
      const sum = figures.errors.reduce((all, { deg }) => all + deg, 0);
      expect(figures.largestErrorDeg).toBeCloseTo(sum, 12);
    }
  });
});

describe('a vane on a garden mast', () => {
  const plain = weigh();

  it('needs no disc where a chip on the shaft end serves, and is told so', () => {
    expect(plain.verdict).toMatchObject({ advice: 'do-not-build-a-disc', best: 'magnetic-angle-chip' });
    expect(plain.verdict.headline).toMatch(/^Do not build a disc/);
    expect(plain.verdict.wouldChange.join(' ')).toContain('sensing.shaftEnd: free');
  });

  it('is best served by a disc where the shaft has no free end', () => {
    const closed = weigh('', 'shaftEnd: closed');
    expect(closed.verdict).toMatchObject({ advice: 'build-a-disc', best: 'disc-with-focused-beams' });
    expect(closed.verdict.wouldChange).toContain(
      'A magnetic angle chip would serve with a free end of the shaft (sensing.shaftEnd: free).',
    );
  });

  it('and where a motor or magnet near by turns the chip farther than the accuracy allows', () => {
    // asin(8/40) is 11.5 degrees.
    expect(named(weigh('', '', 'strayFieldMt: 8'), 'magnetic-angle-chip').verdict).toBe('does-not-serve');
    expect(weigh('', '', 'strayFieldMt: 8').verdict.best).toBe('disc-with-focused-beams');
  });

  it('cannot use a potentiometer that stops, and hardly one with a gap', () => {
    const stops = named(plain, 'single-turn-potentiometer');
    expect(stops.verdict).toBe('does-not-serve');
    expect(stops.figures.deadShare).toBeCloseTo(0.25, 12);
    const { gap } = named(plain, 'continuous-potentiometer').figures;
    expect(gap!.atNorth).toBeCloseTo(15 / 360, 12);
  });

  it('hides a gap where the wind never stands', () => {
    const shares = 'wind: { sectorShares: [0, 0, 1, 1, 1, 1, 1, 1] }';
    const { gap } = named(weigh('', '', shares), 'continuous-potentiometer').figures;
    expect(gap!.bestPlaced).toBe(0);
    expect(gap!.atNorth).toBe(0);
    const north = named(weigh('', '', 'wind: { sectorShares: [1, 0, 0, 0] }'), 'continuous-potentiometer');
    // All the wind within 90 degrees round north: the gap of 15 holds a sixth of it.
    expect(north.figures.gap!.atNorth).toBeCloseTo(1 / 6, 12);
    expect(north.figures.gap!.bestPlaced).toBe(0);
  });

  it('loses the direction of a counting wheel with the power, until the index is met', () => {
    const indexed = named(
      weigh('mustSurvivePowerLoss: false', 'powerCutsPerYear: 10'),
      'counting-wheel-with-index',
    );
    expect(indexed.verdict).toBe('with-care');
    expect(indexed.figures.unknownHPerYear).toBeCloseTo(10 * indexed.figures.wait!.meanH, 9);
    expect(named(plain, 'counting-wheel-with-index').verdict).toBe('does-not-serve');
    expect(named(plain, 'counting-wheel').figures.unknownHPerYear).toBeNull();
  });

  it('waits for the index less where the wind is commonest than on a north it never comes from', () => {
    const south = weigh('', '', 'wind: { sectorShares: [0, 0, 1, 3, 9, 3, 1, 0] }');
    const { wait, waitAtNorth } = named(south, 'counting-wheel-with-index').figures;
    expect(wait!.indexDeg).toBe(180);
    expect(wait!.meanH).toBeLessThan(waitAtNorth!.meanH);
  });
});

describe('other shafts', () => {
  it('a motor looks for its index by itself: half the range on average', () => {
    const dome = weigh('turnRateDegPerS: 6, mustSurvivePowerLoss: false', 'turnedBy: motor');
    const { wait } = named(dome, 'counting-wheel-with-index').figures;
    // 360 degrees at 6 a second are a minute.
    expect(wait).toMatchObject({ basis: 'driven', meanH: 30 / 3600 });
    expect(wait!.p95H).toBeCloseTo(57 / 3600, 12);
  });

  it('a valve of less than three quarters of a turn is served by the cheapest potentiometer', () => {
    const valve = weigh('turnRangeDeg: 200', 'turnedBy: hand, startTorqueNmm: 50');
    expect(named(valve, 'single-turn-potentiometer').verdict).toBe('serves');
    expect(valve.verdict).toMatchObject({ advice: 'do-not-build-a-disc', best: 'single-turn-potentiometer' });
  });

  it('a gate whose faults must show themselves gets words that never look dark or flooded', () => {
    const asked = ['turnRangeDeg: 330', 'turnedBy: hand, shaftEnd: closed, mustShowFaults: true'] as const;
    const plainCode = weigh(...asked);
    const single = weigh('turnRangeDeg: 330, positions: 24', asked[1], '', 'code: single-track-gray,');
    expect(named(plainCode, 'disc-with-focused-beams').verdict).toBe('does-not-serve');
    expect(named(single, 'disc-with-focused-beams').verdict).toBe('serves');
  });

  it('a need that nothing serves is told so, with the nearest', () => {
    const hard = weigh('accuracyDeg: 0.05', 'shaftEnd: closed');
    expect(hard.verdict).toMatchObject({ advice: 'nothing-serves', best: null });
    expect(hard.verdict.reasons[0]).toMatch(/^The nearest is/);
  });

  it('wear follows the turns a day, and a budget rules out what costs more', () => {
    const worn = named(weigh('', 'turnsPerDay: 1000'), 'continuous-potentiometer');
    expect(worn.figures.lifeYears).toBeCloseTo(1e6 / 365_250, 9);
    expect(named(weigh('', 'budgetEur: 20'), 'disc-in-colours').verdict).toBe('does-not-serve');
  });
});
