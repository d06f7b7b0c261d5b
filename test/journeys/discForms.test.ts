import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildCode } from '../../src/core/codes/index.ts';
import { planDisc, processDefaults, type DiscForm, type DiscSpec } from '../../src/core/disc/index.ts';
import { discDxf, discFiles, discSvg, formPictures } from '../../src/core/make/index.ts';
import { admeshReport, SOUND } from '../support/admesh.ts';
import { misreadings, placeOf, sensorRadiusMm, wordOf } from '../support/discReadings.ts';
import { jettyDisc } from '../support/discSpecs.ts';
import { readDxf } from '../support/dxfReader.ts';
import { readStl } from '../support/stlReader.ts';
import { readSvg } from '../support/svgReader.ts';
import { threeMfReader, type ThreeMfReader } from '../support/threeMfReader.ts';

const planOf = (spec: DiscSpec, positions = 32) => planDisc(buildCode(spec.code, positions), spec);
const fileOf = (spec: DiscSpec, path: string, positions = 32) => {
  const file = discFiles(planOf(spec, positions)).find((made) => made.path === path);
  if (!file) throw new Error(`no ${path}`);
  return file.content;
};
const withForm = (form: DiscForm, changes: Partial<DiscSpec> = {}): DiscSpec => ({
  ...jettyDisc,
  form,
  ...changes,
});

const FLOOR_MM = 0.8;
const HIGH_MM = 2;
/** Circle of 40 mm less the D bore of 5 mm with its flat 2 mm from the middle, less the notch. [mm²] */
const halfFlat = Math.acos(2 / 2.5);
const boreMm2 = Math.PI * 6.25 - 6.25 * (halfFlat - Math.sin(2 * halfFlat) / 2);
const notchMm2 = Math.asin(2 / 80) * (40 ** 2 - 38.8 ** 2);
const blankMm2 = Math.PI * 1600 - boreMm2 - notchMm2;

/** Windows of Gray 32: half of every track, so half the turn of each band. [mm²] */
const windowsMm2 = Array.from({ length: 5 }, (_, track) => {
  const mid = sensorRadiusMm(jettyDisc, 5, track);
  const band = (37.6 - 14 - 4 * 1.2) / 5;
  return Math.PI * mid * band;
}).reduce((sum, area) => sum + area, 0);

