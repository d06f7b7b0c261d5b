/** How fast a sensor follows, and how much it differs from the next of its kind. */
interface SensorTraits {
  /** Time constant when light comes. [ms] */
  readonly riseMs: number;
  /** Time constant when light goes. [ms] */
  readonly fallMs: number;
  /** Part-to-part standard deviation, as a fraction of the value. [-] */
  readonly spread: number;
}

/** A sensor whose current grows with the light. */
interface CurrentSensor extends SensorTraits {
  /** Current with the window fully open, or over the lightest mark. [mA] */
  readonly litMa: number;
  /** Current behind solid land, or over the darkest mark. [mA] */
  readonly darkMa: number;
  /** Collector voltage below which the current no longer follows the light. [V] */
  readonly saturationV: number;
}

/** Red, green and blue that a mark sends back, as counts of the converter with the dark reading taken off. [counts] */
export type Rgb = readonly [red: number, green: number, blue: number];

/** Light sensor of one channel. Resistances and currents are those a maker measures on a multimeter. */
export type Detector =
  | (SensorTraits & {
      readonly kind: 'photoresistor';
      /** Resistance with the window fully open. [ohm] */
      readonly litOhm: number;
      /** Resistance behind solid land. [ohm] */
      readonly darkOhm: number;
      /** Slope of log resistance against log light. [-] */
      readonly gamma: number;
    })
  | (CurrentSensor & { readonly kind: 'phototransistor' })
  /** Light and sensor in one housing, the disc turning in the slot between. */
  | (CurrentSensor & { readonly kind: 'slot-pair' })
  /** Light and sensor side by side, seeing what the disc sends back. */
  | (CurrentSensor & {
      readonly kind: 'reflectance-pair';
      /** Current over the middle grey of a disc in three greys; `null` for a disc of two marks. [mA] */
      readonly middleMa: number | null;
    })
  /** A sensor lit in red, green and blue in turn; a mark is the colour whose measured shares of the three are nearest. */
  | (SensorTraits & {
      readonly kind: 'colour-sensor';
      /** What the marks of level 0, 1 and 2 send back. */
      readonly marksRgbCounts: readonly [Rgb, Rgb, Rgb];
      /** A reading counts when the nearest colour is at most this share as far off as the second nearest. [-] */
      readonly rejectRatio: number;
      /** Red, green and blue together below which nothing is judged. [counts] */
      readonly leastSumCounts: number;
    });

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

/** Where a light of some size stands: the shadow of an edge is as soft as the light is large. */
export interface Penumbra {
  /** Size of the light along the track. [mm] */
  readonly sourceMm: number;
  /** From the light to the disc. [mm] */
  readonly sourceToDiscMm: number;
  /** From the disc to the opening over the sensor. [mm] */
  readonly discToApertureMm: number;
}

/** One measurement of the material with the maker's own light and sensor. */
export interface Leak {
  /** Light that passes, as a share of that without material. [-] */
  readonly transmittedShare: number;
  /** Thickness that was measured. [mm] */
  readonly measuredMm: number;
}

/** The fixed part facing the disc. */
export interface HeadSpec {
  readonly detector: Detector;
  readonly light: Light;
  readonly aperture: Aperture;
  /** Standard deviation of a channel's place along its track. [mm] */
  readonly tangentialSdMm: number;
  /** Standard deviation of a channel's place across its track. [mm] */
  readonly radialSdMm: number;
  /** Size and distances of the light, where its edges are soft for them; parallel light where left out or `null`. */
  readonly penumbra?: Penumbra | null;
  /** What the disc's material lets through, where the dark value was measured behind something denser; nothing where `null`. */
  readonly leak?: Leak | null;
  /** Daylight that reaches a sensor, as a share of the light through a window; 0 where left out. [-] */
  readonly daylightShare?: number;
  /** Standard deviation of the disc's tilt on its shaft, in each of two directions; 0 where left out. [deg] */
  readonly tiltSdDeg?: number;
  /** Standard deviation of the shaft's place in its bearing, in each of two directions; 0 where left out. [mm] */
  readonly shaftPlaySdMm?: number;
  /** Standard deviation of the setting to north; 0 where left out. [deg] */
  readonly northSdDeg?: number;
  /** Whether windows are drawn narrower or wider by what thresholds away from half light add to them; not, where left out. */
  readonly edgeCorrection?: 'none' | 'drawn';
  /** Which way the patterned face looks: it decides whether headings grow with the disc angle or against it. */
  readonly patternedFace: 'up' | 'down';
  /** Temperatures and time that it must bear; -10 to 40 °C and a year where left out. */
  readonly climate?: Climate;
  /** Every second channel stands this far beside its neighbours, its track turned with it; 0 where left out. [deg] */
  readonly staggerDeg?: number;
}

/** How the controller reads the channels: converter, pins behind gates, a chip that gathers them, or all on one wire. */
export type CircuitInput = 'direct' | 'digital' | 'multiplexer' | 'shift-register' | 'ladder';

/** Resistors that bring all gates onto one wire. */
export interface LadderSpec {
  /** Equal steps of two values, R and 2R; or one resistor a channel, each twice the one before. */
  readonly kind: 'r-2r' | 'weighted';
  /** R, or the smallest of the weighted ones. [ohm] */
  readonly smallestOhm: number;
  /** Tolerance as sold: none is farther off. [percent] */
  readonly tolerancePercent: number;
  /** How far each may drift by itself. [ppm/K] */
  readonly ppmPerK: number;
}

/** What the site does to the head between two settings of its thresholds. */
export interface Climate {
  /** [°C] */
  readonly coldestC: number;
  /** [°C] */
  readonly hottestC: number;
  /** From one measurement of the thresholds to the next. [-] */
  readonly monthsBetweenSettings: number;
}

/** How light becomes counts. */
export interface CircuitSpec {
  readonly input: CircuitInput;
  /** What makes on and off of a sensor, where the controller does not measure; a comparator where left out. */
  readonly gate?: 'comparator' | 'schmitt';
  /** Resistors of the one wire; used with `ladder` only. */
  readonly ladder?: LadderSpec;
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
