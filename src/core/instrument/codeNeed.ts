import type { CodeNeed } from '../codes/index.ts';
import { tellsThreeMarks, type Detector } from '../head/index.ts';
import type { Instrument } from './instrument.ts';

/** Channels that one board can read: a 16-way multiplexer in front of one input serves the largest head. [-] */
const MOST_CHANNELS = 16;

/**
 * What a code has to serve, out of the instrument file: need, room on the disc, process, sensors and board.
 */
export function codeNeedOf({ need, disc, head }: Instrument): CodeNeed {
  const { process } = disc;
  return {
    positions: need.positions,
    mustSurvivePowerLoss: need.mustSurvivePowerLoss,
    turnsFully: need.turnRangeDeg >= 360,
    mostChannels: MOST_CHANNELS,
    marks: marksSeenBy(head.detector),
    windowLevel: disc.windowLevel,
    innerRadiusMm: disc.hubDiameterMm / 2,
    outerRadiusMm: disc.diameterMm / 2 - disc.rimMm,
    webMm: disc.webMm,
    minWindowMm: process.minWindowMm,
    minLandMm: process.minLandMm,
    minTrackWidthMm: process.minWindowMm,
    edgeSdMm: Math.hypot(process.edgeSdMm, head.tangentialSdMm),
  };
}

/** What a kind of sensor tells apart. */
function marksSeenBy(detector: Detector): CodeNeed['marks'] {
  if (!tellsThreeMarks(detector)) return 'light-dark';
  return detector.kind === 'colour-sensor' ? 'colours' : 'greys';
}
