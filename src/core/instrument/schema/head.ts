import * as z from 'zod';
import { detectorDefaults, type Rgb } from '../../head/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { choice, derived, measure, nullable } from './field.ts';

const { photoresistor, phototransistor } = detectorDefaults;
const slotPair = detectorDefaults['slot-pair'];
const reflectancePair = detectorDefaults['reflectance-pair'];
const colourSensor = detectorDefaults['colour-sensor'];

const spread = { meaning: 'Difference from part to part, as a standard deviation in fractions of the value.' };
const rise = { meaning: 'Time to 63 % of the lit value when light comes.' };
const fall = { meaning: 'Time to 37 % of the lit value when light goes.' };

/** Fields of a sensor whose current grows with light. */
function currents(standard: typeof phototransistor | typeof slotPair | typeof reflectancePair) {
  return {
    litMa: measure('mA', 1e-4, 100, {
      meaning: 'Current with the window fully open, or over the lightest mark, on a multimeter.',
    }).default(standard.litMa),
    darkMa: measure('mA', 0, 100, {
      meaning: 'Current behind solid land, or over the darkest mark, on a multimeter; less than litMa.',
    }).default(standard.darkMa),
    saturationV: measure('V', 0, 3, {
      meaning: 'Collector voltage below which the current no longer follows the light.',
    }).default(standard.saturationV),
    riseMs: measure('ms', 0, 5000, rise).default(standard.riseMs),
    fallMs: measure('ms', 0, 5000, fall).default(standard.fallMs),
    spread: measure('-', 0, 2, spread).default(standard.spread),
  };
}

const counts = z.number().min(0).max(65_535).meta({ unit: 'counts' });
const rgb = z.array(counts).length(3).transform(([red, green, blue]): Rgb => [red!, green!, blue!]);

const detectorSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('photoresistor').meta({ description: 'Cadmium sulphide cell: resistance falls with light.' }),
      litOhm: measure('ohm', 1, 1e7, {
        meaning: 'Resistance with the window fully open, on a multimeter.',
      }).default(photoresistor.litOhm),
      darkOhm: measure('ohm', 10, 1e9, {
        meaning: 'Resistance behind solid land, on a multimeter; more than litOhm.',
      }).default(photoresistor.darkOhm),
      gamma: measure('-', 0.2, 1.2, {
        meaning: 'Slope of the logarithm of resistance against the logarithm of light.',
      }).default(photoresistor.gamma),
      riseMs: measure('ms', 0, 5000, rise).default(photoresistor.riseMs),
      fallMs: measure('ms', 0, 5000, fall).default(photoresistor.fallMs),
      spread: measure('-', 0, 2, spread).default(photoresistor.spread),
    }),
    z.strictObject({
      kind: z.literal('phototransistor').meta({ description: 'Silicon transistor: current grows with light.' }),
      ...currents(phototransistor),
    }),
    z.strictObject({
      kind: z.literal('slot-pair').meta({
        description: 'Light and transistor facing each other in one housing, the disc turning in its slot.',
      }),
      ...currents(slotPair),
    }),
    z.strictObject({
      kind: z.literal('reflectance-pair').meta({
        description: 'Light and transistor side by side, seeing what the disc sends back: two marks, or three greys.',
      }),
      ...currents(reflectancePair),
      middleMa: nullable(
        measure('mA', 1e-4, 100, {
          meaning: 'Current over the middle grey; then level 0 is the darkest grey and level 2 the lightest.',
        }),
        'a disc of two marks',
      ),
    }),
    z.strictObject({
      kind: z.literal('colour-sensor').meta({
        description: 'A sensor beside lights of red, green and blue that are lit in turn: tells three colours apart.',
      }),
      marksRgbCounts: z
        .array(rgb)
        .length(3)
        .transform(([zero, one, two]): [Rgb, Rgb, Rgb] => [zero!, one!, two!])
        .default(colourSensor.marksRgbCounts.map((mark): Rgb => [...mark]) as [Rgb, Rgb, Rgb])
        .meta({
          description: 'Red, green and blue counts of the marks of level 0, 1 and 2, each less the counts without light.',
          unit: 'counts',
          defaultRule: JSON.stringify(colourSensor.marksRgbCounts),
        }),
      rejectRatio: measure('-', 0.05, 0.95, {
        meaning: 'A reading counts when the nearest colour is at most this share as far off as the second nearest.',
      }).default(colourSensor.rejectRatio),
      leastSumCounts: measure('counts', 0, 10_000, {
        meaning: 'Red, green and blue together below which nothing is judged.',
      }).default(colourSensor.leastSumCounts),
      riseMs: measure('ms', 0, 5000, rise).default(colourSensor.riseMs),
      fallMs: measure('ms', 0, 5000, fall).default(colourSensor.fallMs),
      spread: measure('-', 0, 2, spread).default(colourSensor.spread),
    }),
  ])
  .meta({ description: 'Light sensor of every channel.' });

const lightSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('led').meta({ description: 'Light-emitting diode.' }),
      currentMa: measure('mA', 0.1, 100, { meaning: 'Current through one diode.' }).default(10),
      wavelengthNm: derived(
        measure('nm', 350, 1100, { meaning: 'Wavelength where the diode is brightest.' }),
        defaultRules.ledWavelength,
      ),
    }),
    z.strictObject({
      kind: z.literal('laser').meta({ description: 'Laser module. Never look into the beam or its reflection.' }),
      powerMw: measure('mW', 0.01, 5, {
        meaning: 'Power of the beam, measured; do not trust the sticker. Above 1 mW only with acceptHazard.',
      }).default(1),
      wavelengthNm: measure('nm', 350, 1100, {
        meaning: 'Wavelength of the beam. Outside 400 to 700 nm, where the eye does not blink, only with acceptHazard.',
      }).default(650),
      acceptHazard: z.boolean().default(false).meta({
        description: 'I have read the laser cautions and choose a beam beyond 1 mW or outside 400 to 700 nm.',
      }),
    }),
  ])
  .meta({ description: 'Light source of every channel.' });

const apertureSchema = z
  .discriminatedUnion('shape', [
    z.strictObject({
      shape: z.literal('slit').meta({ description: 'A rectangular opening.' }),
      widthMm: measure('mm', 0.05, 20, { meaning: 'Width along the track.' }).default(1.2),
      lengthMm: measure('mm', 0.05, 50, { meaning: 'Length across the track.' }).default(2),
    }),
    z.strictObject({
      shape: z.literal('round').meta({ description: 'A round opening.' }),
      diameterMm: measure('mm', 0.05, 20, { meaning: 'Diameter of the opening.' }).default(1.2),
    }),
    z.strictObject({
      shape: z.literal('gaussian').meta({ description: 'A bare beam without an opening.' }),
      radiusMm: measure('mm', 0.02, 10, { meaning: 'Where the beam has fallen to 1/e² of its middle.' }).default(0.5),
    }),
  ])
  .meta({ description: 'What part of the disc one channel sees at once.' });

const penumbraSchema = z
  .strictObject({
    sourceMm: measure('mm', 0, 50, { meaning: 'Size of the light along the track.', example: 3 }),
    sourceToDiscMm: measure('mm', 0.1, 1000, { meaning: 'From the light to the disc.', example: 10 }),
    discToApertureMm: measure('mm', 0, 100, { meaning: 'From the disc to the opening over the sensor.', example: 2 }),
  })
  .meta({ description: 'Where a light of some size stands; the larger and nearer, the softer the edges it throws.' });

const leakSchema = z
  .strictObject({
    transmittedShare: measure('-', 0, 0.9, {
      meaning: 'Light that a piece of the material lets through, as a share of that without it.',
      example: 0.05,
    }),
    measuredMm: measure('mm', 0.05, 20, { meaning: 'Thickness of that piece.', example: 2 }),
  })
  .meta({ description: 'What the material lets through, measured with your own light and sensor.' });

const climateSchema = z
  .strictObject({
    coldestC: measure('degC', -60, 60, { meaning: 'Coldest that the head gets where it stands.' }).default(-10),
    hottestC: measure('degC', -40, 90, { meaning: 'Hottest that it gets, in the sun.' }).default(40),
    monthsBetweenSettings: measure('-', 0, 240, {
      meaning: 'Months from one measurement of the thresholds to the next; lights age meanwhile.',
    }).default(12),
  })
  .meta({ description: 'What the site does to sensors and lights; thresholds are taken to be measured at 20 degC.' });

/** The fixed part facing the disc. */
export const headSchema = z
  .strictObject({
    detector: detectorSchema.prefault({ kind: 'photoresistor' }),
    light: lightSchema.prefault({ kind: 'led' }),
    aperture: apertureSchema.prefault({ shape: 'slit' }),
    tangentialSdMm: measure('mm', 0, 5, {
      meaning: 'How far a channel sits from its place along the track, as a standard deviation.',
    }).default(0.2),
    radialSdMm: measure('mm', 0, 5, {
      meaning: 'How far a channel sits from its place across the track, as a standard deviation.',
    }).default(0.2),
    penumbra: nullable(penumbraSchema, 'light from so far away that its size does not count'),
    leak: nullable(leakSchema, 'a dark value measured behind the disc itself'),
    daylightShare: measure('-', 0, 10, {
      meaning: 'Daylight that reaches a sensor at noon, as a share of its light through a window.',
    }).default(0),
    tiltSdDeg: measure('deg', 0, 10, {
      meaning: 'How far the disc tilts on its shaft, as a standard deviation in each of two directions.',
    }).default(0.5),
    shaftPlaySdMm: measure('mm', 0, 2, {
      meaning: 'How far the shaft moves in its bearing, as a standard deviation in each of two directions.',
    }).default(0.02),
    climate: climateSchema.prefault({}),
    northSdDeg: measure('deg', 0, 45, {
      meaning: 'How truly the head is set to north, as a standard deviation; 0 where north is set after a recorded turn.',
    }).default(0),
    edgeCorrection: choice(['none', 'drawn'], {
      meaning:
        'Whether windows are drawn narrower by what a photoresistor adds to them (drawn), which calls a channel lit ' +
        'before half of its spot is open.',
    }).default('none'),
    patternedFace: choice(['up', 'down'], {
      meaning: 'Which way the patterned face looks; it decides whether headings grow with the disc angle or against it.',
    }).default('up'),
    staggerDeg: measure('deg', 0, 90, {
      meaning:
        'Turns every second channel this far beside its neighbours, its track with it, so that parts have room; 0 for ' +
        'one line. Only for codes with a track for each channel.',
    }).default(0),
  })
  .meta({ description: 'The fixed part facing the disc: lights and sensors.' });
