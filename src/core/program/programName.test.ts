import { expect, it } from 'vitest';
import { programName } from './programName.ts';

it.each(['con', 'CON', 'nul', 'Aux', 'prn', 'com1', 'COM9', 'lpt0'])(
  'gives the name %s, which is a device on some computers, a file that every computer takes',
  (name) => {
    expect(programName(name)).toBe(`vane_${name.toLowerCase()}`);
  },
);

it.each([
  ['console', 'console'],
  ['com 1', 'com_1'],
  ['Con-', 'vane_con'],
  ['風見', 'vane'],
  ['ветер', 'vane'],
  ['風見 2', '2'],
])('names the program of "%s" %s', (name, expected) => {
  expect(programName(name)).toBe(expected);
});
