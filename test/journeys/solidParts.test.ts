import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetPoint, UNMEASURED, type DiscSpec } from '../../src/core/disc/index.ts';
import type { HeadPlan } from '../../src/core/head/index.ts';
import type { Instrument, PartsSpec } from '../../src/core/instrument/index.ts';
import {
  couponParts,
  meshStl,
  meshVolumeMm3,
  solidParts,
  threeMfBytes,
  type Solid,
  type SolidParts,
} from '../../src/core/make/index.ts';
import { exampleInstrument, plannedHead } from '../support/plannedHead.ts';
import { staggeredHead } from '../support/staggeredHead.ts';
import { readStl } from '../support/stlReader.ts';
import { threeMfReader, type ThreeMfReader } from '../support/threeMfReader.ts';

interface Wish {
  readonly name: string;
  readonly disc: Partial<DiscSpec>;
  readonly positions?: number;
  readonly parts?: Partial<PartsSpec>;
  readonly staggerDeg?: number;
}

/** Heads of every style: a bar over one line, a ring round the shaft, and every kind of part. */
const wishes: readonly Wish[] = [
  { name: 'photoresistors in one line', disc: { diameterMm: 90 } },
  // Not its own mirror image, so that a holder made the wrong way round would be seen.
  { name: 'photoresistors beside each other', disc: { diameterMm: 84 }, staggerDeg: 10 },
  {
    name: '5 mm transistors facing lasers, round the disc',
    disc: singleTrack(90),
    positions: 30,
    parts: { sensorPart: 'round-5mm', lightPart: 'laser-tube' },
  },
  {
    name: 'reflectance pairs round the disc',
    disc: singleTrack(90),
    positions: 30,
    parts: { sensorPart: 'reflectance-pair' },
  },
  {
    name: 'slotted pairs round the disc',
    disc: { ...singleTrack(90), hubDiameterMm: 80 },
    positions: 30,
    parts: { sensorPart: 'slot-pair' },
  },
  {
    name: 'a printer whose coupon was measured, on a hexagonal shaft',
    disc: {
      diameterMm: 92,
      bore: { shape: 'hex', diameterMm: 5 },
      drawn: { scale: 1.003, edgeLossMm: -0.12, boreAllowanceMm: 0.25, footGrowthMm: 0.15 },
    },
  },
];

function singleTrack(diameterMm: number): Partial<DiscSpec> {
  return { code: 'single-track-gray', diameterMm };
}

function instrumentOf({ disc, positions, parts }: Wish): Instrument {
  const jetty = exampleInstrument('jetty', disc);
  return {
    ...jetty,
    need: { ...jetty.need, positions: positions ?? jetty.need.positions },
    parts: { ...jetty.parts, ...parts },
  };
}

interface Built {
  readonly instrument: Instrument;
  readonly head: HeadPlan;
  readonly made: SolidParts;
}

async function build(wish: Wish): Promise<Built> {
  const instrument = instrumentOf(wish);
  const head = staggeredHead(plannedHead(instrument), wish.staggerDeg ?? 0);
  return { instrument, head, made: await solidParts(instrument, head.disc, head) };
}

const builds = new Map<string, Promise<Built>>();

/** Parts of a wish, made once. */
function partsOf(wish: Wish): Promise<Built> {
  const known = builds.get(wish.name) ?? build(wish);
  builds.set(wish.name, known);
  return known;
}

