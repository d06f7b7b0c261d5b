import { describe, expect, it } from 'vitest';
import { apartDeg } from '../../../../test/support/denseTurn.ts';
import {
  edgeSpread,
  lightLevel,
  type Aperture,
  type SeenTrack,
  type SwitchLights,
} from '../../head/index.ts';
import { degToRad, seededRandom, wrapDegrees, type Random } from '../../units/index.ts';
import { softSwitches, type Sense, type Switches } from './softMarks.ts';
import { steppedSwitches } from './steppedEdges.ts';

const RADIUS_MM = 20;

/** A track of random marks, its shortest so many millimetres long, seen through a spot as wide as asked. */
function anyTrack(random: Random, spotMm: number): SeenTrack {
  const cells = 12 + 2 * Math.floor(random.uniform() * 24);
  const edgesDeg: number[] = [];
  for (let cell = 0; cell < cells; cell++) {
    if (random.uniform() < 0.6 || cell === 0) edgesDeg.push((cell * 360) / cells);
  }
  if (edgesDeg.length % 2 === 1) edgesDeg.pop();
  const aperture = [
    { shape: 'slit', widthMm: spotMm, lengthMm: 1 },
    { shape: 'round', diameterMm: spotMm },
    { shape: 'gaussian', radiusMm: spotMm / 2 },
  ][Math.floor(random.uniform() * 3)] as Aperture;
  return {
    radiusMm: RADIUS_MM,
    spread: edgeSpread(aperture),
    edgesDeg,
    gains: edgesDeg.map((_, i) => (i % 2 === 0 ? 1 : -1)),
    movesMm: edgesDeg.map(() => 0.05 * random.normal()),
    widestMoveMm: 0.3,
    levels: edgesDeg.map((_, i) => (i % 2 === 0 ? 1 : 0)),
    spill: [],
  };
}

/** The same by looking at every fiftieth of a degree, twice round. */
function scanned(seen: SeenTrack, { risingLight, fallingLight }: SwitchLights, sense: Sense): Switches {
  const places = 18_000;
  const way = sense === 'growing' ? 1 : -1;
  const switches: { atDeg: number; litAfter: boolean }[] = [];
  const light = Float64Array.from({ length: places }, (_, i) => lightLevel(seen, (i * 360) / places));
  let lit = false;
  for (let step = 0; step < 2 * places; step++) {
    const i = (((way * step) % places) + places) % places;
    if (lit ? light[i]! > fallingLight : light[i]! < risingLight) continue;
    lit = !lit;
    if (step >= places) switches.push({ atDeg: ((i - way / 2) * 360) / places, litAfter: lit === way > 0 });
  }
  return { switches, litThroughout: lit };
}

/** Farthest that one list's switches lie from the other's; infinite when they do not pair in order round the circle. */
function worstApart(a: Switches, b: Switches): number {
  if (a.switches.length !== b.switches.length) return Infinity;
  if (a.switches.length === 0) return a.litThroughout === b.litThroughout ? 0 : Infinity;
  return Math.max(
    ...a.switches.map(({ atDeg, litAfter }) =>
      Math.min(...b.switches.filter((s) => s.litAfter === litAfter).map((s) => apartDeg(s.atDeg, atDeg))),
    ),
  );
}

/** Lights at which a high or low of this light only just touches a threshold: there a scan and a search may differ. */
function touches(seen: SeenTrack, { risingLight, fallingLight }: SwitchLights): boolean {
  const step = 0.02;
  for (let angle = 0; angle < 360; angle += step) {
    const [before, at, after] = [-step, 0, step].map((off) => lightLevel(seen, wrapDegrees(angle + off)));
    const turns = (at! - before!) * (after! - at!) <= 0;
    if (turns && Math.min(Math.abs(at! - risingLight), Math.abs(at! - fallingLight)) < 1e-4) return true;
  }
  return false;
}

describe('a channel whose marks share its spot', () => {
  const random = seededRandom(77);
  const tracks = Array.from({ length: 60 }, () => {
    const seen = anyTrack(random, 1 + 9 * random.uniform());
    const fallingLight = 0.05 + 0.8 * random.uniform();
    return { seen, lights: { fallingLight, risingLight: fallingLight + 0.1 * random.uniform() } };
  }).filter(({ seen, lights }) => !touches(seen, lights));

  it.each(['growing', 'falling'] as const)(
    'switches where a scan of its light does, disc angle %s',
    (sense) => {
      let narrow = 0;
      for (const { seen, lights } of tracks) {
        const found = softSwitches(seen, lights, sense);
        expect(
          worstApart(found, scanned(seen, lights, sense)),
          JSON.stringify({ ...seen, lights }),
        ).toBeLessThan(0.0101);
        if (!steppedSwitches(seen, lights, sense)) narrow += 1;
      }
      expect(tracks.length).toBeGreaterThan(40);
      expect(narrow).toBeGreaterThan(10);
    },
  );

  it('switches at the same places whether searched or taken edge by edge', () => {
    let taken = 0;
    for (const { seen, lights } of tracks) {
      const stepped = steppedSwitches(seen, lights, 'growing');
      if (!stepped) continue;
      taken += 1;
      expect(worstApart(stepped, softSwitches(seen, lights, 'growing'))).toBeLessThan(1e-5);
    }
    expect(taken).toBeGreaterThan(10);
  });

  it('never changes where no light reaches its thresholds, and then reads dark', () => {
    const { seen } = tracks[0]!;
    const never = { risingLight: 1.5, fallingLight: -0.5 };
    expect(softSwitches(seen, never, 'growing')).toEqual({ switches: [], litThroughout: false });
    expect(softSwitches(seen, { risingLight: 1.5, fallingLight: 0.4 }, 'growing').switches).toEqual([]);
    expect(softSwitches(seen, { risingLight: 0.4, fallingLight: -0.5 }, 'falling')).toEqual({
      switches: [],
      litThroughout: true,
    });
  });

  it('misses a window narrower than its spot can see, and no other', () => {
    const narrowDeg = 1;
    const seen: SeenTrack = {
      ...tracks[0]!.seen,
      spread: edgeSpread({ shape: 'slit', widthMm: 2, lengthMm: 1 }),
      edgesDeg: [0, 60, 120, 120 + narrowDeg],
      gains: [1, -1, 1, -1],
      levels: [1, 0, 1, 0],
      movesMm: [0, 0, 0, 0],
    };
    // The narrow window fills 0.349 mm of the 2 mm slit: 0.1745 of full light.
    expect((degToRad(narrowDeg) * RADIUS_MM) / 2).toBeCloseTo(0.1745, 4);
    expect(softSwitches(seen, { risingLight: 0.18, fallingLight: 0.17 }, 'growing').switches).toHaveLength(2);
    expect(softSwitches(seen, { risingLight: 0.17, fallingLight: 0.16 }, 'growing').switches).toHaveLength(4);
  });
});
