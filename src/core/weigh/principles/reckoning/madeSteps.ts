import { lagMs, loopMs, type Detector } from '../../../head/index.ts';
import { radToDeg, showDegrees, showMm } from '../../../units/index.ts';
import type { ErrorItem } from '../../principle.ts';
import type { Situation } from '../../situation.ts';

/** Standard deviations that a making error is allowed here: 95 of 100. [-] */
const SIGMAS = 2;

/** Characters of a line while it is written, beside reading. An assumption, no source; `prove` takes the true ones. */
const LINE_CHARS = 60;

/** Half a step, and what edges, bore and sensors of a home-made disc or wheel add. */
export function stepErrors({ instrument }: Situation, positions: number): ErrorItem[] {
  const { disc, head } = instrument;
  const radius = disc.diameterMm / 2 - disc.rimMm;
  const off = Math.hypot(disc.process.edgeSdMm, disc.process.boreSdMm, head.tangentialSdMm);
  const step = 360 / positions;
  return [
    { title: 'half a step', deg: step / 2, how: `half of ${showDegrees(Number(step.toFixed(3)))}` },
    {
      title: 'made by hand',
      deg: radToDeg((SIGMAS * off) / radius),
      how: `edges, bore and sensors off by ${showMm(Number((SIGMAS * off).toFixed(2)))} at a radius of ${showMm(radius)}`,
    },
  ];
}

/** Time constants until a sensor has gone half way. @source derived: ln 2 */
const HALF = Math.LN2;

/** How long a sensor takes to show that its light has gone: the slower of its ways. [ms] */
function sensorMs(detector: Detector): number {
  if (detector.kind !== 'photoresistor') return HALF * Math.max(detector.riseMs, detector.fallMs);
  // Conductance falls from lit to dark; the best resistor switches at their geometric mean.
  const [lit, dark] = [1 / detector.litOhm, 1 / detector.darkOhm];
  return lagMs({ from: lit, to: dark, threshold: Math.sqrt(lit * dark), tauMs: detector.fallMs });
}

/** Fastest turn at which every step is still read. [deg/s] */
export function stepLimitDegPerS(
  { instrument, board }: Situation,
  wanted: { readonly positions: number; readonly channels: number; readonly detector: Detector },
): number {
  const { positions, channels, detector } = wanted;
  const { circuit } = instrument;
  const loop = loopMs({ channels, circuit, detector, sourceOhm: 0, board, lineChars: LINE_CHARS });
  return (1000 * 360) / positions / (sensorMs(detector) + loop);
}