/** What admesh (Debian package `admesh`) says of a solid; throws when admesh is missing. */
function admesh(solid: Solid): Record<string, number[]> {
  const folder = mkdtempSync(join(tmpdir(), 'solid-part-'));
  try {
    const file = join(folder, 'part.stl');
    writeFileSync(file, meshStl(solid));
    const text = execFileSync('admesh', [file], { encoding: 'utf8' });
    const rows = [...text.matchAll(/([A-Z][A-Za-z0-9 ]*?)\s*:\s*(-?[\d.]+)(?:\s+(-?[\d.]+))?/g)];
    return Object.fromEntries(rows.map(([, name, ...values]) => [name!, values.filter(Boolean).map(Number)]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const SOUND = {
  'Total disconnected facets': [0, 0],
  'Number of parts': [1],
  'Degenerate facets': [0],
  'Edges fixed': [0],
  'Facets removed': [0],
  'Facets added': [0],
  'Facets reversed': [0],
  'Backwards edges': [0],
  'Normals fixed': [0],
};

let reader: ThreeMfReader;
beforeAll(() => {
  reader = threeMfReader();
});
afterAll(() => reader.close());

function named(made: SolidParts, name: string) {
  return readStl(meshStl(made.solids.find((solid) => solid.name === name)!));
}

describe.each(wishes)('the printed parts of $name', (wish) => {
  let built: Built;
  beforeAll(async () => {
    built = await partsOf(wish);
  });

  it('are all made, each with a drawing', () => {
    expect(built.made.problems).toEqual([]);
    expect(built.made.drawings.map(({ name }) => name)).toEqual(built.made.solids.map(({ name }) => name));
    expect(built.made.solids.length).toBeGreaterThanOrEqual(10);
  });

  it('are called sound by admesh, each in one piece', () => {
    const faults = built.made.solids.map((solid) => ({ name: solid.name, ...admesh(solid) }));
    expect(faults).toMatchObject(built.made.solids.map(({ name }) => ({ name, ...SOUND })));
  });

  it('come back from 3MF whole, with names, millimetres and their volumes, in strict mode', () => {
    const { solids } = built.made;
    const bytes = threeMfBytes(
      'parts',
      solids.map((solid) => ({ name: solid.name, bodies: [solid] })),
      200,
    );
    const read = reader.read(bytes);
    expect(read).toMatchObject({ warnings: 0, unit: 1, items: solids.length });
    expect(read.bodies.map(({ name, isManifold }) => [name, isManifold])).toEqual(
      solids.map(({ name }) => [name, true]),
    );
    for (const [i, { volume }] of read.bodies.entries()) {
      expect(volume / meshVolumeMm3(solids[i]!.mesh)).toBeCloseTo(1, 3);
    }
  });

  it('stand flat on the bed', () => {
    for (const { name, mesh } of built.made.solids) {
      const lowest = mesh.positionsMm.filter((_, i) => i % 3 === 2).reduce((a, b) => Math.min(a, b));
      expect({ name, lowest }).toEqual({ name, lowest: 0 });
    }
  });

  it('let the jig show light to every channel at once, and to none a spot beside it', () => {
    const jig = named(built.made, 'alignment-jig');
    const scale = built.instrument.disc.drawn?.scale ?? 1;
    for (const { radiusMm, angleDeg } of built.head.channels) {
      const crossings = (angle: number): number => {
        const { xMm, yMm } = sheetPoint(angle, radiusMm * scale);
        return jig.crossingsAt(xMm, yMm);
      };
      const beside = ((1.2 / radiusMm) * 180) / Math.PI;
      expect([crossings(angleDeg), crossings(angleDeg + beside), crossings(angleDeg - beside)]).toEqual([
        0, 2, 2,
      ]);
    }
  });
});

describe('two holders that face each other', () => {
  it.each(wishes.slice(0, 3))(
    'let light straight through at every channel and nowhere beside it: $name',
    async (wish) => {
      const { made, head } = await partsOf(wish);
      const sensors = named(made, 'sensor-holder');
      const lights = named(made, 'light-holder');
      for (const { radiusMm, angleDeg } of head.channels) {
        const { xMm, yMm } = sheetPoint(angleDeg, radiusMm);
        // The light holder lies turned over.
        expect([sensors.crossingsAt(xMm, yMm), lights.crossingsAt(-xMm, yMm)]).toEqual([0, 0]);
        const beside = sheetPoint(angleDeg + (3.2 / radiusMm) * 57.3, radiusMm);
        expect(sensors.crossingsAt(beside.xMm, beside.yMm)).toBe(2);
      }
    },
  );

  it('keep a wall between all tunnels', async () => {
    const { made, head } = await partsOf(wishes[0]!);
    const sensors = named(made, 'sensor-holder');
    const radii = head.channels.map(({ radiusMm }) => radiusMm).sort((a, b) => a - b);
    for (const [i, radius] of radii.slice(1).entries()) {
      expect(sensors.crossingsAt(0.01, (radius + radii[i]!) / 2)).toBe(2);
    }
  });
});

describe('the housing', () => {
  it('takes its wall between the two skirts of the lid, so that no straight line leads in', async () => {
    const { made } = await partsOf(wishes[0]!);
    const [base, lid] = [named(made, 'housing-base'), named(made, 'housing-lid')];
    const ringsAt = (solid: ReturnType<typeof readStl>, height: number): [number, number][] => {
      // Rings met by a line outwards at a height, from facets that span it; angle 37 avoids screws and posts.
      const hits = solid.facets.flatMap(({ corners }) => crossingRadius(corners, height, 37));
      const sorted = hits.sort((a, b) => a - b);
      return Array.from({ length: sorted.length / 2 }, (_, i) => [sorted[2 * i]!, sorted[2 * i + 1]!]);
    };
    const wall = ringsAt(base, 35).at(-1)!;
    const [inner, outer] = ringsAt(lid, 8).slice(-2);
    expect(inner![1]).toBeLessThan(wall[0]);
    expect(outer![0]).toBeGreaterThan(wall[1]);
  });

  it('hangs a drip edge below the inside of its skirt', async () => {
    const { made } = await partsOf(wishes[0]!);
    const { mesh } = made.solids.find(({ name }) => name === 'housing-lid')!;
    const corners = Array.from({ length: mesh.positionsMm.length / 3 }, (_, i) => {
      const [x, y, z] = mesh.positionsMm.subarray(3 * i, 3 * i + 3) as unknown as [number, number, number];
      return { radius: Math.hypot(x, y), z };
    });
    // Printed on its top: what hangs lowest in use is highest here, and lies at the very outside.
    const lowest = Math.max(...corners.map(({ z }) => z));
    const edge = Math.min(...corners.filter(({ z }) => z > lowest - 0.01).map(({ radius }) => radius));
    expect(edge).toBeGreaterThan(Math.max(...corners.map(({ radius }) => radius)) - 1);
  });
});

/** Radii at which a half-plane at an angle meets a facet at a height. */
function crossingRadius(corners: readonly (readonly number[])[], height: number, angleDeg: number): number[] {
  const { xMm: ux, yMm: uy } = sheetPoint(angleDeg, 1);
  const cuts: { along: number; aside: number }[] = [];
  for (let i = 0; i < 3; i++) {
    const [x0, y0, z0] = corners[i] as [number, number, number];
    const [x1, y1, z1] = corners[(i + 1) % 3] as [number, number, number];
    if (z0 <= height === z1 <= height) continue;
    const t = (height - z0) / (z1 - z0);
    const [x, y] = [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
    cuts.push({ along: x * ux + y * uy, aside: x * uy - y * ux });
  }
  const [a, b] = cuts;
  if (!a || !b || a.aside <= 0 === b.aside <= 0) return [];
  const radius = a.along + (a.aside / (a.aside - b.aside)) * (b.along - a.along);
  return radius > 0 ? [radius] : [];
}

describe('made twice', () => {
  it('parts, drawings, STL and 3MF are the same to the last byte', async () => {
    const [first, second] = [(await partsOf(wishes[0]!)).made, (await build(wishes[0]!)).made];
    expect(second.drawings).toEqual(first.drawings);
    const files = ({ solids }: SolidParts): Buffer[] => [
      ...solids.map((solid) => Buffer.from(meshStl(solid))),
      Buffer.from(threeMfBytes('parts', [{ name: 'all', bodies: solids }], 200)),
    ];
    const again = files(second);
    expect(files(first).every((file, i) => file.equals(again[i]!))).toBe(true);
  });

  it('a 3MF is the same in every time zone', () => {
    const script = `
      const { threeMfBytes } = await import('./src/core/make/threeMf/threeMfBytes.ts');
      const mesh = { positionsMm: Float32Array.of(0,0,0, 1,0,0, 0,1,0, 0,0,1), triangles: Uint32Array.of(0,2,1, 0,1,3, 0,3,2, 1,2,3) };
      process.stdout.write(Buffer.from(threeMfBytes('t', [{ name: 't', bodies: [{ name: 't', mesh }] }], 200)).toString('base64'));
    `;
    const inZone = (zone: string): string =>
      execFileSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
        encoding: 'utf8',
        env: { ...process.env, TZ: zone },
      });
    expect(inZone('America/New_York')).toBe(inZone('Asia/Tokyo'));
  });
});

describe('parts larger than the bed', () => {
  it('are named, with the bed they would need', async () => {
    const wish = { name: 'small bed', disc: { diameterMm: 90 }, parts: { bedMm: 120 } };
    const { made } = await partsOf(wish);
    expect(made.problems.map(({ code }) => code)).toContain('make/beyond-bed');
    const needed = Number(/parts.bedMm to (\d+)/.exec(made.problems[0]!.fix)![1]);
    expect(needed).toBeGreaterThan(120);
    expect((await partsOf({ ...wish, name: 'large bed', parts: { bedMm: 200 } })).made.problems).toEqual([]);
  });
});

describe('the coupon', () => {
  it('is called sound by admesh, and comes back from 3MF in two colours', async () => {
    const { solids } = await couponParts(instrumentOf(wishes[0]!));
    expect(admesh(solids[0]!)).toMatchObject(SOUND);
    const [plain, red] = [solids[0]!, { ...solids[0]!, name: 'again', colour: '#aa0000' }];
    const read = reader.read(threeMfBytes('coupon', [{ name: 'pair', bodies: [plain, red] }], 200));
    expect(read).toMatchObject({ warnings: 0, items: 1 });
    expect(read.bodies.map(({ name }) => name)).toEqual(['coupon', 'again']);
  });

  it('is drawn alike before and after it was measured', async () => {
    const instrument = instrumentOf(wishes[0]!);
    const process = { ...instrument.disc.process, measured: { ...UNMEASURED, slotMm: 1.7 } };
    const after = { ...instrument, disc: { ...instrument.disc, process } };
    expect((await couponParts(after)).solids).toEqual((await couponParts(instrument)).solids);
  });
});
