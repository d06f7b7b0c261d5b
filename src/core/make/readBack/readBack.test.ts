import { describe, expect, it } from 'vitest';
import { discKinds, jettyDisc } from '../../../../test/support/discSpecs.ts';
import { problemsOf } from '../../../../test/support/problemsOf.ts';
import { buildCode } from '../../codes/index.ts';
import { planDisc, processDefaults, type DiscSpec } from '../../disc/index.ts';
import { discFiles } from '../discFiles.ts';
import { assertReadBack, readBack } from './readBack.ts';

const planOf = (spec: DiscSpec, positions = 32) => planDisc(buildCode(spec.code, positions), spec);
const colours = ['#ffffff', '#000000', '#1f5fbf'];

const forms: { name: string; spec: DiscSpec; positions: number }[] = [
  {
    name: 'relief',
    positions: 32,
    spec: { ...jettyDisc, form: { kind: 'relief', floorMm: 1, raised: 'dark' } },
  },
  {
    name: 'relief, light raised',
    positions: 32,
    spec: { ...jettyDisc, form: { kind: 'relief', floorMm: 1, raised: 'light' } },
  },
  {
    name: 'copper, light',
    positions: 32,
    spec: { ...jettyDisc, process: processDefaults.pcb, form: { kind: 'copper', copper: 'light' } },
  },
  {
    name: 'inlay of three',
    positions: 27,
    spec: { ...jettyDisc, code: 'ternary-modular', form: { kind: 'inlay', depthMm: 0.6, colours } },
  },
  {
    name: 'print of three',
    positions: 27,
    spec: {
      ...jettyDisc,
      code: 'ternary-modular',
      process: processDefaults['colour-print'],
      form: { kind: 'overlay', colours },
    },
  },
  { name: 'strip', positions: 32, spec: { ...jettyDisc, strip: { turnLengthMm: 320, leadMm: 5 } } },
  {
    name: 'drawn for a cut, 2 % larger',
    positions: 32,
    spec: { ...jettyDisc, drawn: { scale: 1.02, edgeLossMm: 0.1, boreAllowanceMm: -0.2, footGrowthMm: 0.1 } },
  },
  {
    name: 'one track, nine sensors',
    positions: 360,
    spec: {
      ...jettyDisc,
      code: 'single-track-gray',
      diameterMm: 300,
      hubDiameterMm: 270,
      rimMm: 4,
      process: processDefaults.laser,
    },
  },
];

describe('files of a disc, read back before they are written', () => {
  it.each([...discKinds.filter(({ positions }) => positions <= 64), ...forms])(
    'show its code around the turn: $name',
    ({ spec, positions }) => {
      const plan = planOf(spec, positions);
      const { read, problems } = readBack(plan, discFiles(plan));
      expect(problems).toEqual([]);
      expect(read.length).toBeGreaterThanOrEqual(2);
    },
  );

  it.each([0, 1, 2, 3])('are refused where one shows another disc: file %i', (index) => {
    const [plan, other] = [planOf(jettyDisc), planOf({ ...jettyDisc, code: 'natural-binary' })];
    const files = discFiles(plan);
    const mixed = files.map((file, i) => (i === index ? discFiles(other)[i]! : file));
    const problems = problemsOf(() => assertReadBack(plan, mixed));
    expect(problems.map(({ code, where }) => [code, where])).toEqual([
      ['make/file-disagrees', files[index]!.path],
    ]);
    const { places } = readBack(plan, mixed);
    expect(places.length).toBeGreaterThan(0);
  });

  it('are refused where one window is missing', () => {
    const plan = planOf(jettyDisc);
    const files = discFiles(plan).map((file) => {
      if (file.path !== 'disc.svg') return file;
      const svg = file.content as string;
      const from = svg.lastIndexOf('M', svg.lastIndexOf('Z'));
      return { ...file, content: svg.slice(0, from) + svg.slice(svg.lastIndexOf('Z') + 1) };
    });
    expect(readBack(plan, files).problems.map(({ where }) => where)).toEqual(['disc.svg']);
  });

  it('are refused where a drawing is empty', () => {
    const plan = planOf(jettyDisc);
    const { problems } = readBack(plan, [{ path: 'disc.svg', content: '<svg/>' }]);
    expect(problems[0]!.got).toBe('no pattern in it');
  });
});
