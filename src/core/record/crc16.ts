/**
 * Check value of a text: a cyclic redundancy check of 16 bits, most significant bit first.
 *
 * @param text - ASCII characters, one byte each. [-], n ≥ 0
 * @returns Polynomial 0x1021, start 0xFFFF, no final change. [-], 0..65535
 * @source ITU-T V.41 (1988): generator x^16 + x^12 + x^5 + 1; start value 0xFFFF as in ISO/IEC 13239.
 * @check test/published/crc-16
 */
export function crc16(text: string): number {
  let check = 0xffff;
  for (let i = 0; i < text.length; i++) {
    check ^= (text.charCodeAt(i) & 0xff) << 8;
    for (let bit = 0; bit < 8; bit++) check = ((check << 1) ^ (check & 0x8000 ? 0x1021 : 0)) & 0xffff;
  }
  return check;
}
