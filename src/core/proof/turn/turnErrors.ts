/** What one turn adds up to. Written over for each turn, never made anew. */
export interface TurnErrors {
  /** Square of the error, times the angle over which a position shows. [deg³] */
  squareSum: number;
  /** Angle over which a position shows. [deg] */
  shownDeg: number;
  /** Largest error. [deg] */
  maxDeg: number;
  /** Angle shown more than one step off. [deg] */
  misreadDeg: number;
  /** Angle that shows a word the code does not have. [deg] */
  illegalDeg: number;
  /** Positions shown so far, and the turn in which each was last shown. */
  shown: number;
  turn: number;
  readonly lastShown: Int32Array;
}

/** Room to add up turns of a disc. @param positions - N. [-] */
export function roomForErrors(positions: number): TurnErrors {
  return {
    squareSum: 0,
    shownDeg: 0,
    maxDeg: 0,
    misreadDeg: 0,
    illegalDeg: 0,
    shown: 0,
    turn: 0,
    lastShown: new Int32Array(positions),
  };
}

/** Starts a new turn. */
export function clearErrors(errors: TurnErrors): void {
  errors.squareSum = 0;
  errors.shownDeg = 0;
  errors.maxDeg = 0;
  errors.misreadDeg = 0;
  errors.illegalDeg = 0;
  errors.shown = 0;
  errors.turn += 1;
}

/**
 * Adds a stretch of the turn over which one position shows; its error falls evenly along it.
 *
 * @param fromDeg - Where it begins; it is `lengthDeg` long. [deg]
 * @param centreDeg - Middle of that position's step, `stepDeg` wide. [deg]
 * @source derived: ∫(centre − angle)² = (e₁³ − e₂³)/3 between the errors at its two ends.
 * @check test/published/quantisation
 */
export function addStretch(
  errors: TurnErrors,
  fromDeg: number,
  lengthDeg: number,
  position: number,
  centreDeg: number,
  stepDeg: number,
): void {
  if (errors.lastShown[position] !== errors.turn) {
    errors.lastShown[position] = errors.turn;
    errors.shown += 1;
  }
  errors.shownDeg += lengthDeg;
  let first = centreDeg - fromDeg;
  while (first > 180) first -= 360;
  while (first <= -180) first += 360;
  const last = first - lengthDeg;
  if (last >= -180) {
    addErrors(errors, first, last, stepDeg);
    return;
  }
  // The shaft passes the far side of the disc, where the error turns from one sign to the other.
  addErrors(errors, first, -180, stepDeg);
  addErrors(errors, 180, last + 360, stepDeg);
}

function addErrors(errors: TurnErrors, first: number, last: number, stepDeg: number): void {
  errors.squareSum += (first * first * first - last * last * last) / 3;
  const most = Math.max(Math.abs(first), Math.abs(last));
  if (most > errors.maxDeg) errors.maxDeg = most;
  if (most <= stepDeg) return;
  const within = Math.min(first, stepDeg) - Math.max(last, -stepDeg);
  errors.misreadDeg += first - last - Math.max(0, within);
}
