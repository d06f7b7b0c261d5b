import { wrapDegrees } from '../../core/units/index.ts';

/** The shaft that every picture on the page follows. */
export interface Turn {
  /** Disc angle under the head's reference line, as the shaft stands now. [deg], [0, 360) */
  readonly angleDeg: number;
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
  let angleDeg = 0;
  let sense: Turn['sense'] = 'growing';
  let spinDegPerS = 0;
  let frame = 0;
  let beforeMs = 0;
  let restUntilMs = 0;
  const watchers = new Set<(elapsedMs: number) => void>();

  function tick(nowMs: number): void {
    const elapsedMs = Math.min(LONGEST_FRAME_MS, nowMs - beforeMs);
    beforeMs = nowMs;
    frame = 0;
    if (spinDegPerS !== 0) move((spinDegPerS * elapsedMs) / 1000);
    for (const draw of watchers) draw(elapsedMs);
    if (spinDegPerS !== 0 || nowMs < restUntilMs) ask();
  }
  function ask(): void {
    if (frame === 0) frame = requestAnimationFrame(tick);
  }
  function move(deg: number): void {
    if (deg === 0) return;
    sense = deg > 0 ? 'growing' : 'falling';
    angleDeg = wrapDegrees(angleDeg + deg);
    restUntilMs = performance.now() + restMs;
  }
  function wake(): void {
    if (frame === 0) beforeMs = performance.now();
    ask();
  }
  return {
    get angleDeg() {
      return angleDeg;
    },
    get sense() {
      return sense;
    },
    get spinDegPerS() {
      return spinDegPerS;
    },
    turnBy(deg) {
      move(deg);
      wake();
    },
    turnTo(deg) {
      this.turnBy(wrapDegrees(deg - angleDeg + 180) - 180);
    },
    spin(degPerS) {
      spinDegPerS = degPerS;
      restUntilMs = performance.now() + restMs;
      wake();
    },
    watch(draw) {
      watchers.add(draw);
      wake();
      return () => watchers.delete(draw);
    },
  };
}
