import type { Process } from './discSpec.ts';

/**
 * What a process can do until the maker has measured their own.
 *
 * - fdm: walls in whole lines of a 0.4 mm nozzle, place within 0.2 mm (two standard deviations); holes come out small.
 * - laser: kerf 0.15 to 0.25 mm, so every opening grows by about 0.2 mm; thin strips char, hence 1 mm.
 * - colour-print: inks of a home printer bleed into each other by about a dot each; half a millimetre keeps them apart.
 * - pcb: etched copper keeps 0.15 mm track and space and lies within 0.05 mm of the drilled hole.
 * - film: a 600 dpi print carries about 256 lines on a 2-inch disc, which is a mark of pi · 50.8 mm / 512 = 0.31 mm.
 *
 * @source common practice, no source (nozzle lines, 0.2 mm, kerf, lines on film, track and space). Values from memory: shrinkage of
 * printed windows, bleeding of inks, strip width under a laser, and every standard deviation of the bore; measure a coupon to replace them.
 */
export const processDefaults: Readonly<Record<Process['kind'], Process>> = {
  fdm: {
    kind: 'fdm',
    minWindowMm: 1,
    minLandMm: 0.8,
    minWebMm: 0.8,
    edgeSdMm: 0.1,
    windowGrowthMm: -0.2,
    boreSdMm: 0.1,
  },
  laser: {
    kind: 'laser',
    minWindowMm: 0.5,
    minLandMm: 1,
    minWebMm: 1,
    edgeSdMm: 0.05,
    windowGrowthMm: 0.2,
    boreSdMm: 0.1,
  },
  film: {
    kind: 'film',
    minWindowMm: 0.31,
    minLandMm: 0.31,
    minWebMm: 0.31,
    edgeSdMm: 0.03,
    windowGrowthMm: 0,
    boreSdMm: 0.2,
  },
  'colour-print': {
    kind: 'colour-print',
    minWindowMm: 0.5,
    minLandMm: 0.5,
    minWebMm: 0.5,
    edgeSdMm: 0.05,
    windowGrowthMm: 0,
    boreSdMm: 0.2,
  },
  pcb: {
    kind: 'pcb',
    minWindowMm: 0.2,
    minLandMm: 0.2,
    minWebMm: 0.2,
    edgeSdMm: 0.025,
    windowGrowthMm: 0,
    boreSdMm: 0.05,
  },
};

/**
 * Sheet or print thickness that suits each process. [mm]
 *
 * @source common practice, no source: ten layers of 0.2 mm; plywood or acrylic sheet; overhead film; card;
 * the board most makers of boards stock.
 */
export const thicknessDefaultsMm: Readonly<Record<Process['kind'], number>> = {
  fdm: 2,
  laser: 3,
  film: 0.1,
  'colour-print': 0.3,
  pcb: 1.6,
};
