import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nodeFonts, nodeInstrumentFiles, nodeOutputFolder } from '../../src/adapters/nodeFiles/index.ts';
import { makeInstrument } from '../../src/app/makeInstrument.ts';
import { problemsOfPromise } from '../support/problemsOf.ts';
import { filesIn, ownFolder } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

type Change = readonly [from: string, to: string];

/** Five tracks from the hub of 30 mm to the rim of 2.4 mm, with webs of 1.2 mm between, on 90 mm. */
const BAND = (45 - 2.4 - 15 - 4 * 1.2) / 5;
const at = (radius: number, degrees: number): [number, number] => {
  const turn = (degrees * Math.PI) / 180;
  return [radius * Math.sin(turn), -radius * Math.cos(turn)];
};

const colours = (form: string): Change[] => [
  ['reflected-gray #', 'ternary-modular #'],
  ['positions: 32', 'positions: 27'],
  ['thicknessMm: 2', `thicknessMm: 2\n  form: ${form}`],
];
const strip = (turnLengthMm: number): Change => [
  'thicknessMm: 2',
  `thicknessMm: 2\n  strip: { turnLengthMm: ${turnLengthMm} }`,
];
/** Width of each of three tracks on the same disc. */
const THIRD = (45 - 2.4 - 15 - 2 * 1.2) / 3;

/** What is asked for, what it is called, and where the first ring stands on the drawing, y down. [mm] */
const faults: readonly (readonly [string, readonly Change[], string, [number, number] | null])[] = [
  ['a bore that leaves no hub', [['hubDiameterMm: 30', 'hubDiameterMm: 6']], 'bore-beyond-hub', at(2.5, 180)],
  [
    'a bore too small to be made',
    [['{ shape: d, diameterMm: 5, acrossFlatMm: 4.5 }', '{ shape: round, diameterMm: 0.5 }']],
    'bore-too-small',
    [0, 0],
  ],
  [
    'a web too thin',
    [['webMm: 1.2 ', 'webMm: 0.2 ']],
    'web-too-thin',
    at(15 + (45 - 2.4 - 15 - 0.8) / 5 + 0.1, 90),
  ],
  ['a rim too thin', [['rimMm: 2.4', 'rimMm: 0.3']], 'rim-too-thin', at(45 - 0.15, 90)],
  [
    'a notch that cuts into the outermost track',
    [['rimMm: 2.4', 'rimMm: 2.4\n  notch: { widthMm: 2, depthMm: 2.3 }']],
    'notch-depth',
    at(45 - 2.3, 0),
  ],
  // From the hub of 15 mm to 20 mm less the rim of 2.4 mm: the middle of 2.6 mm.
  ['tracks without room', [['diameterMm: 90', 'diameterMm: 40']], 'tracks-do-not-fit', at(15 + 2.6 / 2, 90)],
  // Tracks 0 and 1 are both open from 180 to 270 degrees, the web between them free.
  [
    'a bridge too weak',
    [['thicknessMm: 2', 'thicknessMm: 0.4']],
    'bridge-too-weak',
    at(15 + BAND + 0.6, 225),
  ],
  [
    'a form that the process cannot make',
    [['thicknessMm: 2', 'thicknessMm: 2\n  form: { kind: copper, copper: dark }']],
    'form-not-for-process',
    null,
  ],
  // Level 2 of the innermost of three tracks is its last third.
  [
    'more colours than the printer lays',
    [
      ...colours("{ kind: inlay, depthMm: 0.6, colours: ['#ffffff', '#000000', '#1f5fbf'] }"),
      ['kind: fdm', 'kind: fdm\n    colourCount: 2'],
    ],
    'colours-beyond-process',
    at(15 + THIRD / 2, 300),
  ],
  [
    'a colour too few',
    colours("{ kind: inlay, depthMm: 0.6, colours: ['#ffffff', '#000000'] }"),
    'colours-missing',
    at(15 + THIRD / 2, 300),
  ],
  [
    'three levels without colours',
    colours('{ kind: through-cut }'),
    'levels-need-colours',
    at(15 + THIRD / 2, 300),
  ],
  [
    'a floor that leaves nothing to stand up',
    [['thicknessMm: 2', 'thicknessMm: 2\n  form: { kind: relief, floorMm: 1.9, raised: dark }']],
    'layer-not-in-thickness',
    at(15 + BAND / 2, 270),
  ],
  ['a strip shorter than its tracks are wide', [strip(20)], 'strip-too-short', [0, -(2.4 + BAND / 2)]],
  [
    'a strip without webs',
    [strip(400), ['webMm: 1.2 ', 'webMm: 0 ']],
    'strip-needs-webs',
    [200, -(2.4 + (45 - 2.4 - 15) / 5)],
  ],
  // The same bridge as on the disc, unrolled: 225 of 360 degrees of 400 mm.
  [
    'a strip with a weak bridge',
    [['thicknessMm: 2', 'thicknessMm: 0.4\n  strip: { turnLengthMm: 400 }']],
    'bridge-too-weak',
    [250, -(2.4 + BAND + 0.6)],
  ],
];

