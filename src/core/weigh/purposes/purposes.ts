import type { Purpose } from './purpose.ts';

/** The mean that weather services report. @source WMO-No. 8, measurement of surface wind: ten minutes. [s] */
const TEN_MINUTES_S = 600;

/** Two minutes, as runways are given. @source US Federal Meteorological Handbook No. 1: two-minute mean. [s] */
const TWO_MINUTES_S = 120;

/** What people want a direction for, one row each. Positions where no source is named: common practice. */
export const purposes: readonly Purpose[] = [
  {
    name: 'garden',
    title: 'a garden or balcony vane',
    positions: 32,
    accuracyDeg: 10,
    averageS: TEN_MINUTES_S,
    isWind: true,
    why: 'It should agree with a look out of the window and fill a rose of 16 petals fairly.',
  },
  {
    name: 'lesson',
    title: 'a lesson at school',
    positions: 16,
    accuracyDeg: 22.5,
    averageS: null,
    isWind: true,
    why: 'Sixteen wide steps survive clumsy assembly, and a spoilt one is seen at once.',
  },
  {
    name: 'flying-site',
    title: 'a site for flying, sailing or kiting',
    positions: 36,
    accuracyDeg: 10,
    averageS: TWO_MINUTES_S,
    isWind: true,
    why: 'Reports go in tens of degrees, so each position is one of them. Others rely on it: a dead lamp must show itself.',
  },
  {
    name: 'turbine-site',
    title: 'judging a site for a small turbine or a shelter belt',
    positions: 72,
    accuracyDeg: 5,
    averageS: TEN_MINUTES_S,
    isWind: true,
    why: 'Within 5 degrees in all, as EPA-454/R-99-005 asks of a system; 12 sectors are compared with an official station.',
  },
  {
    name: 'station',
    title: 'a weather station to be compared with official ones',
    positions: 360,
    accuracyDeg: 5,
    averageS: TEN_MINUTES_S,
    isWind: true,
    why: 'EPA-454/R-99-005 asks for a resolution of 1 degree and an accuracy of 5.',
  },
  {
    name: 'dome',
    title: 'a dome or an antenna rotator',
    positions: 360,
    accuracyDeg: 1.5,
    averageS: null,
    isWind: false,
    why: 'A slit or a beam is a few degrees wide, and the bearing must be known after a power cut.',
  },
  {
    name: 'telescope',
    title: 'a telescope axis',
    positions: 1024,
    accuracyDeg: 0.5,
    averageS: null,
    isWind: false,
    why: 'Ten bits put a target into the finder.',
  },
  {
    name: 'gate',
    title: 'a sluice gate or a valve',
    positions: 24,
    accuracyDeg: 10,
    averageS: null,
    isWind: false,
    why: 'Shut, open and a score of steps between; a reading that cannot be trusted must say so.',
  },
];

/** Their names, for the command line. */
export const purposeNames: readonly string[] = purposes.map(({ name }) => name);
