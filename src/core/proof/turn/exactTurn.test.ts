import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import { handDisc } from '../../../../test/support/handDisc.ts';
import { handHead, LINEAR_HEAD, LOG_HEAD } from '../../../../test/support/handHead.ts';
import { codeTable, familyNames, trackFromCells, type Level } from '../../codes/index.ts';
import { radToDeg } from '../../units/index.ts';
import { exactTurn } from './exactTurn.ts';

/** Low enough for a linear detector to stay linear: its thresholds then lie at half light. */
const circuit = { resistorOhm: 5_000 };

describe('one exact turn', () => {
  it('shows every position over its own step on a disc without any fault, both ways', () => {
    const { growing, falling } = exactTurn(handHead(handDisc(), { circuit }));
    for (const stretches of [growing, falling]) {
      expect(stretches).toHaveLength(32);
      for (const { fromDeg, toDeg, position } of stretches) {
        expect(apartDeg(fromDeg, position! * 11.25)).toBeLessThan(1e-9);
        expect(toDeg - fromDeg).toBeCloseTo(11.25, 9);
      }
    }
  });

  it('covers the turn once, each stretch beginning where the last one ends', () => {
    const head = handHead(handDisc({ family: 'natural-binary', process: { windowGrowthMm: 0.3 } }), {
      spec: LOG_HEAD,
    });
    const { growing, falling } = exactTurn(head, { boreMm: [0.3, 0.2], alongMm: [0.1, -0.2, 0.3, 0, 0.1] });
    for (const stretches of [growing, falling]) {
      const span = stretches.reduce((sum, { fromDeg, toDeg }) => sum + toDeg - fromDeg, 0);
      expect(span).toBeCloseTo(360, 9);
      for (const [i, { toDeg }] of stretches.entries()) {
        expect(apartDeg(toDeg, stretches[(i + 1) % stretches.length]!.fromDeg)).toBeLessThan(1e-9);
      }
    }
  });

  it('widens every lit window by what the process and a threshold below half light add', () => {
    const growth = 0.2;
    const head = handHead(handDisc({ process: { windowGrowthMm: growth } }), {
      spec: { ...LOG_HEAD, aperture: { shape: 'gaussian', radiusMm: 0.5 } },
    });
    // 0.9000 beam radii for a contrast of 100 and slope 0.7, from the closed form of the threshold.
    const k = 100 ** (1 / 0.7);
    expect(head.levels.risingLight).toBeCloseTo(1 / (1 + Math.sqrt(k)), 12);
    const shift = 0.5 * 0.9 + growth / 2;
    const { growing } = exactTurn(head);
    // Position 16 begins where the innermost track, 15 mm out, goes light.
    const begins = growing.find(({ position }) => position === 16)!.fromDeg;
    expect(180 - begins).toBeCloseTo(radToDeg(Math.asin(shift / 15)), 2);
  });

  it('turns later one way than the other by the hysteresis', () => {
    const spec = { aperture: { shape: 'slit', widthMm: 1, lengthMm: 3 } } as const;
    const head = handHead(handDisc(), { spec, circuit: { ...circuit, hysteresisCounts: 100 } });
    const { growing, falling } = exactTurn(head);
    const light = head.levels.risingLight - head.levels.fallingLight;
    for (const { position, fromDeg } of growing) {
      const back = falling.find((stretch) => stretch.position === position)!;
      const late = apartDeg(fromDeg, back.fromDeg);
      const radius = [15, 20, 25, 30, 35].find((r) => Math.abs(late - radToDeg(light / r)) < 1e-3);
      expect(radius).toBeDefined();
    }
  });

  it('reads the same whether the sensor sits to the supply or to ground, and whether a window is 1 or 0', () => {
    const faults = { boreMm: [0.2, -0.1], alongMm: [0.1, 0, -0.1, 0.2, 0] } as const;
    const want = { spec: LOG_HEAD, circuit: { hysteresisCounts: 60 } };
    const up = exactTurn(handHead(handDisc(), want), faults);
    const down = exactTurn(
      handHead(handDisc(), { ...want, circuit: { ...want.circuit, sensorTo: 'ground' } }),
      faults,
    );
    expect(down.errors.rmsDeg).toBeCloseTo(up.errors.rmsDeg!, 9);
    expect(down.growing.map(({ word }) => word)).toEqual(up.growing.map(({ word }) => word));
    const inverse = exactTurn(handHead(handDisc({ windowLevel: 0 }), { circuit }));
    expect(inverse.errors.maxDeg).toBeCloseTo(5.625, 9);
  });

  it('turns with the disc when every sensor is moved alike', () => {
    const still = exactTurn(handHead(handDisc(), { circuit }));
    // The same angle at every radius: millimetres in proportion to it.
    const turnDeg = 2;
    const alongMm = [15, 20, 25, 30, 35].map((radius) => (turnDeg * Math.PI * radius) / 180);
    const moved = exactTurn(handHead(handDisc(), { circuit }), { alongMm });
    for (const { fromDeg, position } of still.growing) {
      const same = moved.growing.find((stretch) => stretch.position === position)!;
      expect(apartDeg(same.fromDeg, fromDeg - turnDeg)).toBeLessThan(1e-9);
    }
    expect(moved.errors.maxDeg).toBeCloseTo(5.625 + turnDeg, 9);
  });

  it('says what is misread, illegal or never shown', () => {
    const disc = handDisc({ positions: 20 });
    // One edge of the outermost track pushed past a whole step: a position goes unseen and others read wrong.
    const edges = disc.tracks.at(-1)!.windows[0]!;
    const stepMm = (2 * Math.PI * 35) / 20;
    const { errors } = exactTurn(handHead(disc, { circuit }), {
      edgeMm: (track, edge) => (track === 4 && Math.abs(edge - edges.fromDeg) < 1e-6 ? -1.5 * stepMm : 0),
    });
    expect(errors.unseenPositions.length).toBeGreaterThan(0);
    expect(errors.illegalShare + errors.misreadShare).toBeGreaterThan(0);
    expect(errors.maxDeg).toBeGreaterThan(18);
  });

  it('moves both channels that share a track by the same edge', () => {
    const cells: Level[] = [0, 0, 1, 1];
    const track = trackFromCells(cells);
    const code = codeTable('two heads on one ring', 4, {
      tracks: [track],
      channels: [
        { track: 0, angleDeg: 0 },
        { track: 0, angleDeg: 90 },
      ],
    });
    const base = handDisc({ family: 'natural-binary', positions: 2, firstRadiusMm: 20 });
    const head = handHead({ ...base, code }, { circuit });
    const edgeMm = (_: number, edge: number): number => (edge === 180 ? 0.5 : 0);
    const moved = exactTurn(head, { edgeMm }).growing.map(({ fromDeg }) => fromDeg);
    const turn = radToDeg(Math.asin(0.5 / 20));
    expect(moved.sort((a, b) => a - b).map((at) => Number(at.toFixed(6)))).toEqual(
      [0, 90 + turn, 180 + turn, 270].map((at) => Number(at.toFixed(6))),
    );
  });

  it('goes round a rib that stops too little light to matter, and is blind behind one that does not', () => {
    const aperture = { shape: 'slit', widthMm: 1, lengthMm: 3 } as const;
    const ring = { innerRadiusMm: 13, outerRadiusMm: 13.9, fromDeg: 200, toDeg: 340 };
    const light = exactTurn(
      handHead(handDisc({ ribs: [ring] }), { circuit, spec: { ...LINEAR_HEAD, aperture } }),
    );
    expect(light.growing).toHaveLength(32);
    const whole = { ...ring, outerRadiusMm: 17 };
    const { faults } = handHead(handDisc({ ribs: [whole] }), { circuit, spec: { ...LINEAR_HEAD, aperture } });
    expect(faults.map(({ code }) => code)).toEqual(['head/rib-hides-window']);
    const half = { ...ring, outerRadiusMm: 14.6 };
    const { warnings } = handHead(handDisc({ ribs: [half] }), {
      circuit,
      spec: { ...LINEAR_HEAD, aperture },
    });
    expect(warnings.map(({ code }) => code)).toEqual(['head/rib-in-view']);
  });

  it.each(familyNames.filter((name) => !name.startsWith('ternary')))(
    'reads %s without a fault within half a step, or a step behind its strobe',
    (family) => {
      const disc = handDisc({ family, positions: 24, firstRadiusMm: 25 });
      const { errors } = exactTurn(handHead(disc, { circuit }));
      if (family === 'natural-binary') return expect(errors.maxDeg).toBeCloseTo(7.5, 6);
      expect(errors.illegalShare).toBeCloseTo(0, 9);
      expect(errors.misreadShare).toBe(0);
      expect(errors.unseenPositions).toEqual([]);
      // The strobe of a shift register opens a quarter of a step late: its errors run from 1/4 to -3/4 of a step.
      const [most, rms] = disc.code.strobe
        ? [0.75, Math.sqrt((0.25 ** 3 + 0.75 ** 3) / 3)]
        : [0.5, 1 / Math.sqrt(12)];
      expect(errors.maxDeg! / 15).toBeCloseTo(most, 6);
      expect(errors.rmsDeg! / 15).toBeCloseTo(rms, 6);
    },
  );

  it('refuses more channels than a word can be followed with', () => {
    const disc = handDisc({ positions: 2 });
    const code = { ...disc.code, channels: Array.from({ length: 49 }, () => ({ track: 0, angleDeg: 0 })) };
    expect(() => exactTurn(handHead({ ...disc, code }, { circuit }))).toThrow('proof/too-many-channels');
  });

  it('follows more channels than fit a table of words', () => {
    const disc = handDisc({ positions: 2 });
    const channels = Array.from({ length: 20 }, () => ({ track: 0, angleDeg: 0 }));
    const code = codeTable('one ring, twenty heads', 2, { tracks: disc.code.tracks, channels });
    const { errors } = exactTurn(handHead({ ...disc, code }, { circuit }));
    expect(errors.maxDeg).toBeCloseTo(90, 9);
    expect(errors.illegalShare).toBe(0);
  });
});
