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
 * reflective module's sheet; 0.4 V saturation is common practice. Values from memory: dark current behind the land, spread.
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
};

/**
 * Wavelength of an LED each kind of sensor sees well. [nm]
 *
 * @source cadmium sulphide cells peak at 540 ± 50 nm (data sheets); silicon pairs are sold at 950 nm.
 */
export const ledWavelengthDefaultsNm: Readonly<Record<Detector['kind'], number>> = {
  photoresistor: 525,
  phototransistor: 950,
};
