import type { DiscPlan } from '../../disc/index.ts';
import type { Problem } from '../../error/index.ts';
import { showMm, showNumber } from '../../units/index.ts';
import type { CircuitSpec, Detector, HeadSpec, Leak } from '../headSpec.ts';

/** A measurement is carried no farther than this from the thickness it was made at. [-] */
const FARTHEST = 2;

/**
 * Light that a land of some thickness lets through, from one measurement near it.
 *
 * @param leak - What was measured.
 * @param thicknessMm - Of the disc. [mm]
 * @returns Share of the light through a window. [-]
 * @source T = T₀^(t/t₀). Scattering plastic does not follow it far (Hamp, Logan & Shaw, Appl. Opt. 60 (2021) 6573), hence no
 * farther than twice or half the thickness measured.
 * @check src/core/head/light/background.test.ts
 */
export function leakShare({ transmittedShare, measuredMm }: Leak, thicknessMm: number): number {
  return transmittedShare ** (thicknessMm / measuredMm);
}

/** A disc too thick or too thin for what was measured. */
export function leakProblems({ leak = null }: HeadSpec, { spec: { thicknessMm } }: DiscPlan): Problem[] {
  if (leak === null) return [];
  const ratio = thicknessMm / leak.measuredMm;
  if (ratio >= 1 / FARTHEST && ratio <= FARTHEST) return [];
  return [
    {
      code: 'head/leak-far-off',
      what: 'The leak was measured at another thickness, and plastic that scatters light follows no law that far.',
      where: 'head.leak.measuredMm',
      got: `${showMm(leak.measuredMm)}, for a disc of ${showMm(thicknessMm)}`,
      allowed: `${showMm(thicknessMm / FARTHEST)} to ${showMm(thicknessMm * FARTHEST)} for this disc`,
      fix: `Measure a piece ${showMm(thicknessMm)} thick and set head.leak.measuredMm to ${showNumber(thicknessMm, 3)}.`,
    },
  ];
}

/**
 * A sensor with the light that reaches it past the disc: through the lands, and from the sky.
 *
 * Both only move the two values that a multimeter shows, so that all the rest of the circuit stays as it is.
 *
 * @param detector - As measured behind something dense, in the dark.
 * @param light - Light through a land and daylight, as shares of the light through a window. [-]
 */
export function detectorBehind(
  detector: Detector,
  { leak, daylight }: { readonly leak: number; readonly daylight: number },
): Detector {
  if (leak === 0 && daylight === 0) return detector;
  if (detector.kind === 'colour-sensor') return detector;
  if (detector.kind === 'photoresistor') {
    const { litOhm, darkOhm, gamma } = detector;
    const floor = (litOhm / darkOhm) ** (1 / gamma);
    const ohm = (light: number): number => litOhm * light ** -gamma;
    return { ...detector, litOhm: ohm(1 + daylight), darkOhm: ohm(floor + leak * (1 - floor) + daylight) };
  }
  const { litMa, darkMa } = detector;
  const more = (share: number): number => share * (litMa - darkMa);
  const moved = { litMa: litMa + more(daylight), darkMa: darkMa + more(leak + daylight) };
  if (detector.kind !== 'reflectance-pair' || detector.middleMa === null) return { ...detector, ...moved };
  return { ...detector, ...moved, middleMa: detector.middleMa + more(daylight) };
}

/** The sensor of a head over its disc; lights that are pulsed have the daylight taken off. */
export function detectorOver(
  spec: HeadSpec,
  disc: DiscPlan,
  circuit: Pick<CircuitSpec, 'emitters'>,
): Detector {
  const leak = spec.leak ? leakShare(spec.leak, disc.spec.thicknessMm) : 0;
  const daylight = circuit.emitters === 'pulsed' ? 0 : (spec.daylightShare ?? 0);
  return detectorBehind(spec.detector, { leak, daylight });
}
