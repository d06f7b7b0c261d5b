import { VanewrightError } from '../../error/index.ts';

/** A refusal of the cups: what the data cannot support, and what to record. */
export function cupsRefusal(
  code: string,
  words: {
    readonly what: string;
    readonly where: string;
    readonly got: string;
    readonly allowed: string;
    readonly fix: string;
  },
): VanewrightError {
  return new VanewrightError({ code, ...words });
}
