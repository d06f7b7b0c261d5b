/** Outline of a part seen along its light, its shorter side across the track. [mm] */
export type Footprint =
  | { readonly shape: 'round'; readonly diameterMm: number }
  /** A circle with two flat sides, which lie along the track. */
  | { readonly shape: 'flatted'; readonly diameterMm: number; readonly acrossMm: number }
  | { readonly shape: 'box'; readonly alongMm: number; readonly acrossMm: number };

/** A sensor or light in a body of its own, facing the disc. */
export interface FacingBody {
  readonly kind: 'facing';
  readonly title: string;
  readonly senses: boolean;
  readonly lights: boolean;
  readonly footprint: Footprint;
  /** Collar at the back; `null` for none. [mm] */
  readonly collar: { readonly diameterMm: number; readonly thickMm: number } | null;
  /** From the collar, or the back, to the tip. [mm] */
  readonly lengthMm: number;
}

/** Light and sensor side by side, looking at the same place of the patterned face. */
export interface ReflectanceBody {
  readonly kind: 'reflectance';
  readonly title: string;
  readonly footprint: Footprint;
  readonly lengthMm: number;
  /** Distance from the disc at which it sees best. [mm] */
  readonly bestDistanceMm: number;
}

/** Light and sensor in two arms, with the disc's edge between them. */
export interface SlotBody {
  readonly kind: 'slot';
  readonly title: string;
  /** Clear height between the arms. [mm] */
  readonly slotMm: number;
  /** Depth of the slot from the tips of the arms. [mm] */
  readonly slotDepthMm: number;
  /** From the tips of the arms to the light. [mm] */
  readonly tipToLightMm: number;
  /** Along the track; from tips to back; over both arms. [mm] */
  readonly alongMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
}

/**
 * Parts whose holders can be made; the part's own data sheet decides over these.
 *
 * @source usual outlines of each class, values from memory: cadmium sulphide cell of the 5 mm class; T-1 and T-1 3/4
 * lamps and transistors; reflectance pair of 10.2 × 5.8 × 7 mm, best at 2.5 mm; slotted pair with a gap of 3.1 mm.
 */
export const partBodies = {
  'photoresistor-5mm': {
    kind: 'facing',
    title: '5 mm photoresistor',
    senses: true,
    lights: false,
    footprint: { shape: 'flatted', diameterMm: 5.1, acrossMm: 4.3 },
    collar: null,
    lengthMm: 2.1,
  },
  'round-3mm': {
    kind: 'facing',
    title: '3 mm light-emitting diode or phototransistor',
    senses: true,
    lights: true,
    footprint: { shape: 'round', diameterMm: 3 },
    collar: { diameterMm: 3.9, thickMm: 1 },
    lengthMm: 4.3,
  },
  'round-5mm': {
    kind: 'facing',
    title: '5 mm light-emitting diode or phototransistor',
    senses: true,
    lights: true,
    footprint: { shape: 'round', diameterMm: 5 },
    collar: { diameterMm: 5.9, thickMm: 1 },
    lengthMm: 7.6,
  },
  'slot-pair': {
    kind: 'slot',
    title: 'slotted pair',
    slotMm: 3.1,
    slotDepthMm: 7.4,
    tipToLightMm: 2.5,
    alongMm: 6.2,
    depthMm: 10.5,
    heightMm: 12.2,
  },
  'reflectance-pair': {
    kind: 'reflectance',
    title: 'reflectance pair',
    footprint: { shape: 'box', alongMm: 10.2, acrossMm: 5.8 },
    lengthMm: 7,
    bestDistanceMm: 2.5,
  },
  'colour-sensor': {
    kind: 'reflectance',
    title: 'colour sensor on a 20 mm board',
    footprint: { shape: 'box', alongMm: 20.5, acrossMm: 20.5 },
    lengthMm: 3,
    bestDistanceMm: 5,
  },
} as const satisfies Record<string, FacingBody | ReflectanceBody | SlotBody>;

/** Name of a part in the table. */
export type PartName = keyof typeof partBodies;

/** A laser module in a tube of the maker's own. @param diameterMm - Over the tube. [mm] @param lengthMm - Held. [mm] */
export function laserTube(diameterMm: number, lengthMm: number): FacingBody {
  return {
    kind: 'facing',
    title: `laser tube of ${diameterMm} mm`,
    senses: false,
    lights: true,
    footprint: { shape: 'round', diameterMm },
    collar: null,
    lengthMm,
  };
}

/** Every part in the table, and the laser tube of the maker's own size. */
export const partBodyNames = Object.keys(partBodies) as readonly PartName[];

/** Sensor of each kind until the maker names theirs. */
export const sensorPartDefaults = {
  photoresistor: 'photoresistor-5mm',
  phototransistor: 'round-3mm',
  'slot-pair': 'slot-pair',
  'reflectance-pair': 'reflectance-pair',
  'colour-sensor': 'colour-sensor',
} as const;

/** Light of each kind until the maker names theirs. */
export const lightPartDefaults = {
  led: 'round-3mm',
  laser: 'laser-tube',
} as const;
