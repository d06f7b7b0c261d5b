/** Polynomial of Castagnoli, bits reversed. */
const POLYNOMIAL = 0x82f63b78;

/** Eight tables, so that eight bytes go through at a time. */
const TABLES = tables();

function tables(): Uint32Array[] {
  const first = new Uint32Array(256);
  for (let i = 0; i < 256; i++) {
    let value = i;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
    first[i] = value >>> 0;
  }
  const all = [first];
  for (let t = 1; t < 8; t++) {
    const before = all[t - 1]!;
    all.push(before.map((value) => (value >>> 8) ^ first[value & 255]!));
  }
  return all;
}

const [T0, T1, T2, T3, T4, T5, T6, T7] = TABLES as [
  Uint32Array,
  Uint32Array,
  Uint32Array,
  Uint32Array,
  Uint32Array,
  Uint32Array,
  Uint32Array,
  Uint32Array,
];

/**
 * Cyclic redundancy check of 32 bits with the polynomial of Castagnoli: finds every burst of damage up to 32 bits.
 *
 * @param bytes - What is checked. [byte], n ≥ 0
 * @param before - Check of the bytes before these, so that pieces can be checked one after another. [-]
 * @returns Check value, 0 to 2^32 - 1. [-]
 * @source RFC 3720 (2004), appendix B.4; Castagnoli, Bräuer, Herrmann, IEEE Trans. Commun. 41 (1993) 883.
 * @check src/core/record/rawLog/crc32c.test.ts
 */
export function crc32c(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  const { length } = bytes;
  let i = 0;
  for (; i + 8 <= length; i += 8) {
    crc ^= bytes[i]! | (bytes[i + 1]! << 8) | (bytes[i + 2]! << 16) | (bytes[i + 3]! << 24);
    crc =
      T7[crc & 255]! ^
      T6[(crc >>> 8) & 255]! ^
      T5[(crc >>> 16) & 255]! ^
      T4[crc >>> 24]! ^
      T3[bytes[i + 4]!]! ^
      T2[bytes[i + 5]!]! ^
      T1[bytes[i + 6]!]! ^
      T0[bytes[i + 7]!]!;
  }
  for (; i < length; i++) crc = (crc >>> 8) ^ T0[(crc ^ bytes[i]!) & 255]!;
  return ~crc >>> 0;
}
