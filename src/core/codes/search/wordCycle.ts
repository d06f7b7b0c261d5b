/** Two parallel edges of a square that a circle of words walks, to be swapped for the other two. */
export interface FaceSwap {
  /** Place before the one edge, and before the other. */
  readonly place: number;
  readonly far: number;
  /** Bit in which the two edges lie apart: the one that changes instead. */
  readonly across: number;
}

/** A circle of words that differ in one bit from word to word, reshaped in place. */
export class WordCycle {
  private order: Int32Array;
  /** Place of each word in the circle, -1 where it is not used. */
  private readonly placeOf: Int32Array;
  /** Changes of each bit in one turn. n = channels */
  readonly counts: Int32Array;

  constructor(words: readonly number[], channels: number) {
    this.order = Int32Array.from(words);
    this.placeOf = new Int32Array(2 ** channels).fill(-1);
    this.counts = new Int32Array(channels);
    for (const [place, word] of words.entries()) this.placeOf[word] = place;
    for (const place of words.keys()) this.counts[this.bitAt(place)]! += 1;
  }

  get length(): number {
    return this.order.length;
  }

  get words(): number[] {
    return [...this.order];
  }

  /** Word at a place, counted round the circle. */
  at(place: number): number {
    const { length } = this.order;
    return this.order[place < 0 ? place + length : place < length ? place : place - length]!;
  }

  /** Bit that changes after a place. */
  bitAt(place: number): number {
    return 31 - Math.clz32(this.at(place) ^ this.at(place + 1));
  }

  /** The parallel edge across a bit: walked the same way, or against it, or not at all (`null`). */
  parallel(place: number, across: number): { readonly far: number; readonly sameWay: boolean } | null {
    const beside = this.at(place) ^ (1 << across);
    const ahead = this.at(place + 1) ^ (1 << across);
    const far = this.placeOf[beside]!;
    if (far < 0 || beside === this.at(place + 1)) return null;
    if (this.at(far + 1) === ahead) return { far, sameWay: true };
    if (this.at(far - 1) === ahead) return { far: this.placeOf[ahead]!, sameWay: false };
    return null;
  }

  /** Swaps two edges walked the same way: the circle stays one, the way between them is walked backwards. */
  swapSameWay({ place, far, across }: FaceSwap): void {
    this.recount(this.bitAt(place), across);
    const [low, high] = place < far ? [place + 1, far] : [far + 1, place];
    this.order.subarray(low, high + 1).reverse();
    this.replace(low, high);
  }

  /**
   * Swaps two edges walked against each other, which makes two circles, and two edges of those to join them again.
   *
   * @param split - `far` is the place before the edge walked against the first.
   * @param join - `place` lies in the part between the two split edges, `far` outside it; each the place before an
   *   edge in the circles after the split.
   */
  swapTwice(split: FaceSwap, join: FaceSwap & { readonly bit: number }): void {
    this.recount(this.bitAt(split.place), split.across);
    this.recount(join.bit, join.across);
    const inner = this.ring(split.place + 1, split.far);
    const outer = this.ring(split.far + 1, split.place);
    const from = this.ringIndex(split.place + 1, join.place);
    const to = this.ringIndex(split.far + 1, join.far);
    // Walk the inner ring from one end of its removed edge to the other, the way round that meets the outer edge.
    const forward = [...inner.slice(from + 1), ...inner.slice(0, from + 1)];
    const meets = outer[to]! ^ forward[0]!;
    const between = meets === 1 << join.across ? forward : forward.reverse();
    this.order = Int32Array.from([...outer.slice(0, to + 1), ...between, ...outer.slice(to + 1)]);
    this.replace(0, this.order.length - 1);
  }

  /** Goes round a corner the other way where that word is free; no count changes. */
  flipCorner(place: number): void {
    const corner = this.at(place);
    const other = this.at(place - 1) ^ corner ^ this.at(place + 1);
    if (this.placeOf[other] !== -1) return;
    this.placeOf[corner] = -1;
    this.placeOf[other] = place;
    this.order[place] = other;
  }

  /** Place of a word, or -1 where the circle does not pass it. */
  placeOfWord(word: number): number {
    return this.placeOf[word]!;
  }

  private recount(less: number, more: number): void {
    this.counts[less]! -= 2;
    this.counts[more]! += 2;
  }

  private replace(low: number, high: number): void {
    for (let place = low; place <= high; place++) this.placeOf[this.order[place]!] = place;
  }

  /** Words from one place to another, round the circle. */
  private ring(from: number, to: number): number[] {
    const count = this.ringIndex(from, to) + 1;
    return Array.from({ length: count }, (_, i) => this.order[(from + i) % this.order.length]!);
  }

  private ringIndex(from: number, place: number): number {
    return (place - from + 2 * this.order.length) % this.order.length;
  }
}
