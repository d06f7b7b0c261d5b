import type { Detector } from './headSpec.ts';

/** The variant of `Detector` of one kind. */
type DetectorOf<Kind extends Detector['kind']> = Extract<Detector, { kind: Kind }>;

/**
 * A sensor of each kind until the maker has measured their own.
 *
 * @source photoresistor: gamma 0.7 and 20/30 ms are the usual data-sheet class of 5 mm cadmium sulphide cells (rise to
 * 63 % and fall to 37 % of lit conductance), peak 540 nm; 2 kohm lit and 200 kohm dark are a worked example.
 * A cell's resistance at 10 lx is only known within ±50 %, taken as two standard deviations.
 * Phototransistor: 0.5 mA is the lowest aperture class of a slotted pair at 950 nm; 15 us into 1 kohm from a
 * reflective module's sheet; 0.4 V saturation is common practice. Reflectance pair: 6 us into 100 ohm to 15 us into 1 kohm,
 * contrast of ten between white and matt black. Colour sensor: red, green and blue card with shares (.60, .22), (.25, .50)
 * and (.18, .30) of red and green, a worked example; a ratio of one half rejects what is not clearly one of them.
 * Values from memory: dark currents, spreads, floor of the sum.
 */
export const detectorDefaults: { readonly [Kind in Detector['kind']]: DetectorOf<Kind> } = {
  photoresistor: {
    kind: 'photoresistor',
    litOhm: 2_000,
    darkOhm: 200_000,
    gamma: 0.7,
    riseMs: 20,
    fallMs: 30,
    spread: 0.25,
  },
  phototransistor: {
    kind: 'phototransistor',
    litMa: 0.5,
    darkMa: 0.01,
    saturationV: 0.4,
    riseMs: 0.015,
    fallMs: 0.015,
    spread: 0.2,
  },
  'slot-pair': {
    kind: 'slot-pair',
    litMa: 0.5,
    darkMa: 0.005,
    saturationV: 0.4,
    riseMs: 0.015,
    fallMs: 0.015,
    spread: 0.2,
  },
  'reflectance-pair': {
    kind: 'reflectance-pair',
    litMa: 0.5,
    darkMa: 0.05,
    middleMa: null,
    saturationV: 0.4,
    riseMs: 0.02,
    fallMs: 0.02,
    spread: 0.2,
  },
  'colour-sensor': {
    kind: 'colour-sensor',
    marksRgbCounts: [
      [540, 198, 162],
      [225, 450, 225],
      [162, 270, 468],
    ],
    rejectRatio: 0.5,
    leastSumCounts: 60,
    riseMs: 0.02,
    fallMs: 0.02,
    spread: 0.1,
  },
};

/**
 * Wavelength of an LED each kind of sensor sees well. [nm]
 *
 * @source cadmium sulphide cells peak at 540 ± 50 nm (data sheets); silicon pairs are sold at 950 nm.
 */
export const ledWavelengthDefaultsNm: Readonly<Record<Detector['kind'], number>> = {
  photoresistor: 525,
  phototransistor: 950,
  'slot-pair': 950,
  'reflectance-pair': 950,
  'colour-sensor': 525,
};
