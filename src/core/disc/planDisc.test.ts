import { describe, expect, it } from 'vitest';
import { jettyDisc, noNotch } from '../../../test/support/discSpecs.ts';
import { buildCode, codeTable, trackFromCells } from '../codes/index.ts';
import { VanewrightError, type Problem } from '../error/index.ts';
import type { DiscSpec } from './discSpec.ts';
import { planDisc } from './planDisc.ts';
import { processDefaults } from './processDefaults.ts';

function problemsOf(changes: Partial<DiscSpec>, positions = 32): readonly Problem[] {
  const spec = { ...jettyDisc, ...changes };
  try {
    planDisc(buildCode(spec.code, positions), spec);
  } catch (error) {
    if (error instanceof VanewrightError) return error.problems;
    throw error;
  }
  return [];
}
const codesOf = (changes: Partial<DiscSpec>, positions = 32) =>
  problemsOf(changes, positions).map(({ code }) => code);

/** Does what a fix says: `Set a to 1 mm, b to 2 mm and c to 3 mm; or need.positions to 64.` */
function asFixed(spec: DiscSpec, fix: string): DiscSpec {
  const fixed = structuredClone(spec) as unknown as Record<string, Record<string, number>>;
  for (const [, path, value] of fix.split(';')[0]!.matchAll(/disc[.]([\w.]+) to ([\d.]+) mm/g)) {
    const steps = path!.split('.');
    const last = steps.pop()!;
    const place = steps.reduce((at, step) => at[step] as never, fixed) as unknown as Record<string, number>;
    place[last] = Number(value);
  }
  return fixed as unknown as DiscSpec;
}

describe('a disc that can be made', () => {
  it('is planned', () => {
    const plan = planDisc(buildCode('reflected-gray', 32), jettyDisc);
    expect(plan.tracks.map(({ windows }) => windows.length)).toEqual([1, 1, 2, 4, 8]);
    expect(plan.ribs).toEqual([]);
  });

  it('carries 1024 positions when it is large enough', () => {
    expect(codesOf({ diameterMm: 400, hubDiameterMm: 200 }, 1024)).toEqual([]);
  });

  it('may have windows that meet at corners, and loose prints, on film', () => {
    const film = {
      process: processDefaults.film,
      webMm: 0,
      rimMm: 0,
      notch: noNotch,
      code: 'natural-binary',
    };
    expect(codesOf(film)).toEqual([]);
  });
});

