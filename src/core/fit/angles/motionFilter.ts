import type { SparseRow } from './cholesky.ts';

/** One edge seen to pass while the shaft moves smoothly. */
export interface Sighting {
  /** Moment since the start of its chain. [any unit] */
  readonly time: number;
  /** Where the edge is drawn, counted on over turns. [deg] */
  readonly drawnDeg: number;
  /** Variance of the sighting itself. [deg²] */
  readonly variance: number;
  /** Speed around it. [deg a unit of time] */
  readonly speed: number;
  /** How each unknown moves this edge. [deg a unit of the unknown] */
  readonly row: SparseRow;
}

/** How freely the hand changes the speed of the shaft. */
export interface MotionLaw {
  /** 2: the speed wanders; 3: its change wanders, a smoother hand. */
  readonly order: 2 | 3;
  /** Variance that the relative speed, or its change a degree, gains a degree of turn. [1/deg], [1/deg³] */
  readonly wander: number;
}

/** Weights of the unknowns gathered from sightings: Σ xᵀx/v, Σ xᵀy/v, Σ y²/v and Σ ln v. */
export interface Gathered {
  readonly size: number;
  readonly weights: Float64Array;
  readonly right: Float64Array;
  square: number;
  logVariance: number;
  count: number;
}

/** Nothing gathered yet. */
export function nothingGathered(size: number): Gathered {
  return {
    size,
    weights: new Float64Array(size * size),
    right: new Float64Array(size),
    square: 0,
    logVariance: 0,
    count: 0,
  };
}

/** One innovation of the filter, in standard deviations: how much a sighting came as a surprise. */
export type Surprise = (index: number, sigmas: number) => void;

/** How wide the place, speed and its change are taken to be before the first sighting. [steps of the chain], [-], [1/deg] */
const FIRST_PLACE = 3;
const FIRST_SPEED = 0.6;
const FIRST_BEND = 0.02;

/**
 * Runs one chain of sightings through a filter of smooth motion, and gathers what they say about the unknowns.
 *
 * The motion is a wandering speed, or a wandering change of it, in proportion to the speed itself. The filter runs once
 * for the drawn angles and alongside for each unknown's share of them, so that the unknowns are then found by least
 * squares with the motion left free.
 *
 * @param freer - Factor on the wander before each sighting, for jerks of the hand. [-], n = sightings
 * @source Kalman filter with regression effects: P. de Jong, The diffuse Kalman filter, Annals of Statistics 19 (1991)
 * 1073; wandering speed: A. C. Harvey, Forecasting, Structural Time Series Models, 1989. Values from memory.
 * @check src/core/fit/angles/motionFilter.test.ts (the same by one dense least-squares system)
 */
export function gatherChain(
  chain: readonly Sighting[],
  law: MotionLaw,
  freer: ArrayLike<number>,
  into: Gathered,
  surprise: Surprise = () => {},
): void {
  const state = new MotionState(chain, law.order, into.size);
  for (const [i, sighting] of chain.entries()) {
    if (i > 0)
      state.advance(
        sighting.time - chain[i - 1]!.time,
        (sighting.speed + chain[i - 1]!.speed) / 2,
        law.wander * freer[i]!,
      );
    surprise(i, state.take(sighting, into));
  }
}

/** Place, speed and bend of the shaft with their covariance, and the share of each unknown in them. */
class MotionState {
  readonly #order: number;
  /** What each unknown adds to the sighting at hand. */
  readonly #seen: Float64Array;
  readonly #mean: Float64Array;
  readonly #shares: Float64Array[];
  readonly #cov: Float64Array;
  /** Unknowns met so far; all other shares are 0. */
  readonly #met: number[] = [];
  readonly #isMet: Uint8Array;

  constructor(chain: readonly Sighting[], order: 2 | 3, size: number) {
    const { drawnDeg, speed } = chain[0]!;
    const last = chain.at(-1)!;
    const step = Math.abs(last.drawnDeg - drawnDeg) / Math.max(1, chain.length - 1);
    this.#order = order;
    this.#seen = new Float64Array(size);
    this.#mean = Float64Array.from([drawnDeg, speed, 0]);
    this.#shares = [0, 1, 2].map(() => new Float64Array(size));
    this.#cov = new Float64Array(9);
    this.#cov[0] = (FIRST_PLACE * Math.max(step, 0.5)) ** 2;
    this.#cov[4] = (FIRST_SPEED * speed) ** 2;
    this.#cov[8] = order === 3 ? (FIRST_BEND * speed * speed) ** 2 : 0;
    this.#isMet = new Uint8Array(size);
  }

