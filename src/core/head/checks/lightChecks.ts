import type { Problem } from '../../error/index.ts';
import type { Findings } from './circuitChecks.ts';
import type { HeadSpec } from '../headSpec.ts';

/**
 * A visible beam of 1 mW at most is Class 2: the eye closes before harm.
 *
 * @source IEC 60825-1: Class 2 is 400 to 700 nm, 1 mW continuous; invisible light makes nobody blink.
 */
const SAFE_BEAM = { mostMw: 1, fromNm: 400, toNm: 700 } as const;
/** Cadmium sulphide answers little beyond this. Value from memory. [nm] */
const PHOTORESISTOR_BLIND_NM = 800;

/** Beams that can hurt and lights that the detector does not see. */
export function lightFindings({ light, detector }: HeadSpec): Findings {
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  if (light.kind === 'laser' && !isSafeBeam(light))
    (light.acceptHazard ? warnings : problems).push(beamProblem(light));
  if (detector.kind === 'photoresistor' && light.wavelengthNm > PHOTORESISTOR_BLIND_NM) {
    warnings.push({
      code: 'head/blind-to-light',
      what: 'A photoresistor sees next to nothing of infrared light.',
      where: 'head.light.wavelengthNm',
      got: `${light.wavelengthNm} nm`,
      allowed: `up to ${PHOTORESISTOR_BLIND_NM} nm; green near 540 nm is seen best`,
      fix: 'Use a green LED of 525 nm, or a phototransistor.',
    });
  }
  return { problems, warnings };
}

function isSafeBeam({ powerMw, wavelengthNm }: { powerMw: number; wavelengthNm: number }): boolean {
  const { mostMw, fromNm, toNm } = SAFE_BEAM;
  return powerMw <= mostMw && wavelengthNm >= fromNm && wavelengthNm <= toNm;
}

function beamProblem(light: Extract<HeadSpec['light'], { kind: 'laser' }>): Problem {
  return {
    code: 'head/laser-hazard',
    what: 'This laser beam can hurt an eye before it blinks, or is not seen at all.',
    where: 'head.light',
    got: `${light.powerMw} mW at ${light.wavelengthNm} nm`,
    allowed: `up to ${SAFE_BEAM.mostMw} mW from ${SAFE_BEAM.fromNm} to ${SAFE_BEAM.toNm} nm (Class 2 of IEC 60825-1)`,
    fix: light.acceptHazard
      ? 'You have accepted this beam: box it in so that no eye can come into it, keep to the laser cautions of the build ' +
        'sheet and the rules that hold where you are, or use an LED, which needs neither.'
      : 'Use an LED, or a laser of 1 mW at 650 nm; set head.light.acceptHazard to true only after reading the laser ' +
        'cautions and the rules that hold where you are.',
  };
}
