import { showDegrees, showMm, showNumber } from '../../units/index.ts';
import { offCentreErrorDeg, strayErrorDeg, strayFieldForMt } from '../magnet/magnetErrors.ts';
import { FLAWLESS, withErrors, type Finding, type Principle } from '../principle.ts';
import type { Situation } from '../situation.ts';

/** Directions of the usual chip: 12 bits. Common practice. */
const POSITIONS = 4096;

/** A printed mount: magnet and chip come so close to one axis. Own assumption, no source. [mm] */
const OFF_MM = 0.25;

/** From magnet to chip; 0.5 to 3 mm are usual. Value from memory. [mm] */
const GAP_MM = 2;

/** Field at the chip; 30 to 90 mT are usual. Value from memory. [mT] */
const MAGNET_MT = 40;

/** What the chip adds by itself. Value from memory. [deg] */
const CHIP_DEG = 1;

const halfStep = 180 / POSITIONS;

/** How much foreign field the rest of the accuracy still allows. */
function strayRoom({ instrument }: Situation): Finding {
  const { accuracyDeg } = instrument.need;
  const { strayFieldMt } = instrument.site;
  const left = accuracyDeg - offCentreErrorDeg(OFF_MM, GAP_MM) - CHIP_DEG - halfStep;
  const room = strayFieldForMt(left, MAGNET_MT);
  return {
    isGood: strayFieldMt <= room,
    // Where the chip is too coarse even without a foreign field, that is told by its largest error.
    costs: left > 0 ? 'use' : 'nothing',
    text: `A foreign field of ${showNumber(strayFieldMt, 3)} mT turns it by ${showDegrees(Number(strayErrorDeg(strayFieldMt, MAGNET_MT).toFixed(2)))} at most.`,
    change: `a foreign field of ${showNumber(room, 1)} mT or less at the chip (site.strayFieldMt)`,
  };
}

/** A chip that tells the angle of a magnet on the shaft's end. */
export const magneticChip: Principle = {
  name: 'magnetic-angle-chip',
  title: 'magnetic angle chip',
  about: "A magnet, magnetised across, turns on the shaft's end above a chip that tells its angle.",
  isDisc: false,
  needsShaftEnd: true,
  parts: ['magnet magnetised across its diameter', 'angle chip on its board', 'mount'],
  tools: [['fdm-printer', 'lathe', 'drill'], ['soldering-iron']],
  costClass: 'low',
  workHours: 3,
  figures(situation) {
    const stray = strayErrorDeg(situation.instrument.site.strayFieldMt, MAGNET_MT);
    return {
      ...FLAWLESS,
      stepDeg: 360 / POSITIONS,
      ...withErrors([
        {
          title: 'off the axis',
          deg: offCentreErrorDeg(OFF_MM, GAP_MM),
          how: `${showMm(OFF_MM)} beside the axis at a gap of ${showMm(GAP_MM)}`,
        },
        { title: 'the chip itself', deg: CHIP_DEG, how: 'value from memory' },
        { title: 'foreign field', deg: stray, how: `on a magnet of ${MAGNET_MT} mT` },
        { title: 'half a step', deg: halfStep, how: `half of ${showDegrees(2 * halfStep)}` },
      ]),
      // The usual chips tell when the magnet is gone, and their line carries a check. Value from memory.
      showsFaults: true,
      more: [strayRoom(situation)],
    };
  },
};