describe('a disc that cannot be made', () => {
  it('is refused where three levels have no colours', () => {
    const spec = { ...jettyDisc, code: 'ternary-modular' };
    expect(codesOf(spec, 27)).toContain('disc/levels-need-colours');
    const coloured = { kind: 'inlay', depthMm: 1, colours: ['#ffffff', '#000000', '#1f5fbf'] } as const;
    expect(codesOf({ ...spec, form: coloured }, 27)).toEqual([]);
  });

  it.each<[string, Partial<DiscSpec>, number?]>([
    ['disc/size-not-usable', { diameterMm: NaN }],
    ['disc/size-not-usable', { strip: { turnLengthMm: Infinity, leadMm: 5 } }],
    ['disc/bridge-too-weak', { thicknessMm: 0.4 }],
    ['disc/form-not-for-process', { form: { kind: 'copper', copper: 'dark' } }],
    ['disc/colours-missing', { form: { kind: 'inlay', depthMm: 1, colours: ['#ffffff', '#FFFFFF'] } }],
    [
      'disc/colours-beyond-process',
      {
        form: { kind: 'inlay', depthMm: 1, colours: ['#ffffff', '#000000'] },
        process: { ...processDefaults.fdm, colourCount: 1 },
      },
    ],
    ['disc/layer-not-in-thickness', { form: { kind: 'relief', floorMm: 1.8, raised: 'dark' } }],
    [
      'disc/layer-not-in-thickness',
      { thicknessMm: 0.6, form: { kind: 'relief', floorMm: 0.3, raised: 'dark' } },
    ],
    ['disc/strip-too-short', { strip: { turnLengthMm: 20, leadMm: 5 } }],
    ['disc/strip-needs-webs', { rimMm: 0, notch: noNotch, strip: { turnLengthMm: 300, leadMm: 5 } }],
    ['disc/size-not-usable', { diameterMm: 80_000 }],
    ['disc/size-not-usable', { webMm: -1 }],
    ['disc/size-not-usable', { thicknessMm: 0 }],
    ['disc/bore-beyond-hub', { bore: { shape: 'round', diameterMm: 27 } }],
    ['disc/bore-too-small', { bore: { shape: 'round', diameterMm: 0.6 } }],
    ['disc/flat-not-in-bore', { bore: { shape: 'd', diameterMm: 5, acrossFlatMm: 5 } }],
    ['disc/flat-not-in-bore', { bore: { shape: 'd', diameterMm: 5, acrossFlatMm: 2.4 } }],
    ['disc/notch-depth', { notch: { widthMm: 2, depthMm: 2 } }],
    ['disc/notch-depth', { notch: { widthMm: 2, depthMm: 0 } }],
    ['disc/notch-depth', { rimMm: 0 }],
    ['disc/notch-width', { notch: { widthMm: 0.5, depthMm: 1.2 } }],
    ['disc/notch-width', { notch: { widthMm: 21, depthMm: 1.2 } }],
    ['disc/web-too-thin', { webMm: 0.5 }],
    ['disc/rim-too-thin', { rimMm: 0.5, notch: noNotch }],
    ['disc/tracks-do-not-fit', { diameterMm: 44 }],
    ['disc/tracks-do-not-fit', { hubDiameterMm: 79 }],
    ['disc/window-too-narrow', {}, 512],
    ['disc/land-too-narrow', { process: { ...jettyDisc.process, minWindowMm: 0.4 } }, 1024],
    ['disc/loose-piece', { webMm: 0, rimMm: 0, notch: noNotch, diameterMm: 300 }],
    ['disc/windows-meet-at-corner', { webMm: 0, code: 'natural-binary' }],
    [
      'disc/neck-too-narrow',
      { webMm: 0, windowLevel: 0, notch: noNotch, process: { ...jettyDisc.process, minLandMm: 3.6 } },
      64,
    ],
    [
      'disc/gap-too-narrow',
      { webMm: 0, notch: noNotch, process: { ...jettyDisc.process, minWindowMm: 3.6 } },
      64,
    ],
  ])('is refused with %s: %j', (code, changes, positions) => {
    expect(codesOf(changes, positions)).toContain(code);
  });

  it('is told everything at once', () => {
    const codes = codesOf({
      webMm: 0.3,
      rimMm: 0.2,
      hubDiameterMm: 79,
      bore: { shape: 'round', diameterMm: 78 },
    });
    expect(codes).toEqual([
      'disc/bore-beyond-hub',
      'disc/notch-depth',
      'disc/web-too-thin',
      'disc/rim-too-thin',
      'disc/tracks-do-not-fit',
    ]);
  });

  it.each<[string, Partial<DiscSpec>, number?]>([
    ['a small disc', { diameterMm: 44 }],
    ['a fat hub', { hubDiameterMm: 79 }],
    ['a fat shaft', { bore: { shape: 'd', diameterMm: 40, acrossFlatMm: 36 } }],
    ['a thin shaft', { bore: { shape: 'd', diameterMm: 0.5, acrossFlatMm: 0.5 } }],
    ['a thin web and rim', { webMm: 0.2, rimMm: 0.1, notch: noNotch }],
    ['a deep notch', { notch: { widthMm: 30, depthMm: 9 } }],
    ['a notch without a rim', { rimMm: 0 }],
    ['many positions', {}, 512],
    ['the finest track inside', { finest: 'inside' }, 256],
    ['no web', { webMm: 0, code: 'natural-binary' }],
    ['no web and no rim', { webMm: 0, rimMm: 0, notch: noNotch, diameterMm: 300 }],
    ['a thin sheet', { thicknessMm: 0.4 }],
    ['a wide kerf', { process: { ...processDefaults.laser, windowGrowthMm: 1.5 } }],
  ])('is given sizes that work: %s', (_, changes, positions = 32) => {
    const spec = { ...jettyDisc, ...changes };
    const [first, ...others] = problemsOf(changes, positions);
    expect(first!.fix).toMatch(/^Set disc[.]/);
    expect(others.every(({ fix }) => fix === first!.fix)).toBe(true);
    const code = buildCode(spec.code, positions);
    expect(planDisc(code, asFixed(spec, first!.fix)).tracks).toHaveLength(code.tracks.length);
  });

  it('is told that it is the count which no disc can bear, and then one that works', () => {
    const { fix } = problemsOf({}, 4096)[0]!;
    expect(fix).toMatch(
      /^With 4096 positions no size up to the largest disc would do; set need[.]positions to \d+[.]$/,
    );
    expect(codesOf({}, Number(/to (\d+)[.]$/.exec(fix)![1]))).toEqual([]);
  });

  it('is given a count of positions that works, too', () => {
    const { fix } = problemsOf({}, 512)[0]!;
    const positions = Number(/need[.]positions to (\d+)/.exec(fix)![1]);
    expect(codesOf({}, positions)).toEqual([]);
    expect(codesOf({}, positions + 2)).not.toEqual([]);
  });

  it.each([
    // Seven bands of 1 mm and six webs of 1.2 mm on a hub of 16.8 mm would fit on 50 mm, rim 2.4 mm; but a hub that
    // the file leaves out may grow along, at 0.35 of the disc: (7 + 7.2 + 2.4) / (0.5 - 0.175) = 51.08.
    [128, { diameterMm: 48, hubDiameterMm: 16.8 }, 51.1],
    // A hub of more than half the disc is there on purpose and stays: 2 (14 + 5 + 4.8 + 2.4).
    [32, { diameterMm: 44 }, 52.4],
  ])(
    'is given the smallest diameter that does, to 0.1 mm: %i positions, %j',
    (positions, changes, smallest) => {
      const { fix } = problemsOf(changes, positions)[0]!;
      expect(fix).toContain(`Set disc.diameterMm to ${smallest} mm`);
    },
  );

  it('names loose pieces by track and angle, and why no rib holds them', () => {
    const loose = problemsOf({ webMm: 0, rimMm: 0, notch: noNotch, diameterMm: 300 }).find(
      ({ code }) => code === 'disc/loose-piece',
    )!;
    expect(loose.got).toContain('track 4 from 33.75° to 56.25°');
    expect(loose.what).toMatch(
      /a rib to the nearest held material would be [\d.]+ mm long, where 16 mm is the most/,
    );
  });

  it('cannot be mended where a track is one window all the way round', () => {
    const tracks = [trackFromCells([1, 1]), trackFromCells([0, 1])];
    const code = codeTable('by hand', 2, { tracks, channels: [{ track: 1, angleDeg: 0 }] });
    expect(() => planDisc(code, { ...jettyDisc, code: 'by hand' })).toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: disc/loose-piece: Pieces of the disc would fall out, and no rib can hold them: no held material lies beside its windows.
        where:   disc.webMm
        got:     1 loose piece: track 1 from 0° to 180°
        allowed: one piece
        fix:     Leave track 0 out of the code: it never changes.]
    `);
  });

  it('says where, what was found, what is allowed and what to do', () => {
    expect(() => planDisc(buildCode('reflected-gray', 32), { ...jettyDisc, diameterMm: 44 }))
      .toThrowErrorMatchingInlineSnapshot(`
      [VanewrightError: disc/tracks-do-not-fit: The tracks do not fit between hub and rim.
        where:   disc.diameterMm
        got:     5 tracks in 5.6 mm from hub to rim, 0.16 mm each
        allowed: at most 3 tracks there, 1 mm each and 1.2 mm between
        fix:     Set disc.diameterMm to 52.4 mm; or need.positions to 8.]
    `);
  });
});
