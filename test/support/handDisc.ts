import { buildCode, type CodeTable } from '../../src/core/codes/index.ts';
import type { DiscPlan, DiscSpec, Process } from '../../src/core/disc/index.ts';

/** Process without any error: what is drawn is what is made. */
export const PERFECT: Process = {
  kind: 'laser',
  minWindowMm: 0.5,
  minLandMm: 0.5,
  minWebMm: 0.5,
  edgeSdMm: 0,
  windowGrowthMm: 0,
  boreSdMm: 0,
};

/** What a disc laid out by hand may differ in. */
export interface HandDisc {
  readonly family?: string;
  readonly positions?: number;
  readonly process?: Partial<Process>;
  /** Radius of the middle of track 0, and from one track to the next. [mm] */
  readonly firstRadiusMm?: number;
  readonly pitchMm?: number;
  readonly webMm?: number;
  readonly windowLevel?: 0 | 1;
  readonly ribs?: DiscPlan['ribs'];
}

/** A disc laid out by hand, without the disc step: tracks at equal pitch, windows straight from the code's runs. */
export function handDisc(want: HandDisc = {}): DiscPlan {
  const code = buildCode(want.family ?? 'reflected-gray', want.positions ?? 32);
  const { firstRadiusMm = 15, pitchMm = 5, webMm = 1, windowLevel = 1 } = want;
  const half = (pitchMm - webMm) / 2;
  const outer = firstRadiusMm + pitchMm * (code.tracks.length - 1) + half;
  const spec: DiscSpec = {
    code: code.family,
    codeFile: null,
    codeOptions: {},
    diameterMm: 2 * (outer + 2),
    bore: { shape: 'round', diameterMm: 5 },
    hubDiameterMm: 2 * (firstRadiusMm - half),
    thicknessMm: 3,
    webMm,
    rimMm: 2,
    finest: 'outside',
    windowLevel,
    notch: { widthMm: 2, depthMm: 1 },
    process: { ...PERFECT, ...want.process },
  };
  const tracks = code.tracks.map((_, track) => {
    const midRadiusMm = firstRadiusMm + pitchMm * track;
    const ring = { innerRadiusMm: midRadiusMm - half, outerRadiusMm: midRadiusMm + half };
    return {
      track,
      midRadiusMm,
      ...ring,
      windows: windowsOf(code, track, windowLevel).map((w) => ({ ...ring, ...w })),
    };
  });
  return { code, spec, tracks, ribs: want.ribs ?? [] };
}

function windowsOf(code: CodeTable, track: number, windowLevel: 0 | 1): { fromDeg: number; toDeg: number }[] {
  const { startsDeg, levels } = code.tracks[track]!;
  return startsDeg.flatMap((fromDeg, run) => {
    if (levels[run] !== windowLevel) return [];
    return [{ fromDeg, toDeg: startsDeg[run + 1] ?? startsDeg[0]! + 360 }];
  });
}
