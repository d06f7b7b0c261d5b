import { boreCircleMm, type Bore } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import type { CupShapeSpec } from '../../instrument/index.ts';
import { showMm } from '../../units/index.ts';
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
  /** Outside of the hub. [mm] */
  readonly hubRadiusMm: number;
  /** Rod from the hub's socket to the cup's. [mm] */
  readonly rodMm: number;
  /** Turns in each metre of wind, roughly; calibrate for the true one. [1/m] */
  readonly turnsPerM: number;
  /** Pull on each arm in that storm. [N] */
  readonly pullN: number;
}

/** Flat at the tip of a cone, so that it prints without a point. [mm] */
export const TIP_MM = 2;

/** Hub: height, depth of the sockets, and wall between shaft and sockets. [mm] */
export const [HUB_HEIGHT_MM, SOCKET_MM, HUB_WALL_MM] = [14, 10, 5.5];

/** Least rod seen between hub and cup. [mm] @source own choice: room to glue. */
const LEAST_ROD_MM = 5;

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

/** Of the radius, what is no rod: half a cup, its boss less the socket, and the hub less its socket. [mm] */
function takenMm(outerRadiusMm: number, hubRadiusMm: number): number {
  return outerRadiusMm + (BOSS.beyondMm - BOSS.socketMm) + (hubRadiusMm - SOCKET_MM);
}

/**
 * What cups of a size weigh, how fast they turn and how hard they pull.
 *
 * @param bore - The shaft. [mm]
 * @source turns = U / (2π R k), k the cup factor; pull = m (2π R turns)² / R = m U² / (k² R).
 * @check src/core/make/vaneParts/vaneParts.test.ts
 */
export function cupPlan(want: CupShapeSpec, bore: Bore): CupPlan {
  const outerRadiusMm = want.mouthMm / 2 + Math.SQRT2 * want.wallMm;
  const cupMassG =
    (coneShellMm3(want) + BOSS.beyondMm * BOSS.widthMm * BOSS.heightMm) * 1e-6 * PLASTIC_KG_PER_M3;
  const radiusM = want.radiusMm / 1000;
  const hubRadiusMm = boreCircleMm(bore) / 2 + HUB_WALL_MM + SOCKET_MM;
  const rodMm = want.radiusMm - takenMm(outerRadiusMm, hubRadiusMm);
  const pulledKg = cupMassG / 1000 + (CUP_ARM.kgPerM * rodMm) / 1000;
  return {
    ...want,
    outerRadiusMm,
    depthMm: outerRadiusMm - TIP_MM,
    cupMassG,
    hubRadiusMm,
    rodMm,
    turnsPerM: 1 / (2 * Math.PI * radiusM * CUP_FACTOR),
    pullN: (pulledKg * STORM_M_PER_S ** 2) / (CUP_FACTOR ** 2 * radiusM),
  };
}

/** Cups so near the hub that no rod is left between. @returns One `make/cups-too-close` at most. */
export function cupProblems({ outerRadiusMm, hubRadiusMm, rodMm, radiusMm }: CupPlan): Problem[] {
  if (rodMm >= LEAST_ROD_MM) return [];
  const least = Math.ceil(takenMm(outerRadiusMm, hubRadiusMm) + LEAST_ROD_MM);
  return [
    {
      code: 'make/cups-too-close',
      what: 'The cups stand so near the axis that no rod is left between them and the hub.',
      where: 'parts.cups.radiusMm',
      got: showMm(radiusMm),
      allowed: `${showMm(least)} or more for cups of this mouth on this shaft`,
      fix: `Set parts.cups.radiusMm to ${least}, or make the cups smaller.`,
    },
  ];
}
