export { degToRad, radToDeg, turnBetween, wrapDegrees, type Degrees } from './angle.ts';
export { seededRandom, type Random } from './random.ts';
export { showDegrees, showMm, showNumber, showSignificant } from './show.ts';
