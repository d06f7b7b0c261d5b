import { radToDeg, type Degrees } from '../../units/index.ts';

/**
 * Error of an angle chip whose middle lies beside the axis of its magnet.
 *
 * The magnet is taken for a point dipole and the chip for a point; a wide magnet is kinder, so this is an upper bound.
 *
 * @param offMm - From the chip's middle to the axis. [mm], 0 or more
 * @param gapMm - From the magnet to the chip. [mm], above 0
 * @returns Largest error, twice a turn either way; about 1.5 (off/gap)² radians. [deg]
 * @source derived: q = 1 − 3e²/(e² + z²) is the field across the offset over that along it; asin((1 − q)/(1 + q)).
 * @check test/published/magnet-dipole (0.25 mm at 2 mm: 1.354 degrees)
 */
export function offCentreErrorDeg(offMm: number, gapMm: number): Degrees {
  const q = 1 - (3 * offMm ** 2) / (offMm ** 2 + gapMm ** 2);
  // Beyond a gap's half the field across turns over, and the chip no longer follows the magnet.
  return q <= 0 ? 180 : radToDeg(Math.asin((1 - q) / (1 + q)));
}

/**
 * Error that a foreign field adds at worst, standing square to the magnet's.
 *
 * @param strayMt - Foreign field at the chip. [mT]
 * @param magnetMt - Field of the magnet at the chip. [mT], above 0
 * @source derived: two fields add; the sum turns by asin(stray/magnet) at most.
 * @check test/published/magnet-dipole (1 mT on 40 mT: 1.43 degrees)
 */
export function strayErrorDeg(strayMt: number, magnetMt: number): Degrees {
  return strayMt >= magnetMt ? 180 : radToDeg(Math.asin(strayMt / magnetMt));
}

/**
 * Foreign field that adds just so much error. [mT]
 *
 * @param errorDeg - Error to spend on it. [deg], 0..90
 * @param magnetMt - Field of the magnet at the chip. [mT]
 */
export function strayFieldForMt(errorDeg: Degrees, magnetMt: number): number {
  return magnetMt * Math.sin((Math.max(0, Math.min(90, errorDeg)) * Math.PI) / 180);
}
