import type { Proof } from '../proof/index.ts';

/**
 * Digits that a figure of the proof is written with.
 *
 * Engines of JavaScript differ in the last digits of sines and powers; nine are the same in a browser and in Node, and
 * far more than any of the figures deserves. [-]
 */
const DIGITS = 9;

function written(_name: string, value: unknown): unknown {
  return typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(DIGITS)) : value;
}

/** The proof as a file. */
export function proofJson(proof: Proof): string {
  return `${JSON.stringify(proof, written, 2)}\n`;
}
