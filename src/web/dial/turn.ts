import { wrapDegrees } from '../../core/units/index.ts';

/** The shaft that every picture on the page follows. */
export interface Turn {
  /** Disc angle under the head's reference line, as the shaft stands now. [deg], [0, 360) */
  readonly angleDeg: number;
  /** All that it has turned since it was made, back turns taken off. [deg] */
  readonly totalDeg: number;
  /** Counts the frames drawn. [-] */
  readonly frame: number;
  /** Which way it went last: with the disc angle growing, or falling. */
  readonly sense: 'growing' | 'falling';
  /** Turns the shaft by so much. [deg] */
  turnBy(deg: number): void;
  /** Turns the shaft to a disc angle, the short way. [deg] */
  turnTo(deg: number): void;
  /** Lets it turn by itself; 0 stops it. [deg/s] */
  spin(degPerS: number): void;
  readonly spinDegPerS: number;
  /** Called before each frame in which the shaft, or the time, has moved on. @returns Ends the watching. */
  watch(draw: (elapsedMs: number) => void): () => void;
}

/** Longest step of time that is followed; a page that slept does not spin on. [ms] */
const LONGEST_FRAME_MS = 100;

/**
 * A shaft that turns; it draws once a frame, however often it is moved, and sleeps while nothing moves.
 *
 * @param restMs - How long pictures go on being drawn after the last move, for sensors that lag. [ms]
 */
export function turningShaft(restMs = 3000): Turn {
  let asked = 0;
  let beforeMs = 0;
  let restUntilMs = 0;
  const watchers = new Set<(elapsedMs: number) => void>();

  function tick(nowMs: number): void {
    const elapsedMs = Math.min(LONGEST_FRAME_MS, nowMs - beforeMs);
    beforeMs = nowMs;
    asked = 0;
    if (turn.spinDegPerS !== 0) move((turn.spinDegPerS * elapsedMs) / 1000);
    turn.frame += 1;
    for (const draw of watchers) draw(elapsedMs);
    if (turn.spinDegPerS !== 0 || nowMs < restUntilMs) ask();
  }
  function ask(): void {
    if (asked === 0) asked = requestAnimationFrame(tick);
  }
  function move(deg: number): void {
    if (deg === 0) return;
    turn.sense = deg > 0 ? 'growing' : 'falling';
    turn.angleDeg = wrapDegrees(turn.angleDeg + deg);
    turn.totalDeg += deg;
    restUntilMs = performance.now() + restMs;
  }
  function wake(): void {
    if (asked === 0) beforeMs = performance.now();
    ask();
  }
  const turn = {
    angleDeg: 0,
    totalDeg: 0,
    frame: 0,
    sense: 'growing' as Turn['sense'],
    spinDegPerS: 0,
    turnBy(deg: number): void {
      move(deg);
      wake();
    },
    turnTo(deg: number): void {
      turn.turnBy(wrapDegrees(deg - turn.angleDeg + 180) - 180);
    },
    spin(degPerS: number): void {
      turn.spinDegPerS = degPerS;
      restUntilMs = performance.now() + restMs;
      wake();
    },
    watch(draw: (elapsedMs: number) => void): () => void {
      watchers.add(draw);
      wake();
      return () => watchers.delete(draw);
    },
  };
  return turn;
}
