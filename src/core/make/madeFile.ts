/** One file of a result. */
export interface MadeFile {
  /** Path below the result's folder, `/` between names. */
  readonly path: string;
  readonly content: string | Uint8Array;
}
