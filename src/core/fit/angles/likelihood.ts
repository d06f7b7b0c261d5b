import { factorOf, logDeterminant, solved, type SparseRow } from './cholesky.ts';
import {
  gatherChain,
  nothingGathered,
  type Gathered,
  type MotionLaw,
  type Sighting,
  type Surprise,
} from './motionFilter.ts';

/** A fact about the unknowns that no motion is needed for: Σ row · unknowns = value. */
export interface Fact {
  readonly row: SparseRow;
  readonly value: number;
  readonly variance: number;
}

/** What the unknowns are found from. */
export interface Evidence {
  readonly chains: readonly (readonly Sighting[])[];
  /** Factor on the wander before each sighting. n as the chains */
  readonly freer: readonly Float64Array[];
  readonly facts: readonly Fact[];
  /** Standard deviation of each unknown before the recording. n = unknowns */
  readonly priorSd: Float64Array;
}

/** The unknowns found. */
export interface Solution {
  readonly values: Float64Array;
  /** Factor of their weights: variances follow from it. */
  readonly factor: Float64Array;
  /** Logarithm of how likely the recording is, but for a constant. */
  readonly logLikelihood: number;
}

function addFacts(facts: readonly Fact[], into: Gathered): void {
  for (const { row, value, variance } of facts) {
    for (const [a, x] of row) {
      into.right[a]! += (x * value) / variance;
      for (const [b, y] of row) into.weights[a * into.size + b]! += (x * y) / variance;
    }
    into.square += (value * value) / variance;
    into.logVariance += Math.log(variance);
  }
}

/**
 * The unknowns that explain the sightings best, for one law of motion.
 *
 * @param edgeVariance - What an edge's own place adds to the variance of a sighting of it. [deg²]; of chain and index
 * @param surprise - Told each sighting's surprise.
 */
export function solutionFor(
  { chains, freer, facts, priorSd }: Evidence,
  law: MotionLaw,
  edgeVariance: (chain: number, index: number) => number,
  surprise: (chain: number) => Surprise = () => () => {},
): Solution | null {
  const size = priorSd.length;
  const gathered = nothingGathered(size);
  for (const [c, chain] of chains.entries()) {
    const widened = chain.map((sighting, i) => ({
      ...sighting,
      variance: sighting.variance + edgeVariance(c, i),
    }));
    gatherChain(widened, law, freer[c]!, gathered, surprise(c));
  }
  addFacts(facts, gathered);
  let logPrior = 0;
  for (let i = 0; i < size; i++) {
    gathered.weights[i * size + i]! += priorSd[i]! ** -2;
    logPrior += 2 * Math.log(priorSd[i]!);
  }
  const factor = factorOf({ size, values: gathered.weights });
  if (!factor) return null;
  const values = solved(factor, gathered.right);
  const explained = values.reduce((sum, value, i) => sum + value * gathered.right[i]!, 0);
  const logLikelihood =
    -0.5 * (gathered.logVariance + gathered.square - explained + logDeterminant(factor, size) + logPrior);
  return { values, factor, logLikelihood };
}
