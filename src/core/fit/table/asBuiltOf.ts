import { asBuiltHash, type AsBuilt, type AsBuiltChannel } from '../../instrument/index.ts';
import type { FittedChannel, FittedDisc } from '../fit.ts';

const tidy = (value: number, places: number): number => Number(value.toFixed(places));

/** A disc angle with three decimals, in [0, 360). [deg] */
const tidyAngle = (deg: number): number => {
  const rounded = tidy(deg, 3);
  return rounded >= 360 ? 0 : rounded;
};

function asBuiltChannel(
  { pin, litIsHigh, levels, channel }: FittedChannel,
  disc: FittedDisc,
): AsBuiltChannel {
  const { lowPlateau, highPlateau, lowCounts, highCounts } = levels!;
  const [lit, dark] = litIsHigh ? [highPlateau, lowPlateau] : [lowPlateau, highPlateau];
  const curve = disc.interpolation.isOffered ? disc.interpolation.curves[channel]! : null;
  return {
    pin: pin!,
    litCounts: tidy(lit, 1),
    darkCounts: tidy(dark, 1),
    lowCounts,
    highCounts,
    litIsHigh,
    edgeCurve: curve?.places ?? null,
    edgeWidthDeg: curve ? tidy(curve.widthDeg, 3) : null,
  };
}

/** The section that the program reads the disc by. */
export function asBuiltOf(
  channels: readonly FittedChannel[],
  disc: FittedDisc,
  sense: AsBuilt['sense'],
  recordedAt: string,
): AsBuilt {
  const table = {
    channels: channels.map((channel) => asBuiltChannel(channel, disc)),
    sense,
    positions: disc.positions
      .filter(({ seen, halfWidthDeg }) => seen && halfWidthDeg > 0)
      .map(({ word, centreDeg, halfWidthDeg }) => ({
        word,
        centreDeg: tidyAngle(centreDeg),
        halfWidthDeg: tidy(halfWidthDeg, 3),
      })),
  };
  return { recordedAt, tableHash: asBuiltHash(table), ...table };
}
