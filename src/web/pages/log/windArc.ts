/** Place on the dial of a heading, y down. [deg], clockwise from the top */
export function onDial(headingDeg: number, radius: number): string {
  const angle = (headingDeg * Math.PI) / 180;
  return `${(radius * Math.sin(angle)).toFixed(2)} ${(-radius * Math.cos(angle)).toFixed(2)}`;
}

/**
 * Outline of a part of a ring, from one heading clockwise to another.
 *
 * @param ring - Inner and outer radius; equal ones give an arc.
 */
export function ringPart(fromDeg: number, toDeg: number, [inner, outer]: readonly [number, number]): string {
  const width = Math.min(359.9, toDeg - fromDeg);
  const end = fromDeg + width;
  const large = width > 180 ? 1 : 0;
  const there = `M${onDial(fromDeg, outer)}A${outer} ${outer} 0 ${large} 1 ${onDial(end, outer)}`;
  if (inner === outer) return there;
  return `${there}L${onDial(end, inner)}A${inner} ${inner} 0 ${large} 0 ${onDial(fromDeg, inner)}Z`;
}
