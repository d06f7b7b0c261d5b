import type { Board } from '../../boards/index.ts';
import type { CircuitSpec, Detector } from '../headSpec.ts';

/** How light on one channel becomes counts, for a part and a resistor that may differ from the nominal ones. */
export interface Signal {
  /** Counts of a full scale: two to the converter's bits. [counts] */
  readonly scaleCounts: number;
  /** True where light gives high counts, false where it gives low ones. */
  readonly litIsHigh: boolean;
  /**
   * Counts at a light level, before rounding down.
   *
   * @param light - 0 behind solid land, 1 with the window fully open. [-]
   * @param part - Factor on the detector's resistance or current, 1 = nominal. [-]
   * @param resistor - Factor on the fixed resistor, 1 = nominal. [-]
   */
  counts(light: number, part: number, resistor: number): number;
  /** Light level that gives those counts; outside 0..1, even infinite, where the channel never reaches them. [-] */
  light(counts: number, part: number, resistor: number): number;
  /** What follows the light with the detector's lag: conductance [mS] or current [mA] of a nominal part. */
  drive(light: number): number;
  /** The light that a drive stands for: `drive` turned round; 0 for a part that light does nothing to. [-] */
  lightOfDrive(drive: number): number;
}

/**
 * Signal of a detector in a divider read by a board's converter, supply and reference being the same.
 *
 * @param detector - Light sensor of one channel.
 * @param resistorOhm - Fixed resistor. [ohm], > 0
 * @param sensorTo - Where the sensor sits; `ground` turns the counts round.
 * @source photoresistor: R = R_lit (E/E_lit)^-γ, CdS data sheets; divider: fraction F/(F + R) of the supply.
 * @check test/published/divider
 */
export function signalOf(
  detector: Detector,
  resistorOhm: number,
  sensorTo: CircuitSpec['sensorTo'],
  board: Board,
): Signal {
  const scaleCounts = 2 ** board.converterBits;
  const link = linkOf(detector, resistorOhm, board, scaleCounts);
  const towards = (fraction: number): number => (sensorTo === 'supply' ? fraction : 1 - fraction);
  return {
    scaleCounts,
    litIsHigh: sensorTo === 'supply',
    counts: (light, part, resistor) => scaleCounts * towards(link.fraction(light, part, resistor)),
    light: (counts, part, resistor) => link.light(towards(counts / scaleCounts), part, resistor),
    drive: link.drive,
    lightOfDrive: link.lightOfDrive,
  };
}

/** Light to fraction of the supply, with the sensor to the supply. */
interface Link {
  fraction(light: number, part: number, resistor: number): number;
  light(fraction: number, part: number, resistor: number): number;
  drive(light: number): number;
  lightOfDrive(drive: number): number;
}

function linkOf(detector: Detector, resistorOhm: number, board: Board, scaleCounts: number): Link {
  if (detector.kind === 'photoresistor') return photoresistorLink(detector, resistorOhm);
  if (detector.kind !== 'colour-sensor') {
    return currentLink(
      detector,
      resistorOhm / 1000 / board.supplyV,
      1 - detector.saturationV / board.supplyV,
    );
  }
  // A colour sensor's counts were measured on the converter: the strongest and the weakest of them stand for lit and dark.
  const counts = detector.marksRgbCounts.flat();
  const litMa = Math.max(...counts) / scaleCounts;
  return currentLink({ litMa, darkMa: Math.min(...counts) / scaleCounts }, 1, 1);
}

function photoresistorLink(detector: Detector & { kind: 'photoresistor' }, resistorOhm: number): Link {
  const { litOhm, darkOhm, gamma } = detector;
  // Illumination behind land as a share of that in a window: what makes the dark resistance.
  const floor = (litOhm / darkOhm) ** (1 / gamma);
  const ohm = (light: number): number => litOhm * (floor + light * (1 - floor)) ** -gamma;
  return {
    fraction: (light, part, resistor) => {
      const fixed = resistorOhm * resistor;
      return fixed / (fixed + ohm(light) * part);
    },
    light: (fraction, part, resistor) => {
      if (fraction <= 0) return -Infinity;
      if (fraction >= 1) return Infinity;
      // Lit and dark alike: no light ever reaches those counts.
      if (floor >= 1) return Infinity;
      const seen = resistorOhm * resistor * (1 / fraction - 1);
      return ((seen / (litOhm * part)) ** (-1 / gamma) - floor) / (1 - floor);
    },
    drive: (light) => 1000 / ohm(light),
    lightOfDrive: (drive) =>
      floor >= 1 ? 0 : ((1000 / (drive * litOhm)) ** (-1 / gamma) - floor) / (1 - floor),
  };
}

/** A current through a resistor, up to a ceiling. `perMa` is the fraction of the supply that 1 mA makes. */
function currentLink(
  { litMa, darkMa }: { readonly litMa: number; readonly darkMa: number },
  perMa: number,
  ceiling: number,
): Link {
  const ma = (light: number): number => darkMa + light * (litMa - darkMa);
  return {
    fraction: (light, part, resistor) => Math.min(ceiling, ma(light) * part * perMa * resistor),
    light: (fraction, part, resistor) =>
      fraction >= ceiling || !(litMa > darkMa)
        ? Infinity
        : (fraction / (perMa * resistor * part) - darkMa) / (litMa - darkMa),
    drive: ma,
    lightOfDrive: (drive) => (litMa === darkMa ? 0 : (drive - darkMa) / (litMa - darkMa)),
  };
}