const ports = { files: nodeInstrumentFiles, fonts: nodeFonts, output: nodeOutputFolder };

describe('making a disc that cannot be made', () => {
  let folder: ReturnType<typeof ownFolder>;
  beforeEach(() => {
    folder = ownFolder();
  });
  afterEach(() => {
    folder.end();
  });

  const making = async (changes: readonly Change[]) => {
    const text = changes.reduce((before, [from, to]) => {
      expect(before).toContain(from);
      return before.replace(from, to);
    }, textOf('examples/jetty/instrument.yaml'));
    const path = join(folder.path, 'edited.yaml');
    writeFileSync(path, text);
    const out = join(folder.path, 'out');
    const request = { path, out, builds: 10, seed: 1, paper: 'a4', only: null } as const;
    const stop = new AbortController().signal;
    return { out, problems: await problemsOfPromise(makeInstrument(ports, request, stop)) };
  };

  it.each(faults)(
    'draws %s, a ring at its place, and writes nothing else',
    async (_, changes, name, place) => {
      const { out, problems } = await making(changes);
      const [problem] = problems.filter(({ code }) => code === `disc/${name}`);
      expect(problem!.fix).toContain('out/disc-fault.svg shows the place.');
      expect(problem!.where).toMatch(/edited[.]yaml:\d+:\d+ › disc/);
      expect(filesIn(out)).toEqual(['disc-fault.svg']);
      const svg = readFileSync(join(out, 'disc-fault.svg'), 'utf8');
      const ring = /<circle cx="([-\d.]+)" cy="([-\d.]+)"/.exec(svg);
      expect(ring?.slice(1).map(Number) ?? null).toEqual(place?.map((mm) => expect.closeTo(mm, 3)) ?? null);
    },
  );

  it.each<[string, Change, string, [number, number]]>([
    ['a hub as large as the disc', ['diameterMm: 90', 'diameterMm: 28'], 'hub-beyond-rim', at(15, 90)],
    [
      'a bore as large as its hub',
      ['hubDiameterMm: 30', 'hubDiameterMm: 4'],
      'bore-beyond-hub',
      at(2.5, 180),
    ],
    ['a flat beyond its bore', ['acrossFlatMm: 4.5', 'acrossFlatMm: 6'], 'flat-outside-bore', at(6 - 2.5, 0)],
    [
      'a flat beyond the middle of its bore',
      ['acrossFlatMm: 4.5', 'acrossFlatMm: 1'],
      'flat-outside-bore',
      at(2.5 - 1, 180),
    ],
  ])('draws %s, found as the file is read', async (_, change, name, place) => {
    const { out, problems } = await making([change]);
    expect(problems.map(({ code }) => code)).toEqual([`instrument/${name}`]);
    expect(problems[0]!.fix).toContain('out/disc-fault.svg shows the place.');
    expect(filesIn(out)).toEqual(['disc-fault.svg']);
    const svg = readFileSync(join(out, 'disc-fault.svg'), 'utf8');
    const ring = /<circle cx="([-\d.]+)" cy="([-\d.]+)"/.exec(svg)!;
    expect(ring.slice(1).map(Number)).toEqual(place.map((mm) => expect.closeTo(mm, 3)));
  });

  it('draws nothing where a size is no size: there is nothing to draw', async () => {
    const { out, problems } = await making([
      ['diameterMm: 90', 'diameterMm: 28'],
      ['thicknessMm: 2', 'thicknessMm: -2'],
    ]);
    expect(problems.map(({ code }) => code)).toContain('instrument/hub-beyond-rim');
    expect(problems.every(({ fix }) => !fix.includes('disc-fault.svg'))).toBe(true);
    expect(existsSync(out)).toBe(false);
  });

  it('says where in the file readings of a coupon cannot be right: no place of the disc is wrong', async () => {
    const { out, problems } = await making([['kind: fdm', 'kind: fdm\n    measured: { barMm: 40 }']]);
    expect(problems.map(({ code }) => code)).toEqual(['disc/print-scaled']);
    expect(problems[0]!.fix).not.toContain('disc-fault.svg');
    expect(existsSync(out)).toBe(false);
  });
});
