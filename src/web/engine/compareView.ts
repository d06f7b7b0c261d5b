import { compareInstruments, type ProveRequest } from '../../app/api.ts';
import type { Comparison } from '../../core/proof/index.ts';
import type { InstrumentFiles } from '../../ports/index.ts';

/** Two designs held against each other, as plain data. */
export interface CompareView {
  readonly comparison: Comparison;
  readonly names: readonly [string, string];
  /** Accuracy each is held to. [deg] */
  readonly accuraciesDeg: readonly [number, number];
}

/** Two designs in the same virtual builds, without their functions. */
export async function compareView(
  files: InstrumentFiles,
  request: ProveRequest & { readonly against: string },
): Promise<CompareView> {
  const { first, second, comparison } = await compareInstruments(files, request);
  const [a, b] = [first.instrument, second.instrument];
  return {
    comparison,
    names: [a.name, b.name],
    accuraciesDeg: [a.need.accuracyDeg, b.need.accuracyDeg],
  };
}
