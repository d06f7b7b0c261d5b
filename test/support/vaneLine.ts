/** CRC of 16 bits by long division, as ITU-T V.41 describes it; start value all ones. */
export function checkDigits(text: string): string {
  let remainder = 0xffff;
  for (const char of text) {
    for (let bit = 7; bit >= 0; bit--) {
      const isOdd = ((remainder >> 15) & 1) !== ((char.charCodeAt(0) >> bit) & 1);
      remainder = ((remainder << 1) & 0xffff) ^ (isOdd ? 0x1021 : 0);
    }
  }
  return remainder.toString(16).toUpperCase().padStart(4, '0');
}

/** Line of a pretended vane with 32 positions of a reflected Gray code that points to a position's begin. */
export function vaneLine(number: number, position: number): string {
  const word = (position ^ (position >> 1)).toString(2).padStart(5, '0');
  const counts = [...word].map((digit) => (digit === '1' ? 820 : 130)).join(',');
  const body = `vw1 ${number} ${1000 * number} ${counts} ${word} ${position * 1125} 563 - - - 0 0 0`;
  return `${body} ${checkDigits(body)}\n`;
}
