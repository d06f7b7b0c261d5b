import type { GlandName, PartName } from '../head/index.ts';

/** What a vane must do, and how large it may be. */
export interface VaneSpec {
  /** Damping ratio, at least. [-] */
  readonly damping: number;
  /** Wind in which it must still turn. [m/s] */
  readonly startMPerS: number;
  /** How far off the wind it may stay in that wind. [deg] */
  readonly startWithinDeg: number;
  /** Moment that just begins to turn it. [N mm] */
  readonly frictionNmm: number;
  readonly finThicknessMm: number;
  /** Span of the fin over its depth. [-] */
  readonly aspectRatio: number;
  readonly longestArmMm: number;
}

/** Shape of the cups. */
export interface CupShapeSpec {
  readonly cups: 3 | 4;
  /** Across the mouth of a cup, inside. [mm] */
  readonly mouthMm: number;
  /** From the axis to the middle of a cup. [mm] */
  readonly radiusMm: number;
  readonly wallMm: number;
}

/** What is printed round the disc, and from which parts. */
export interface PartsSpec {
  /** Sensor at every channel. */
  readonly sensorPart: PartName;
  /** Light at every channel; not used with pairs, which bring their own. */
  readonly lightPart: PartName | 'laser-tube';
  /** Used with `laser-tube`: over the tube, and how much of it is held. [mm] */
  readonly laserTube: { readonly diameterMm: number; readonly heldMm: number };
  /** Air between the disc and each holder. [mm] */
  readonly airGapMm: number;
  readonly gland: GlandName;
  /** Side of the printer's square bed. [mm] */
  readonly bedMm: number;
  readonly layerMm: number;
  /** `null` for a shaft that no vane turns. */
  readonly vane: VaneSpec | null;
  readonly cups: CupShapeSpec;
}
