import type { ComparedDesigns } from '../../app/api.ts';
import type { Comparison } from '../../core/proof/index.ts';

/** Two designs held against each other, as plain data. */
export interface CompareView {
  readonly comparison: Comparison;
  readonly names: readonly [string, string];
  /** Accuracy each is held to. [deg] */
  readonly accuraciesDeg: readonly [number, number];
}

/** Two designs without their functions. */
export function compareView({ first, second, comparison }: ComparedDesigns): CompareView {
  const [a, b] = [first.instrument, second.instrument];
  return {
    comparison,
    names: [a.name, b.name],
    accuraciesDeg: [a.need.accuracyDeg, b.need.accuracyDeg],
  };
}
