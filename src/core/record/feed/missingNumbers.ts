/** Numbers of lines that did not come yet, as text: the first of them and a hexadecimal digit for every four. */
export interface MissingText {
  readonly from: number;
  readonly digits: string;
}

/** Numbers kept of one run: a day at one line a second. [-] */
const NUMBERS_MOST = 86_400;

/** Numbers of lines of one run that did not come yet; the oldest are given up when there are too many. */
export class MissingNumbers {
  readonly #numbers = new Set<number>();

  /** @param text - As `text` gave it. */
  constructor(text: MissingText | null = null) {
    for (const [i, digit] of [...(text?.digits ?? '')].entries()) {
      const bits = parseInt(digit, 16);
      for (let bit = 0; bit < 4; bit++) {
        if ((bits & (1 << bit)) !== 0) this.#numbers.add(text!.from + 4 * i + bit);
      }
    }
  }

  /** `null` when nothing is missing. */
  get text(): MissingText | null {
    if (this.#numbers.size === 0) return null;
    const all = [...this.#numbers].sort((a, b) => a - b);
    const from = all[0]!;
    const digits = new Uint8Array(Math.floor((all.at(-1)! - from) / 4) + 1);
    for (const number of all) digits[Math.floor((number - from) / 4)]! |= 1 << ((number - from) % 4);
    return { from, digits: Array.from(digits, (bits) => bits.toString(16)).join('') };
  }

  /** Numbers between two that came. [-] */
  skip(before: number, after: number): void {
    for (let n = Math.max(before + 1, after - NUMBERS_MOST); n < after; n++) this.#numbers.add(n);
    for (const n of this.#numbers) {
      if (n >= after - NUMBERS_MOST) return;
      this.#numbers.delete(n);
    }
  }

  has(number: number): boolean {
    return this.#numbers.has(number);
  }

  /** A number that came after all. [-] */
  fill(number: number): void {
    this.#numbers.delete(number);
  }
}
