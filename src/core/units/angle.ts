/** Angle in degrees. On the disc: clockwise from the index mark, seen from the patterned face. */
export type Degrees = number;

/** Angle brought into [0, 360). [deg] */
export function wrapDegrees(angle: Degrees): Degrees {
  const wrapped = angle - 360 * Math.floor(angle / 360);
  // -1e-15 + 360 rounds to 360 itself, and -5e-324 / 360 to -0
  return wrapped > 0 && wrapped < 360 ? wrapped : 0;
}

/** Shortest way from `from` to `to`, clockwise positive, in (-180, 180]. [deg] */
export function turnBetween(from: Degrees, to: Degrees): Degrees {
  const turn = wrapDegrees(to - from);
  return turn > 180 ? turn - 360 : turn;
}

/** Angle in radians. [rad] */
export function degToRad(angle: Degrees): number {
  return (angle * Math.PI) / 180;
}

/** Angle in degrees. [deg] */
export function radToDeg(angle: number): Degrees {
  return (angle * 180) / Math.PI;
}