  /** Lets time pass. */
  advance(dt: number, speed: number, wander: number): void {
    const bend = this.#order === 3 ? (dt * dt) / 2 : 0;
    const lean = this.#order === 3 ? dt : 0;
    const [place, speedShare, bendShare] = this.#shares;
    this.#mean[0]! += dt * this.#mean[1]! + bend * this.#mean[2]!;
    this.#mean[1]! += lean * this.#mean[2]!;
    for (const at of this.#met) {
      place![at]! += dt * speedShare![at]! + bend * bendShare![at]!;
      speedShare![at]! += lean * bendShare![at]!;
    }
    this.#spreadOut(dt, bend, lean, Math.abs(speed), wander);
  }

  /** Covariance F P Fᵀ + Q, F being [1 dt bend; 0 1 lean; 0 0 1]. */
  #spreadOut(dt: number, bend: number, lean: number, speed: number, wander: number): void {
    const p = this.#cov;
    for (let j = 0; j < 3; j++) {
      p[j]! += dt * p[3 + j]! + bend * p[6 + j]!;
      p[3 + j]! += lean * p[6 + j]!;
    }
    for (let i = 0; i < 9; i += 3) {
      p[i]! += dt * p[i + 1]! + bend * p[i + 2]!;
      p[i + 1]! += lean * p[i + 2]!;
    }
    if (this.#order === 2) {
      const q = wander * speed ** 3;
      p[0]! += (q * dt ** 3) / 3;
      p[1]! += (q * dt ** 2) / 2;
      p[3]! += (q * dt ** 2) / 2;
      p[4]! += q * dt;
      return;
    }
    const q = wander * speed ** 5;
    p[0]! += (q * dt ** 5) / 20;
    p[1]! += (q * dt ** 4) / 8;
    p[3]! += (q * dt ** 4) / 8;
    p[2]! += (q * dt ** 3) / 6;
    p[6]! += (q * dt ** 3) / 6;
    p[4]! += (q * dt ** 3) / 3;
    p[5]! += (q * dt ** 2) / 2;
    p[7]! += (q * dt ** 2) / 2;
    p[8]! += q * dt;
  }

  /** Takes one sighting in; gives its surprise. [sigma] */
  take({ drawnDeg, variance, row }: Sighting, into: Gathered): number {
    const p = this.#cov;
    const v = p[0]! + variance;
    for (const [at] of row) {
      if (this.#isMet[at]) continue;
      this.#isMet[at] = 1;
      this.#met.push(at);
    }
    const seen = this.#seen;
    for (const at of this.#met) seen[at] = -this.#shares[0]![at]!;
    for (const [at, value] of row) seen[at]! -= value; // the drawn angle is the place less what moves the edge
    const off = drawnDeg - this.#mean[0]!;
    const [first, second, third] = [p[0]!, p[1]!, p[2]!];
    for (let k = 0; k < 3; k++) {
      const gain = p[3 * k]! / v;
      this.#mean[k]! += gain * off;
      const share = this.#shares[k]!;
      for (const at of this.#met) share[at]! += gain * seen[at]!;
      p[3 * k]! -= gain * first;
      p[3 * k + 1]! -= gain * second;
      p[3 * k + 2]! -= gain * third;
    }
    this.#gather(seen, off, v, into);
    return off / Math.sqrt(v);
  }

  #gather(seen: Float64Array, off: number, v: number, into: Gathered): void {
    const { weights, right, size } = into;
    for (const a of this.#met) {
      const value = seen[a]! / v;
      if (value === 0) continue;
      right[a]! += value * off;
      const from = a * size;
      for (const b of this.#met) weights[from + b]! += value * seen[b]!;
    }
    into.square += (off * off) / v;
    into.logVariance += Math.log(v);
    into.count += 1;
  }
}
