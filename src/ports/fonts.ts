/** Fonts that drawing sheets are written in. */
export interface Fonts {
  /** A TrueType font without serifs, with Latin letters and the signs ⌀, ± and °; the same bytes each time. */
  sans(): Promise<Uint8Array>;
}
