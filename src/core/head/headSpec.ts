/** Light sensor of one channel. Resistances and currents are those a maker measures on a multimeter. */
export type Detector =
  | {
      readonly kind: 'photoresistor';
      /** Resistance with the window fully open. [ohm] */
      readonly litOhm: number;
      /** Resistance behind solid land. [ohm] */
      readonly darkOhm: number;
      /** Slope of log resistance against log light. [-] */
      readonly gamma: number;
      /** Time constant of conductance when light comes. [ms] */
      readonly riseMs: number;
      /** Time constant of conductance when light goes. [ms] */
      readonly fallMs: number;
      /** Part-to-part standard deviation, as a fraction of the value. [-] */
      readonly spread: number;
    }
  | {
      readonly kind: 'phototransistor';
      /** Current with the window fully open. [mA] */
      readonly litMa: number;
      /** Current behind solid land. [mA] */
      readonly darkMa: number;
      /** Collector voltage below which the current no longer follows the light. [V] */
      readonly saturationV: number;
      readonly riseMs: number;
      readonly fallMs: number;
      readonly spread: number;
    };

/** Light source of the channels. */
export type Light =
  | { readonly kind: 'led'; readonly currentMa: number; readonly wavelengthNm: number }
  | {
      readonly kind: 'laser';
      readonly powerMw: number;
      readonly wavelengthNm: number;
      /** The maker has read the laser cautions and chosen a beam beyond the safe default. */
      readonly acceptHazard: boolean;
    };

/** What part of the disc one channel sees at once; how soft an edge looks. */
export type Aperture =
  /** `widthMm` along the track, `lengthMm` across it. */
  | { readonly shape: 'slit'; readonly widthMm: number; readonly lengthMm: number }
  | { readonly shape: 'round'; readonly diameterMm: number }
  /** `radiusMm` is where the beam has fallen to 1/e² of its middle. */
  | { readonly shape: 'gaussian'; readonly radiusMm: number };

/** The fixed part facing the disc. */
export interface HeadSpec {
  readonly detector: Detector;
  readonly light: Light;
  readonly aperture: Aperture;
  /** Standard deviation of a channel's place along its track. [mm] */
  readonly tangentialSdMm: number;
  /** Standard deviation of a channel's place across its track. [mm] */
  readonly radialSdMm: number;
  /** Which way the patterned face looks: it decides whether headings grow with the disc angle or against it. */
  readonly patternedFace: 'up' | 'down';
  /** Every second channel stands this far beside its neighbours, its track turned with it; 0 where left out. [deg] */
  readonly staggerDeg?: number;
}

/** How the controller reads the channels: converter, pins behind comparators, or a chip that gathers them. */
export type CircuitInput = 'direct' | 'digital' | 'multiplexer' | 'shift-register';

/** How light becomes counts. */
export interface CircuitSpec {
  readonly input: CircuitInput;
  /** Lights always on; or lit for each read, and what the sensors see without them is taken off. */
  readonly emitters: 'steady' | 'pulsed';
  /** Fixed resistor of every divider; `null` takes the recommended one. [ohm] */
  readonly resistorOhm: number | null;
  /** Tolerance of that resistor as sold, two standard deviations. [percent] */
  readonly resistorTolerancePercent: number;
  /** Where the sensor sits: to the supply, light gives high counts; to ground, low counts. */
  readonly sensorTo: 'supply' | 'ground';
  /** One pair of thresholds a channel, measured on the build; or one pair for all, from the drawing. */
  readonly thresholds: 'per-channel' | 'shared';
  /** Distance of the two thresholds; `null` takes the recommended one. [counts] */
  readonly hysteresisCounts: number | null;
  /** Standard deviation of one conversion. [counts] */
  readonly noiseCounts: number;
}
