import { expect, it } from 'vitest';
import { designOf, twinFile } from '../../../test/support/fitTwin.ts';
import { drawnPins } from './columnPins.ts';

it.each([
  ['direct', ['A0', 'A1', 'A2', 'A3', 'A4']],
  ['multiplexer', ['Y0', 'Y1', 'Y2', 'Y3', 'Y4']],
  ['shift-register', ['R0', 'R1', 'R2', 'R3', 'R4']],
])('channels read through %s stand where the wiring puts them', (input, pins) => {
  const { instrument, head } = designOf(`${twinFile()}circuit: { input: ${input} }\n`);
  expect(drawnPins(instrument, head)).toEqual(pins);
});
