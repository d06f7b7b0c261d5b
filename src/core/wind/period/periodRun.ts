import { HeadingSum } from '../direction/headingSum.ts';
import { eastParts, northParts, unitVectorSlot } from '../direction/unitVector.ts';
import { UnwrappedSum } from '../direction/unwrappedSum.ts';
import { WindVectorSum } from '../direction/windVectorSum.ts';
import { SpeedSum } from '../speed/speedSum.ts';
import { READ_HEADING, READ_SPEED, type SampleColumns } from './sampleColumns.ts';

/** Sums of a run of samples, to be joined to those of a period. */
export interface PeriodRun {
  readonly samples: number;
  readonly calms: number;
  readonly headings: number;
  readonly speed: SpeedSum;
  readonly heading: HeadingSum;
  readonly unwrapped: UnwrappedSum;
  readonly vector: WindVectorSum;
}

/**
 * Sums of the samples from `from` up to, but not with, `to`; the same as adding them one by one, but faster.
 *
 * @param columns - Checked samples. [ms UTC], [deg], [m/s]
 * @param from - First sample. [-]
 * @param to - One past the last sample. [-]
 * @param calmBelowMPerS - As `calmThreshold` gives it. [m/s]
 * @source as `PeriodSum`.
 * @check src/core/wind/period/sampleColumns.test.ts
 */
export function periodRun(
  columns: SampleColumns,
  from: number,
  to: number,
  calmBelowMPerS: number,
): PeriodRun {
  const { headingDeg, speedMPerS, read } = columns;
  const withHeading = new Int32Array(to - from);
  const [heading, vector] = [new HeadingSum(), new WindVectorSum()];
  let calms = 0;
  let headings = 0;
  let both = 0;
  let north = 0;
  let east = 0;
  let windNorth = 0;
  let windEast = 0;
  let speeds = 0;
  for (let i = from; i < to; i++) {
    const bits = read[i]!;
    const speed = speedMPerS[i]!;
    const hasSpeed = (bits & READ_SPEED) !== 0;
    if (hasSpeed && (speed < calmBelowMPerS || speed === 0)) {
      calms++;
      speeds += speed;
      continue;
    }
    if ((bits & READ_HEADING) === 0) continue;
    withHeading[headings++] = i;
    const slot = unitVectorSlot(headingDeg[i]!);
    north += northParts[slot]!;
    east += eastParts[slot]!;
    if (!hasSpeed) continue;
    both++;
    speeds += speed;
    windNorth += northParts[slot]! * speed;
    windEast += eastParts[slot]! * speed;
  }
  heading.addSum(headings, north, east);
  vector.addSum(calms + both, windNorth, windEast, speeds);
  return {
    samples: to - from,
    calms,
    headings,
    speed: SpeedSum.ofRun(columns, from, to),
    heading,
    unwrapped: UnwrappedSum.ofReadings(columns, withHeading.subarray(0, headings)),
    vector,
  };
}
