import { sectorAdvice, type CodeTable } from '../../codes/index.ts';
import type { DiscPlan } from '../../disc/index.ts';
import type { HeadPlan } from '../../head/index.ts';
import type { Instrument } from '../../instrument/index.ts';
import { showDegrees, showMm, showNumber } from '../../units/index.ts';

function makeDisc({ disc }: Instrument): string {
  const measure = `Then measure it: the rim should be ${showMm(disc.diameterMm)} across.`;
  if (disc.process.kind === 'fdm')
    return `Print disc.stl flat, in an opaque dark plastic, walls and floor solid. ${measure}`;
  if (disc.process.kind === 'laser')
    return `Cut disc.svg at 100 %, unscaled, from an opaque sheet ${showMm(disc.thicknessMm)} thick. ${measure}`;
  return `Print disc.svg on film at 100 %, never "fit to page", and lay two films over each other if the black is not opaque. ${measure}`;
}

/** What must stand on north for a wind rose that the positions fill evenly. */
function roseNote({ positions }: CodeTable): string {
  const fair = sectorAdvice(positions).filter(({ isFair }) => isFair);
  const rose = fair.find(({ sectors }) => sectors === 16) ?? fair.at(-1);
  if (!rose)
    return 'No usual wind rose is filled evenly by these positions: share each among the sectors it overlaps.';
  return `For a wind rose of ${rose.sectors} sectors: ${rose.advice.charAt(0).toLowerCase()}${rose.advice.slice(1)}`;
}

function northStep({ site, head }: Instrument, disc: DiscPlan): string {
  const face = head.patternedFace === 'up' ? 'up, towards the vane' : 'down, away from the vane';
  return (
    `Mount the disc with its patterned face ${face}. Point the vane where the index notch stands at the sensors: the program then ` +
    `takes the heading for ${showDegrees(site.northOffsetDeg)} plus or minus half a step. Turn the mast until that is so, or set ` +
    'site.northOffsetDeg to what it really is and make the program again. ' +
    roseNote(disc.code)
  );
}

/** What to do, in order, for this very design. */
export function buildSteps(instrument: Instrument, head: HeadPlan): string[] {
  const { levels, board, disc } = head;
  const { aperture } = instrument.head;
  const half = (levels.highCounts - levels.lowCounts) / 2;
  const mask =
    aperture.shape === 'slit'
      ? `a slit ${showMm(aperture.widthMm)} along the track and ${showMm(aperture.lengthMm)} across it`
      : aperture.shape === 'round'
        ? `a round hole of ${showMm(aperture.diameterMm)}`
        : `the beam itself, ${showMm(2 * aperture.radiusMm)} across`;
  return [
    makeDisc(instrument),
    'Hold the disc against the light you will use, eyes shielded: land must be dark. If light comes through, print it thicker or darker.',
    `Set ${disc.code.channels.length} sensors at the radii and angles in the table, each behind ${mask}. Walls between them keep the light of one from its neighbour.`,
    `Wire every channel as drawn, with ${showNumber(levels.resistorOhm, 0)} ohm, and put the program on the ${board.title}.`,
    `Open the serial monitor at ${instrument.controller.baud} bit/s and turn the disc slowly by hand: every channel should swing between its lit and dark counts. A channel that does not is wired wrong, blocked, or flooded by daylight.`,
    ...(instrument.circuit.thresholds === 'per-channel'
      ? [
          `Write down the lit and the dark counts of each channel. In the program set its place in LOW_COUNTS to the middle of the two less ${showNumber(half, 0)}, and in HIGH_COUNTS to the middle plus ${showNumber(half, 0)}: between the two nothing changes, so that noise cannot make it chatter.`,
        ]
      : []),
    northStep(instrument, disc),
  ];
}
