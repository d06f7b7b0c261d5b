import type { RingSector, StripLayout } from '../../core/disc/index.ts';
import type { ChannelPlan } from '../../core/head/index.ts';
import type { DesignView } from '../engine/designView.ts';

/** Where things lie on the picture of a disc or a strip. y goes down. [mm] */
export interface Places {
  readonly viewBox: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  /** Size of a sensor's spot on the picture. [mm] */
  readonly spotMm: number;
  sensor(channel: ChannelPlan): { readonly x: number; readonly y: number };
  /** What moves the pattern to a disc angle, as CSS of an element as large as the picture. */
  transform(angleDeg: number): string;
}

/** Room round the disc for the head's line, as a share of its radius. [-] */
const MARGIN = 0.14;
/** Length of strip that is shown at once, as a share of one run through all positions. [-] */
const STRIP_SHOWN = 0.25;

function onDisc(diameterMm: number): Places {
  const radius = diameterMm / 2;
  const half = radius * (1 + MARGIN);
  return {
    viewBox: { x: -half, y: -half, width: 2 * half, height: 2 * half },
    spotMm: Math.max(radius * 0.028, 0.9),
    sensor({ radiusMm, angleDeg }) {
      const at = (angleDeg * Math.PI) / 180;
      return { x: radiusMm * Math.sin(at), y: -radiusMm * Math.cos(at) };
    },
    transform: (angleDeg) => `rotate(${-angleDeg}deg)`,
  };
}

/** A strip runs past a head that stands still; the picture's middle is the head's reference line. */
function onStrip({ mmPerDeg, heightMm, bands }: StripLayout): Places {
  const width = Math.max(360 * mmPerDeg * STRIP_SHOWN, 3 * heightMm);
  const margin = heightMm * MARGIN;
  const viewBox = { x: -width / 2, y: -heightMm - margin, width, height: heightMm + 2 * margin };
  return {
    viewBox,
    spotMm: Math.max(heightMm * 0.04, 0.9),
    sensor({ track, angleDeg }) {
      const { lowMm, highMm } = bands[track]!;
      return { x: angleDeg * mmPerDeg, y: -(lowMm + highMm) / 2 };
    },
    transform: (angleDeg) => `translateX(${(-100 * angleDeg * mmPerDeg) / width}%)`,
  };
}

/** Where things lie on the picture of a design. */
export function placesOf({ strip, instrument }: DesignView): Places {
  return strip ? onStrip(strip) : onDisc(instrument.disc.diameterMm);
}

/** Outline of a piece of a ring as SVG path data, index mark up. [mm] */
export function sectorPath({ innerRadiusMm, outerRadiusMm, fromDeg, toDeg }: RingSector): string {
  const at = (deg: number, radius: number): string => {
    const turn = (deg * Math.PI) / 180;
    return `${(radius * Math.sin(turn)).toFixed(4)} ${(-radius * Math.cos(turn)).toFixed(4)}`;
  };
  const large = toDeg - fromDeg > 180 ? 1 : 0;
  return [
    `M${at(fromDeg, innerRadiusMm)}`,
    `L${at(fromDeg, outerRadiusMm)}`,
    `A${outerRadiusMm} ${outerRadiusMm} 0 ${large} 1 ${at(toDeg, outerRadiusMm)}`,
    `L${at(toDeg, innerRadiusMm)}`,
    `A${innerRadiusMm} ${innerRadiusMm} 0 ${large} 0 ${at(fromDeg, innerRadiusMm)}Z`,
  ].join('');
}
