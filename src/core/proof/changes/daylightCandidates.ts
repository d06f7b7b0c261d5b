import type { HeadPlan } from '../../head/index.ts';
import type { Candidate, Make } from './candidate.ts';

/** Part of the daylight that is left of it in a housing closed with care. Common practice, no source. [-] */
const LEFT_SHARE = 0.1;

/** What may be tried on a head that daylight reaches. */
export function daylightCandidates({ asked, circuit, marks }: HeadPlan, make: Make): Candidate[] {
  if (!asked.daylightShare || marks !== null) return [];
  const found: Candidate[] = [];
  if (circuit.emitters === 'steady') {
    found.push(
      make(
        'Pulse the lights and take daylight off',
        'Set circuit.emitters to pulsed: each channel is read without its light and with it.',
        { 'circuit.emitters': 'pulsed' },
        { circuit: { emitters: 'pulsed' } },
      ),
    );
  }
  const daylightShare = Number((LEFT_SHARE * asked.daylightShare).toPrecision(2));
  found.push(
    make(
      'Shut daylight out',
      `Close the housing until head.daylightShare is ${daylightShare}, measured at noon.`,
      { 'head.daylightShare': daylightShare },
      { spec: { daylightShare } },
    ),
  );
  return found;
}
