import type { CupShapeSpec } from '../../instrument/index.ts';
import { CUP_ARM, PLASTIC_KG_PER_M3 } from './materials.ts';

/** Wind for which the pull on an arm is told. [m/s] @source own choice, above Beaufort 12, which begins at 32.7 m/s. */
export const STORM_M_PER_S = 40;

/** Wind over the speed of the cups' middles, between 2 and a little over 3. [-] @source common practice, no source. */
export const CUP_FACTOR = 2.7;

/** What cups do. */
export interface CupPlan extends CupShapeSpec {
  /** Outside of the cone at its mouth. [mm] */
  readonly outerRadiusMm: number;
  /** Cone with half a right angle: as deep as its mouth is wide in radius. [mm] */
  readonly depthMm: number;
  readonly cupMassG: number;
  /** Rod from the hub's socket to the cup's. [mm] */
  readonly rodMm: number;
  /** Turns in each metre of wind, roughly; calibrate for the true one. [1/m] */
  readonly turnsPerM: number;
  /** Pull on each arm in that storm. [N] */
  readonly pullN: number;
}

/** Flat at the tip of a cone, so that it prints without a point. [mm] */
export const TIP_MM = 2;

/** Hub: radius, height, depth of the sockets. [mm] */
export const [HUB_RADIUS_MM, HUB_HEIGHT_MM, SOCKET_MM] = [18, 14, 10];

/** Boss on the cup: length beyond the rim, width, height, depth of its socket. [mm] */
export const BOSS = { beyondMm: 10, widthMm: 8, heightMm: 8, socketMm: 10 } as const;

/** Volume of the cone between its two faces, without boss. [mm³] @source frustum: π h (R² + R r + r²) / 3. */
export function coneShellMm3({ mouthMm, wallMm }: Pick<CupShapeSpec, 'mouthMm' | 'wallMm'>): number {
  const frustum = (from: number, to: number): number =>
    (Math.PI * (from - to) * (from ** 2 + from * to + to ** 2)) / 3;
  const inner = mouthMm / 2;
  const outer = inner + Math.SQRT2 * wallMm;
  return frustum(outer, TIP_MM) - frustum(inner, 0);
}

/**
 * What cups of a size weigh, how fast they turn and how hard they pull.
 *
 * @source turns = U / (2π R k), k the cup factor; pull = m (2π R turns)² / R = m U² / (k² R).
 * @check src/core/make/vaneParts/vaneParts.test.ts
 */
export function cupPlan(want: CupShapeSpec): CupPlan {
  const outerRadiusMm = want.mouthMm / 2 + Math.SQRT2 * want.wallMm;
  const cupMassG =
    (coneShellMm3(want) + BOSS.beyondMm * BOSS.widthMm * BOSS.heightMm) * 1e-6 * PLASTIC_KG_PER_M3;
  const radiusM = want.radiusMm / 1000;
  const rodMm = want.radiusMm - outerRadiusMm - (HUB_RADIUS_MM - SOCKET_MM) - (BOSS.beyondMm - BOSS.socketMm);
  const pulledKg = cupMassG / 1000 + (CUP_ARM.kgPerM * rodMm) / 1000;
  return {
    ...want,
    outerRadiusMm,
    depthMm: outerRadiusMm - TIP_MM,
    cupMassG,
    rodMm,
    turnsPerM: 1 / (2 * Math.PI * radiusM * CUP_FACTOR),
    pullN: (pulledKg * STORM_M_PER_S ** 2) / (CUP_FACTOR ** 2 * radiusM),
  };
}
