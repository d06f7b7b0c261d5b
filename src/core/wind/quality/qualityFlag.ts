/**
 * What can be wrong with a sample, as bits that may stand together; the sample itself is never changed. [-]
 *
 * The last two say that direction and speed do not go together, of which the first is ordinary in a calm.
 */
export const qualityBits = {
  'speed-range': 1,
  'heading-range': 2,
  'speed-rate': 4,
  'heading-rate': 8,
  'speed-stuck': 16,
  'heading-stuck': 32,
  'speed-step': 64,
  'heading-in-calm': 128,
  'no-heading-in-wind': 256,
} as const;

/** Name of a flag. */
export type QualityFlag = keyof typeof qualityBits;

/** Flags of a bit pattern [-], in the order of the table. */
export function flagsOf(bits: number): QualityFlag[] {
  return (Object.keys(qualityBits) as QualityFlag[]).filter((flag) => (bits & qualityBits[flag]) !== 0);
}

/** A stretch of time that deserves a flag, known only after it has lasted. */
export interface QualitySpan {
  readonly flag: QualityFlag;
  /** First sample that it covers. [ms UTC] */
  readonly fromMs: number;
  /** Last sample that it covers. [ms UTC] */
  readonly toMs: number;
  /** What was found, with its unit. */
  readonly got: string;
  /** What would be accepted, with its unit. */
  readonly allowed: string;
  /** Who set the limit. */
  readonly source: string;
}

/**
 * Codes of a validated value; a review writes them beside the data.
 *
 * @source EPA-454/R-99-005 (2000), Table 8-3; the labels of 0, 2 and 9 are values from memory.
 */
export const qualityCodes = {
  valid: 0,
  estimated: 1,
  calibrationApplied: 2,
  failedAutomaticCheck: 6,
  suspect: 7,
  invalid: 8,
  missing: 9,
} as const;
