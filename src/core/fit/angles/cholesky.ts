/** A symmetric matrix with only positive directions, row by row. n × n */
export interface Spread {
  readonly size: number;
  readonly values: Float64Array;
}

/**
 * Lower triangle L with L Lᵀ = the matrix; `null` when it has a direction without weight.
 *
 * @source Cholesky factorisation, Golub & Van Loan, Matrix Computations, 4.2 (value from memory).
 */
export function factorOf({ size, values }: Spread): Float64Array | null {
  const lower = new Float64Array(size * size);
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = values[i * size + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * size + k]! * lower[j * size + k]!;
      if (i > j) lower[i * size + j] = sum / lower[j * size + j]!;
      else if (sum > 0) lower[j * size + j] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** Solution of the matrix times x = right, by its factor. */
export function solved(lower: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  const x = Float64Array.from(right);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i]! -= lower[i * size + k]! * x[k]!;
    x[i]! /= lower[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i]! -= lower[k * size + i]! * x[k]!;
    x[i]! /= lower[i * size + i]!;
  }
  return x;
}

/** Logarithm of the determinant. */
export function logDeterminant(lower: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) sum += 2 * Math.log(lower[i * size + i]!);
  return sum;
}

/** Sparse row of numbers: pairs of place and value. */
export type SparseRow = readonly (readonly [number, number])[];

/** Variance of a sum of unknowns whose matrix of weights has that factor: |L⁻¹ x|². */
export function varianceOf(lower: Float64Array, size: number, row: SparseRow): number {
  const half = new Float64Array(size);
  let first = size;
  for (const [at, value] of row) {
    half[at]! += value;
    if (at < first) first = at;
  }
  let sum = 0;
  for (let i = first; i < size; i++) {
    let value = half[i]!;
    for (let k = first; k < i; k++) value -= lower[i * size + k]! * half[k]!;
    value /= lower[i * size + i]!;
    half[i] = value;
    sum += value * value;
  }
  return sum;
}
