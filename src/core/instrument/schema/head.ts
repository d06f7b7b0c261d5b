import * as z from 'zod';
import { detectorDefaults } from '../../head/index.ts';
import { defaultRules } from './derivedDefaults.ts';
import { choice, derived, measure } from './field.ts';

const { photoresistor, phototransistor } = detectorDefaults;

const spread = { meaning: 'Difference from part to part, as a standard deviation in fractions of the value.' };
const rise = { meaning: 'Time to 63 % of the lit value when light comes.' };
const fall = { meaning: 'Time to 37 % of the lit value when light goes.' };

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
      litMa: measure('mA', 1e-4, 100, {
        meaning: 'Current with the window fully open, on a multimeter.',
      }).default(phototransistor.litMa),
      darkMa: measure('mA', 0, 100, {
        meaning: 'Current behind solid land, on a multimeter; less than litMa.',
      }).default(phototransistor.darkMa),
      saturationV: measure('V', 0, 3, {
        meaning: 'Collector voltage below which the current no longer follows the light.',
      }).default(phototransistor.saturationV),
      riseMs: measure('ms', 0, 5000, rise).default(phototransistor.riseMs),
      fallMs: measure('ms', 0, 5000, fall).default(phototransistor.fallMs),
      spread: measure('-', 0, 2, spread).default(phototransistor.spread),
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
