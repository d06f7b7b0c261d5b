/** Longest name that the tools for these boards take. [characters] */
const NAME_MOST = 63;

/** Names of devices that no file may have on one widespread system, whatever its ending. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * Name of the program: the Latin letters and digits of the instrument's name without their accents, `_` between words.
 *
 * @param instrumentName - Any text; a name without Latin letters or digits, as in another script, gives `vane`.
 * @returns Letters a-z, digits and `_`, 1 to 63 of them; equal names give equal ones. A device name such as `con`
 * gets `vane_` in front.
 * @check src/core/program/programName.test.ts
 */
export function programName(instrumentName: string): string {
  const plain = instrumentName.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const words = plain.replace(/[^a-z0-9]+/g, '_').replace(/^_+|_+$/g, '');
  const name = words.slice(0, NAME_MOST).replace(/_+$/, '');
  if (name === '') return 'vane';
  return DEVICE.test(name) ? `vane_${name}` : name;
}
