import type { Finding, PartialDraft } from './finding.ts';

type Head = NonNullable<PartialDraft['head']>;

/** Light must change what the sensor does, and the right way round. */
function contrastRule({ detector }: Head): readonly Finding[] {
  const code = 'instrument/light-has-no-effect';
  if (detector.kind === 'photoresistor') {
    const { litOhm, darkOhm } = detector;
    if (litOhm < darkOhm) return [];
    return [
      {
        code,
        fields: ['head.detector.litOhm', 'head.detector.darkOhm'],
        what: 'The resistance in light is not below the resistance in the dark.',
        got: `litOhm ${litOhm} ohm, darkOhm ${darkOhm} ohm`,
        allowed: `litOhm below ${darkOhm} ohm`,
        fix:
          litOhm > darkOhm
            ? 'Exchange the two values.'
            : 'Measure both again: window open, then behind solid land.',
      },
    ];
  }
  if (detector.kind === 'colour-sensor') return [];
  const { litMa, darkMa } = detector;
  if (litMa > darkMa) return [];
  return [
    {
      code,
      fields: ['head.detector.litMa', 'head.detector.darkMa'],
      what: 'The current in light is not above the current in the dark.',
      got: `litMa ${litMa} mA, darkMa ${darkMa} mA`,
      allowed: `litMa above ${darkMa} mA`,
      fix:
        litMa < darkMa
          ? 'Exchange the two values.'
          : 'Measure both again: window open, then behind solid land.',
    },
  ];
}

/**
 * Largest power at which the blink of an eye protects, and the wavelengths where it blinks. [mW], [nm]
 *
 * @source IEC 60825-1, Class 2: 400 to 700 nm, at most 1 mW.
 */
const BLINK = { mostMw: 1, fromNm: 400, toNm: 700 } as const;

/** A beam that a blink does not protect from must be chosen in so many words. */
function laserRule({ light }: Head): readonly Finding[] {
  if (light.kind !== 'laser' || light.acceptHazard) return [];
  const { powerMw, wavelengthNm } = light;
  const isSeen = wavelengthNm >= BLINK.fromNm && wavelengthNm <= BLINK.toNm;
  if (powerMw <= BLINK.mostMw && isSeen) return [];
  const field = powerMw > BLINK.mostMw ? 'head.light.powerMw' : 'head.light.wavelengthNm';
  return [
    {
      code: 'instrument/laser-hazard',
      fields: [field, 'head.light.powerMw', 'head.light.wavelengthNm', 'head.light.acceptHazard'],
      what: 'The blink of an eye does not protect from this laser; it can blind before anyone notices.',
      got: `${powerMw} mW at ${wavelengthNm} nm`,
      allowed: `at most ${BLINK.mostMw} mW between ${BLINK.fromNm} and ${BLINK.toNm} nm, or acceptHazard: true after reading the cautions`,
      fix: 'Use an LED (head.light.kind: led), or a laser of 1 mW or less between 400 and 700 nm.',
    },
  ];
}

/** The coldest must not be hotter than the hottest. */
function climateRule({ climate }: Head): readonly Finding[] {
  const { coldestC, hottestC } = climate;
  if (coldestC <= hottestC) return [];
  return [
    {
      code: 'instrument/cold-above-hot',
      fields: ['head.climate.coldestC', 'head.climate.hottestC'],
      what: 'The coldest that the head gets is hotter than the hottest.',
      got: `coldestC ${coldestC} degC, hottestC ${hottestC} degC`,
      allowed: `coldestC up to ${hottestC} degC`,
      fix: `Exchange the two: coldestC ${hottestC}, hottestC ${coldestC}.`,
    },
  ];
}

/** What `head` says, taken together. */
export function headRules({ head }: PartialDraft): readonly Finding[] {
  return head ? [...contrastRule(head), ...laserRule(head), ...climateRule(head)] : [];
}
