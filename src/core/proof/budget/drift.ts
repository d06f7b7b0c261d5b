import { CLIMATE_DEFAULT, kelvinRange, type Detector, type HeadPlan, type Rgb } from '../../head/index.ts';

/**
 * How a sensor under its light changes with temperature. [share a kelvin]
 *
 * Values from memory: the current of a silicon sensor grows by some 0.7 % a kelvin and its infrared diode dims by 0.5 %, of
 * which the larger is taken alone; the resistance of a cadmium sulphide cell moves by some 0.3 % at 10 lx. Measure your own
 * by a hair dryer and a thermometer.
 */
const SENSOR_PER_K = { photoresistor: 0.003, other: 0.007 } as const;

/** How red, green and blue diodes dim as they get hotter. Values from memory of usual curves. [share a kelvin], n = 3 */
const COLOURS_PER_K: Rgb = [-0.008, -0.003, -0.001];

/**
 * Hours after which a light has dimmed to a share of what it gave.
 *
 * Values from memory: 50,000 h to 70 % is what diodes are usually sold by (measured as in ANSI/IES LM-80); laser diodes are
 * taken to fall to half in 10,000 h.
 */
const LIGHT_LIFE = { led: { hours: 50_000, left: 0.7 }, laser: { hours: 10_000, left: 0.5 } } as const;

/** Share of the time that a pulsed light is lit: one of two lightings, and one of four with three colours. [-] */
const LIT_SHARE = { steady: 1, pulsed: 1 / 2, colours: 1 / 4 } as const;

const HOURS_PER_MONTH = (365.25 * 24) / 12;

/**
 * How far a cell's resistance may creep for good.
 *
 * @source photoresistor: ±20 % after temperature cycling (data sheets); a silicon sensor does nothing of the kind.
 */
const CREEP = { photoresistor: 0.2, other: 0 } as const;

function isCell(detector: Detector): detector is Extract<Detector, { kind: 'photoresistor' }> {
  return detector.kind === 'photoresistor';
}

/** Factors on a sensor on the coldest and the hottest day, thresholds being measured between. [-], n = 2 */
export function temperatureFactors({ spec }: HeadPlan): readonly number[] {
  const perK = isCell(spec.detector) ? SENSOR_PER_K.photoresistor : SENSOR_PER_K.other;
  const { colder, hotter } = kelvinRange(spec);
  return [1 + perK * colder, 1 + perK * hotter].map((factor) => Math.max(0.01, factor));
}

/** The same for red, green and blue lights. [-], n = 2 of 3 */
export function temperatureColours({ spec }: HeadPlan): readonly Rgb[] {
  const { colder, hotter } = kelvinRange(spec);
  return [colder, hotter].map((kelvin): Rgb => {
    const [red, green, blue] = COLOURS_PER_K.map((perK) => Math.max(0.01, 1 + perK * kelvin));
    return [red!, green!, blue!];
  });
}

/** Hours that a light is lit between two settings of the thresholds. [h] */
export function litHours({ spec, circuit }: HeadPlan): number {
  const { monthsBetweenSettings } = spec.climate ?? CLIMATE_DEFAULT;
  const lit = spec.detector.kind === 'colour-sensor' ? LIT_SHARE.colours : LIT_SHARE[circuit.emitters];
  return monthsBetweenSettings * HOURS_PER_MONTH * lit;
}

/** Light that is left at the end of that time, as a share of what there was. [-] */
export function agedLight(head: HeadPlan): number {
  const { hours, left } = LIGHT_LIFE[head.spec.light.kind];
  return left ** (litHours(head) / hours);
}

/** Factor on a sensor that dimmer light makes: on the current, or on a cell's resistance. [-] @source R ∝ E^-γ */
export function dimmedFactor({ spec }: HeadPlan, light: number): number {
  return isCell(spec.detector) ? light ** -spec.detector.gamma : light;
}

/** Largest factor by which a sensor has crept. [-] */
export function creepFactor({ spec }: HeadPlan): number {
  return 1 + (isCell(spec.detector) ? CREEP.photoresistor : CREEP.other);
}
