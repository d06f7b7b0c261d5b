import type { Board } from '../../boards/index.ts';
import type { Problem } from '../../error/index.ts';
import { showNumber } from '../../units/index.ts';
import type { Findings } from './findings.ts';
import type { HeadSpec } from '../headSpec.ts';

/**
 * A visible beam of 1 mW at most is Class 2: the eye closes before harm.
 *
 * @source IEC 60825-1: Class 2 is 400 to 700 nm, 1 mW continuous; invisible light makes nobody blink.
 */
const SAFE_BEAM = { mostMw: 1, fromNm: 400, toNm: 700 } as const;
/** Cadmium sulphide answers little beyond this. Value from memory. [nm] */
const PHOTORESISTOR_BLIND_NM = 800;

/** Current that the usual 5 mm diode bears for long. Common practice, no source; its own sheet decides. [mA] */
const DIODE_MOST_MA = 30;
/** Current that a board's supply pin gives beyond the board's own. @source USB 2.0, 7.2.1: 500 mA a device. [mA] */
const SUPPLY_MOST_MA = 500;

/** Beams that can hurt, lights that the detector does not see, and currents that parts do not bear. */
export function lightFindings({ light, detector }: HeadSpec, channels: number, board: Board): Findings {
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
  if (light.kind === 'led') warnings.push(...currentWarnings(light.currentMa, channels, board));
  return { problems, warnings };
}

/** One diode more than it bears, or all together more than the supply of the board gives. */
function currentWarnings(currentMa: number, channels: number, { currentMa: own }: Board): Problem[] {
  const warnings: Problem[] = [];
  if (currentMa > DIODE_MOST_MA) {
    warnings.push({
      code: 'head/diode-current',
      what: 'The usual diode does not bear that current for long.',
      where: 'head.light.currentMa',
      got: `${showNumber(currentMa, 1)} mA through each diode`,
      allowed: `${DIODE_MOST_MA} mA (common practice; the sheet of your diode decides)`,
      fix: `Set head.light.currentMa to 20, or take a diode made for ${showNumber(currentMa, 1)} mA and a resistor of the power it needs.`,
    });
  }
  const allMa = channels * currentMa;
  if (allMa + own.awake > SUPPLY_MOST_MA) {
    const each = Math.floor((10 * (SUPPLY_MOST_MA - own.awake)) / channels) / 10;
    warnings.push({
      code: 'head/supply-current',
      what: "The lights together take more than a board's supply gives.",
      where: 'head.light.currentMa',
      got: `${channels} diodes of ${showNumber(currentMa, 1)} mA and ${showNumber(own.awake, 1)} mA for the board, ${showNumber(allMa + own.awake, 1)} mA together`,
      allowed: `${SUPPLY_MOST_MA} mA, what a USB port gives`,
      fix: `Set head.light.currentMa to ${showNumber(Math.min(each, 20), 1)}, or feed the lights from a supply of their own.`,
    });
  }
  return warnings;
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