describe('a relief', () => {
  it.each(['dark', 'light'] as const)(
    'stands up where it is %s, decodes all round and is sound',
    (raised) => {
      const spec = withForm({ kind: 'relief', floorMm: FLOOR_MM, raised });
      const bytes = fileOf(spec, 'disc.stl') as Uint8Array;
      const solid = readStl(bytes);
      const isHigh = (x: number, y: number) => solid.topAt(x, y)! > (FLOOR_MM + HIGH_MM) / 2;
      const looks = (x: number, y: number) => isHigh(x, y) === (raised === 'dark');
      expect(misreadings(spec, 32, 0.001, looks).wrong).toEqual([]);
      expect(admeshReport(bytes)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
      const raisedMm2 = raised === 'dark' ? blankMm2 - windowsMm2 : windowsMm2;
      const volume = blankMm2 * FLOOR_MM + raisedMm2 * (HIGH_MM - FLOOR_MM);
      expect(Math.abs(solid.volume / volume - 1)).toBeLessThan(0.001);
      expect(new Set(solid.facets.flatMap(({ corners }) => corners.map((c) => c[2]!.toFixed(3))))).toEqual(
        new Set(['0.000', '0.800', '2.000']),
      );
    },
  );

  it('is engraved where it lies low, before it is cut out', () => {
    const spec = withForm(
      { kind: 'relief', floorMm: 1.5, raised: 'dark' },
      { process: processDefaults.laser, thicknessMm: 3 },
    );
    const drawing = readDxf(fileOf(spec, 'disc.dxf') as string);
    expect(drawing.layers).toEqual(['mark', 'engrave', 'cut']);
    expect(misreadings(spec, 32, 0.001, (x, y) => !drawing.isInside('engrave', x, y)).wrong).toEqual([]);
    expect(drawing.areaOf('cut')).toBeCloseTo(blankMm2, 2);
  });

  it('has no rim, yet walls of three heights that meet without a gap', () => {
    const noNotch = { widthMm: 0, depthMm: 0 };
    const spec = withForm(
      { kind: 'relief', floorMm: 1, raised: 'dark' },
      { rimMm: 0, webMm: 0, notch: noNotch },
    );
    const bytes = fileOf(spec, 'disc.stl') as Uint8Array;
    expect(admeshReport(bytes)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
  });
});

describe('a print whose first layer comes out wider', () => {
  it('is drawn narrower there, and stays sound', () => {
    const drawn = { scale: 1, edgeLossMm: -0.1, boreAllowanceMm: 0.2, footGrowthMm: 0.25 };
    const spec = { ...jettyDisc, drawn };
    const bytes = fileOf(spec, 'disc.stl') as Uint8Array;
    expect(admeshReport(bytes)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
    const rims = readStl(bytes).facets.flatMap(({ corners }) =>
      corners.map(([x, y, z]) => [Math.hypot(x!, y!), z!]),
    );
    const widest = (z: number) =>
      Math.max(...rims.filter((place) => Math.abs(place[1]! - z) < 1e-5).map(([r]) => r!));
    // 0.1 mm narrower than wanted everywhere, and 0.25 mm more on the bed, up to 0.2 mm.
    expect([0, 0.2, 2].map(widest)).toEqual([39.65, 39.9, 39.9].map((r) => expect.closeTo(r, 4)));
  });
});

describe('copper on a board', () => {
  it.each(['dark', 'light'] as const)('is read as %s all round, kept off the milled edge', (copper) => {
    const spec = withForm({ kind: 'copper', copper }, { process: processDefaults.pcb, thicknessMm: 1.6 });
    const svg = readSvg(fileOf(spec, 'disc.svg') as string);
    const dxf = readDxf(fileOf(spec, 'disc.dxf') as string);
    const isDark = copper === 'dark';
    expect(misreadings(spec, 32, 0.001, (x, y) => svg.isInside(x, -y) === isDark).wrong).toEqual([]);
    expect(misreadings(spec, 32, 0.001, (x, y) => dxf.isInside('copper', x, y) === isDark).wrong).toEqual([]);
    expect(dxf.areaOf('cut')).toBeCloseTo(blankMm2, 2);
    for (const [x, y] of [placeOf(45, 39.9), placeOf(45, 2.7), placeOf(0, 38.6)]) {
      expect(dxf.isInside('copper', x, y)).toBe(false);
    }
    expect(discFiles(planOf(spec)).map(({ path }) => path)).toEqual(['disc.svg', 'disc.dxf']);
  });
});

/** Modular Gray digits of a count to base 3. @source Wikipedia, Gray code, section n-ary */
function ternaryWord(count: number): string {
  const digits = [Math.floor(count / 9) % 3, Math.floor(count / 3) % 3, count % 3];
  return digits.map((digit, i) => (digit - (digits[i - 1] ?? 0) + 3) % 3).join('');
}

const COLOURS = ['#f4f4f4', '#101010', '#1f5fbf'] as const;
const ternary: Partial<DiscSpec> = { code: 'ternary-modular' };

/** Word that three colours show, by which of them lies at each sensor. */
function colourWord(spec: DiscSpec, angleDeg: number, levelAt: (x: number, y: number) => number[]): string {
  return [0, 1, 2]
    .map((track) => levelAt(...placeOf(angleDeg, sensorRadiusMm(spec, 3, track))).join('+'))
    .join('');
}

describe('a disc of three colours', () => {
  it('shows one colour at every sensor, and the intended word all round', () => {
    const spec = withForm(
      { kind: 'overlay', colours: COLOURS },
      { ...ternary, process: processDefaults['colour-print'], thicknessMm: 0.3 },
    );
    const text = fileOf(spec, 'disc.svg', 27) as string;
    const levels = [0, 1, 2].map((level) => readSvg(text, `disc-level-${level}`));
    expect(levels.map(({ fill }) => fill)).toEqual(COLOURS);
    for (let angle = 0.7; angle < 360; angle += 1.37) {
      const word = colourWord(spec, angle, (x, y) =>
        [0, 1, 2].filter((level) => levels[level]!.isInside(x, -y)),
      );
      expect(word).toBe(ternaryWord(Math.floor(angle / (360 / 27))));
    }
  });

  describe('as an inlay', () => {
    let reader: ThreeMfReader;
    beforeAll(() => {
      reader = threeMfReader();
    });
    afterAll(() => reader.close());

    const spec = withForm({ kind: 'inlay', depthMm: 0.6, colours: COLOURS }, ternary);

    it('is three sound bodies that fill the disc together, in one file with a colour each', () => {
      const files = discFiles(planOf(spec, 27));
      expect(files.map(({ path }) => path)).toEqual([
        'disc.svg',
        'disc.dxf',
        'disc-base.stl',
        'disc-level-1.stl',
        'disc-level-2.stl',
        'disc.3mf',
      ]);
      const solids = files
        .filter(({ path }) => path.endsWith('.stl'))
        .map(({ content }) => content as Uint8Array);
      for (const bytes of solids) expect(admeshReport(bytes)).toMatchObject(SOUND);
      const volume = solids.reduce((sum, bytes) => sum + readStl(bytes).volume, 0);
      expect(Math.abs(volume / (blankMm2 * 2) - 1)).toBeLessThan(0.001);
      const { warnings, unit, bodies, items } = reader.read(files.at(-1)!.content as Uint8Array);
      expect([warnings, unit, items]).toEqual([0, 1, 1]);
      expect(bodies.map(({ name }) => name)).toEqual(['disc-base', 'disc-level-1', 'disc-level-2']);
      expect(bodies.every(({ isManifold }) => isManifold)).toBe(true);
    });

    it('shows the intended word all round', () => {
      const base = readStl(fileOf(spec, 'disc-base.stl', 27) as Uint8Array);
      const inlays = [1, 2].map((level) =>
        readStl(fileOf(spec, `disc-level-${level}.stl`, 27) as Uint8Array),
      );
      const levelAt = (x: number, y: number): number[] => [
        ...(base.topAt(x, y) === 2 ? [0] : []),
        ...[1, 2].filter((level) => inlays[level - 1]!.crossingsAt(x, y) > 0),
      ];
      for (let angle = 0.7; angle < 360; angle += 2.37) {
        expect(colourWord(spec, angle, levelAt)).toBe(ternaryWord(Math.floor(angle / (360 / 27))));
      }
    });
  });
});

describe('a strip', () => {
  const TURN_MM = 320;
  const strip: DiscSpec = { ...jettyDisc, strip: { turnLengthMm: TURN_MM, leadMm: 12 } };
  // Unrolled from bands of 3.76 mm with webs of 1.2 mm between rims of 2.4 mm.
  const acrossMm = (track: number) => 2.4 + track * 4.96 + 1.88;

  function wrongAlong(looks: (x: number, y: number) => boolean): number[] {
    const wrong: number[] = [];
    for (let x = -11.9; x < TURN_MM + 11.9; x += 0.13) {
      const step = (x / TURN_MM) * 32;
      if (Math.abs(step - Math.round(step)) < 1e-3) continue;
      const word = [0, 1, 2, 3, 4].map((track) => (looks(x, acrossMm(track)) ? 0 : 1)).join('');
      if (word !== wordOf('reflected-gray', 32, (Math.floor(step) + 32) % 32)) wrong.push(x);
    }
    return wrong;
  }

  it('shows the words of the disc along its travel, and beyond both ends', () => {
    const svg = readSvg(discSvg(planOf(strip)));
    expect(wrongAlong((x, y) => svg.isInside(x, -y))).toEqual([]);
    // 320 mm of travel, 12 mm beyond each end, closed by 2.4 mm; 2 mm of paper round it.
    expect([svg.widthMm, svg.heightMm]).toEqual([352.8, 32.4]);
    const dxf = readDxf(discDxf(planOf(strip)));
    expect(wrongAlong((x, y) => dxf.isInside('cut', x, y))).toEqual([]);
  });

  it('is a sound solid of the area of the drawing', () => {
    const bytes = fileOf(strip, 'disc.stl') as Uint8Array;
    const solid = readStl(bytes);
    expect(wrongAlong((x, y) => solid.crossingsAt(x, y) === 2)).toEqual([]);
    expect(admeshReport(bytes)).toMatchObject({ ...SOUND, 'Number of parts': [1] });
    const svg = readSvg(discSvg(planOf(strip)));
    expect(Math.abs(solid.volume / (2 * Math.abs(svg.signedAreaMm2)) - 1)).toBeLessThan(1e-4);
  });

  it('has marks as long as on a drum that unrolls to its turn', () => {
    const { tracks } = planOf(strip);
    for (const { midRadiusMm } of tracks) expect(2 * Math.PI * midRadiusMm).toBeCloseTo(TURN_MM, 9);
  });
});

describe('the pictures of every form in the docs', () => {
  it.each(formPictures())('are as drawn now: $name', ({ name, svg }) => {
    const file = new URL(`../../docs/pictures/forms/${name}.svg`, import.meta.url);
    expect(readFileSync(file, 'utf8')).toBe(svg);
  });
});
