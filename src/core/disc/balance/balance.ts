import { degToRad, radToDeg, wrapDegrees, type Degrees } from '../../units/index.ts';
import type { DiscPlan } from '../discPlan.ts';
import type { RingSector } from '../discSpec.ts';
import { formOf } from '../form.ts';
import { boreCircleMm } from '../layout/bore.ts';
import { notchSector } from '../layout/notchSector.ts';
import { densityOf } from '../materials.ts';
import { boreMoments, sectorMoments, summed, type Moments } from './moments.ts';

/** What would balance a disc: a weight where its material is light. */
export interface Counterweight {
  readonly massG: number;
  readonly radiusMm: number;
  readonly angleDeg: Degrees;
}

/** How a disc hangs on its shaft. */
export interface Balance {
  readonly massG: number;
  /** Centre of gravity from the axis. [mm] */
  readonly centreRadiusMm: number;
  /** Disc angle of the centre of gravity; `null` where it lies on the axis, so that there is no direction. [deg] */
  readonly centreDeg: Degrees | null;
  /** Moment of inertia about the axis. [kg m²] */
  readonly inertiaKgM2: number;
  /** Mass times distance of the centre of gravity. [g mm] */
  readonly unbalanceGMm: number;
  /** Torque that turns the heavy side downhill where the shaft leans by one degree. [N mm] */
  readonly leanTorqueNmm: number;
  /** `null` where that torque is too small to be felt. */
  readonly counterweight: Counterweight | null;
}

/** Standard gravity. [m/s²] @source ISO 80000-3 */
const GRAVITY = 9.80665;

/** Closer to the axis than this, a centre of gravity has no direction. [mm] */
const ON_AXIS_MM = 1e-9;

/**
 * Torque below which nobody need balance a disc. [N mm]
 *
 * @source a twentieth of what 0.5 m/s gives a small vane 5 degrees aside: ½ · 1.2 · 0.5² · 0.01 m² · 3 · 0.087 · 0.2 m
 * = 0.0785 N mm. The twentieth is our own choice.
 */
const FELT_NMM = 0.0785 / 20;

/** Thickness of copper on a board, and its density. @source common practice: "1 oz" copper is 35 µm; 8960 kg/m³. */
const COPPER = { thicknessMm: 0.035, densityKgPerM3: 8960 } as const;

const sum = (sectors: readonly RingSector[]): Moments =>
  summed(sectors.map((sector) => [1, sectorMoments(sector)]));

/** Weight of each square millimetre of a shape. [g/mm²] */
interface Plate {
  readonly moments: Moments;
  readonly gPerMm2: number;
}

/** Mass of a square millimetre. [g/mm²] */
function perMm2(thicknessMm: number, densityKgPerM3: number): number {
  return thicknessMm * densityKgPerM3 * 1e-6;
}

/** The plates a disc consists of, lying over each other. */
function platesOf(plan: DiscPlan): Plate[] {
  const { spec } = plan;
  const density = densityOf(spec);
  const notch = notchSector(spec);
  const disc = { innerRadiusMm: 0, outerRadiusMm: spec.diameterMm / 2, fromDeg: 0, toDeg: 360 };
  const whole = summed([
    [1, sectorMoments(disc)],
    [-1, boreMoments(spec.bore)],
    [-1, sum(notch ? [notch] : [])],
  ]);
  const windows = sum(plan.tracks.flatMap((track) => track.windows));
  const lands = summed([
    [1, whole],
    [-1, windows],
    [1, sum(plan.ribs)],
  ]);
  const form = formOf(spec);
  if (form.kind === 'through-cut') return [{ moments: lands, gPerMm2: perMm2(spec.thicknessMm, density) }];
  if (form.kind === 'relief') {
    return [
      { moments: whole, gPerMm2: perMm2(form.floorMm, density) },
      {
        moments: form.raised === 'dark' ? lands : windows,
        gPerMm2: perMm2(spec.thicknessMm - form.floorMm, density),
      },
    ];
  }
  const sheet = { moments: whole, gPerMm2: perMm2(spec.thicknessMm, density) };
  if (form.kind !== 'copper') return [sheet];
  const copper = form.copper === 'dark' ? lands : windows;
  return [sheet, { moments: copper, gPerMm2: perMm2(COPPER.thicknessMm, COPPER.densityKgPerM3) }];
}

/**
 * Mass of a disc, where its weight acts, and what would balance it; all in closed form.
 *
 * A strip has a mass but turns about nothing: its distances are 0.
 *
 * @param plan - A disc plan.
 * @returns Masses [g], lengths [mm], torque [N mm], inertia [kg m²].
 * @source derived: moments of sectors of rings and of the bore, each times thickness and density.
 * @check src/core/disc/balance/balance.test.ts (solid disc of ⌀80 by 2 mm in PLA: 12.5 g, 9.97e-6 kg m²; small cells)
 */
export function balanceOf(plan: DiscPlan): Balance {
  if (plan.strip) return stripBalance(plan);
  const plates = platesOf(plan);
  const whole = summed(plates.map(({ moments, gPerMm2 }) => [gPerMm2, moments]));
  const massG = whole.areaMm2;
  const unbalanceGMm = Math.hypot(whole.xMm3, whole.yMm3);
  const centreRadiusMm = unbalanceGMm / massG;
  const isCentred = centreRadiusMm < ON_AXIS_MM;
  const centreDeg = isCentred ? null : wrapDegrees(radToDeg(Math.atan2(whole.xMm3, whole.yMm3)));
  const leanTorqueNmm = unbalanceGMm * 1e-3 * GRAVITY * Math.sin(degToRad(1));
  return {
    massG,
    centreRadiusMm,
    centreDeg,
    inertiaKgM2: whole.polarMm4 * 1e-9,
    unbalanceGMm,
    leanTorqueNmm,
    counterweight:
      centreDeg === null || leanTorqueNmm < FELT_NMM ? null : counterweight(plan, unbalanceGMm, centreDeg),
  };
}

/** A weight on the hub, half way between bore and tracks, where it shadows nothing. */
function counterweight({ spec }: DiscPlan, unbalanceGMm: number, centreDeg: Degrees): Counterweight {
  const radiusMm = (boreCircleMm(spec.bore) + spec.hubDiameterMm) / 4;
  return { massG: unbalanceGMm / radiusMm, radiusMm, angleDeg: wrapDegrees(centreDeg + 180) };
}

function stripBalance({ spec, strip }: DiscPlan): Balance {
  const { fromDeg, toDeg, mmPerDeg, heightMm } = strip!;
  const areaMm2 = (toDeg - fromDeg) * mmPerDeg * heightMm;
  return {
    massG: areaMm2 * perMm2(spec.thicknessMm, densityOf(spec)),
    centreRadiusMm: 0,
    centreDeg: null,
    inertiaKgM2: 0,
    unbalanceGMm: 0,
    leanTorqueNmm: 0,
    counterweight: null,
  };
}
