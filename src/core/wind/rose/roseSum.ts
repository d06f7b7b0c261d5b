import type { Degrees } from '../../units/index.ts';
import { isCalm } from '../period/calm.ts';
import { requireSample } from '../period/windSample.ts';
import { badSetting, differentLayout, requireAtLeast } from '../refusal.ts';
import { BLOCK_MS, blockOf, groupOf, GROUPS } from '../uncertainty/block.ts';
import { ArcMemory } from './arcMemory.ts';
import { requireSectors, type Sectors } from './sectors.ts';
import { type EqualWeight, StratumClock } from './stratum.ts';

/** What a rose shall show. */
export interface RoseLayout {
  readonly sectors: Sectors;
  /** Speeds at which a new class begins, rising; `null` = no cups, so neither classes nor calms. [m/s] */
  readonly speedBoundsMPerS: readonly number[] | null;
  /** As `calmThreshold` gives it. [m/s], ≥ 0 */
  readonly calmBelowMPerS: number;
  readonly equalWeight: EqualWeight;
  /** Local time less UTC, where hours of the day shall count the same. [min] */
  readonly utcOffsetMin: number;
}

/**
 * Joint table of sectors and speed classes, summed in one pass with calms apart, kept by stratum and by group of
 * weeks so that shares can be weighted and given a confidence afterwards. Memory does not grow with the record.
 *
 * @source EPA-454/R-99-005 (2000), section 6.2.3 (calms apart); sharing by overlap as `sectorShares`.
 * @check test/published/boston-1995/rose.test.ts
 */
export class RoseSum {
  readonly layout: RoseLayout;
  /** Speed classes, 1 without cups. [-] */
  readonly classes: number;
  /** Number of strata. [-] */
  readonly strata: number;
  /** Weight by stratum, sector and speed class. [-] */
  readonly cells: Float64Array;
  /** Weight by group, stratum and sector; the calms come last, as one sector more. [-] */
  readonly groupCells: Float64Array;
  /** Blocks of a week that hold readings. */
  readonly blocks = new Set<number>();
  /** Weight of samples with wind but no readable heading. [-] */
  withoutHeading = 0;
  /** Weight of samples without a speed, so that nobody knows whether they are calm. [-] */
  withoutSpeed = 0;
  private readonly clock: StratumClock;
  private readonly arcs: ArcMemory;
  private blockFromMs = Infinity;
  private group = 0;

  /** @throws `wind/bad-setting`, `wind/bad-reading` where the layout cannot work. */
  constructor(layout: RoseLayout) {
    requireSectors(layout.sectors);
    requireAtLeast(layout.calmBelowMPerS, 0, 'layout.calmBelowMPerS', 'm/s');
    const bounds = layout.speedBoundsMPerS ?? [];
    const rising = bounds.every((bound, i) => bound > (bounds[i - 1] ?? 0) && Number.isFinite(bound));
    if (!rising) {
      const allowed = 'speeds above 0 m/s, each above the one before';
      throw badSetting(
        'layout.speedBoundsMPerS',
        `[${bounds.join(', ')}] m/s`,
        allowed,
        'Use [2, 4, 6, 8, 10].',
      );
    }
    this.layout = layout;
    this.arcs = new ArcMemory(layout.sectors);
    this.clock = new StratumClock(layout.equalWeight, layout.utcOffsetMin);
    this.strata = this.clock.count;
    this.classes = bounds.length + 1;
    this.cells = new Float64Array(this.strata * layout.sectors.count * this.classes);
    this.groupCells = new Float64Array(GROUPS * this.strata * (layout.sectors.count + 1));
  }

  /**
   * @param atMs - Instant of the sample, in any order. [ms UTC]
   * @param headingDeg - Middle of what the reading covers; `null` = could not be read. [deg], 0 ≤ d < 360
   * @param speedMPerS - `null` = could not be read, or no cups. [m/s], ≥ 0
   * @param halfWidthDeg - What the reading covers to either side, as built; 0 = a point. [deg], 0..180
   * @param weight - How much it counts, such as the time it stands for. [-], ≥ 0
   * @throws `wind/bad-reading` when a number is not usable.
   */
  add(
    atMs: number,
    headingDeg: Degrees | null,
    speedMPerS: number | null,
    halfWidthDeg: Degrees = 0,
    weight = 1,
  ): void {
    requireSample('RoseSum.add', atMs, headingDeg, speedMPerS);
    requireAtLeast(weight, 0, 'RoseSum.add(weight)', '[-]');
    const { sectors, speedBoundsMPerS, calmBelowMPerS } = this.layout;
    if (speedMPerS === null && speedBoundsMPerS !== null) {
      this.withoutSpeed += weight;
      return;
    }
    const calm = speedBoundsMPerS !== null && speedMPerS !== null && isCalm(speedMPerS, calmBelowMPerS);
    if (headingDeg === null && !calm) {
      this.withoutHeading += weight;
      return;
    }
    const stratum = this.clock.indexOf(atMs);
    const groupCell = (this.groupAt(atMs) * this.strata + stratum) * (sectors.count + 1);
    if (calm) {
      this.groupCells[groupCell + sectors.count]! += weight;
      return;
    }
    const speedClass = speedBoundsMPerS === null ? 0 : classOf(speedBoundsMPerS, speedMPerS!);
    const cell = stratum * sectors.count * this.classes + speedClass;
    const { firsts, counts, shares, row } = this.arcs;
    const slot = this.arcs.slotOf(headingDeg!, halfWidthDeg);
    for (let i = 0; i < counts[slot]!; i++) {
      const sector = (firsts[slot]! + i) % sectors.count;
      const part = weight * shares[slot * row + i]!;
      this.cells[cell + sector * this.classes]! += part;
      this.groupCells[groupCell + sector]! += part;
    }
  }

  /** Group of the week of an instant [ms UTC]; most samples lie in the same week as the one before. */
  private groupAt(atMs: number): number {
    const isSameBlock = atMs >= this.blockFromMs && atMs < this.blockFromMs + BLOCK_MS;
    if (!isSameBlock) {
      const block = blockOf(atMs);
      this.blockFromMs = block * BLOCK_MS;
      this.group = groupOf(block);
      this.blocks.add(block);
    }
    return this.group;
  }

  /**
   * Takes in the samples of another sum, of any other time.
   *
   * @throws `wind/different-layout` when the two do not show the same.
   */
  merge(other: RoseSum): void {
    const [mine, theirs] = [JSON.stringify(this.layout), JSON.stringify(other.layout)];
    if (mine !== theirs) throw differentLayout('RoseSum.merge(other)', theirs, mine);
    other.cells.forEach((weight, i) => (this.cells[i]! += weight));
    other.groupCells.forEach((weight, i) => (this.groupCells[i]! += weight));
    other.blocks.forEach((block) => this.blocks.add(block));
    this.withoutHeading += other.withoutHeading;
    this.withoutSpeed += other.withoutSpeed;
  }
}

/** Class of a speed [m/s]: a bound belongs to the class that begins there. */
function classOf(bounds: readonly number[], speed: number): number {
  let speedClass = 0;
  while (speedClass < bounds.length && speed >= bounds[speedClass]!) speedClass++;
  return speedClass;
}
