import type { Degrees } from '../../units/index.ts';
import { isCalm } from '../period/calm.ts';
import { READ_HEADING, READ_SPEED, requireColumns, type SampleColumns } from '../period/sampleColumns.ts';
import { requireSample } from '../period/windSample.ts';
import { badSetting, differentLayout, requireAtLeast, unequalLengths } from '../refusal.ts';
import { BLOCK_MS, blockOf, groupOf, GROUPS } from '../uncertainty/block.ts';
import { ArcMemory, slotFor } from './arcMemory.ts';
import { requireSectors, type Sectors } from './sectors.ts';
import { type EqualWeight, StratumClock } from './stratum.ts';

/** Samples of one stratum and group, and where their weight goes. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly cell: number;
  readonly groupCell: number;
}

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
    const slot = slotFor(headingDeg!);
    if (!this.arcs.holds(slot, headingDeg!, halfWidthDeg)) this.arcs.learn(slot, headingDeg!, halfWidthDeg);
    const { starts, firsts, counts, shares } = this.arcs;
    for (let i = 0; i < counts[slot]!; i++) {
      const sector = (firsts[slot]! + i) % sectors.count;
      const part = weight * shares[starts[slot]! + i]!;
      this.cells[cell + sector * this.classes]! += part;
      this.groupCells[groupCell + sector]! += part;
    }
  }

  /**
   * Takes in many samples at once, with the same result as one by one.
   *
   * @param columns - Samples. [ms UTC], [deg], [m/s]
   * @param halfWidthDeg - What every reading covers to either side, or each its own. [deg], 0..180
   * @throws `wind/bad-reading`, `wind/time-not-rising`, `wind/unequal-lengths` before anything is taken in, but
   *   for half-widths, which are refused where they are met.
   */
  addColumns(columns: SampleColumns, halfWidthDeg: Degrees | Float64Array = 0): void {
    requireColumns('RoseSum.addColumns', columns, -Infinity);
    const { atMs } = columns;
    const { count } = this.layout.sectors;
    const halfWidths = typeof halfWidthDeg === 'number' ? null : halfWidthDeg;
    if (halfWidths !== null && halfWidths.length !== atMs.length) {
      throw unequalLengths('RoseSum.addColumns(columns, halfWidthDeg)', atMs.length, halfWidths.length);
    }
    for (let from = 0, to = 0; from < atMs.length; from = to) {
      const stratum = this.clock.indexOf(atMs[from]!);
      const group = this.groupAt(atMs[from]!);
      const untilMs = Math.min(this.clock.untilMs, this.blockFromMs + BLOCK_MS);
      while (to < atMs.length && atMs[to]! < untilMs) to++;
      this.addStretch(columns, halfWidths ?? (halfWidthDeg as Degrees), {
        from,
        to,
        cell: stratum * count * this.classes,
        groupCell: (group * this.strata + stratum) * (count + 1),
      });
    }
  }

  /** Takes in checked samples of one stratum and group, from `from` up to, but not with, `to`. */
  private addStretch(
    { headingDeg, speedMPerS, read }: SampleColumns,
    halfWidthDeg: Degrees | Float64Array,
    { from, to, cell, groupCell }: Stretch,
  ): void {
    const { calmBelowMPerS, sectors } = this.layout;
    const { arcs, cells, groupCells, classes } = this;
    const bounds = this.layout.speedBoundsMPerS;
    const calmCell = groupCell + sectors.count;
    for (let i = from; i < to; i++) {
      const bits = read[i]!;
      const speed = speedMPerS[i]!;
      if (bounds !== null && (bits & READ_SPEED) === 0) {
        this.withoutSpeed++;
        continue;
      }
      if (bounds !== null && (speed < calmBelowMPerS || speed === 0)) {
        groupCells[calmCell]!++;
        continue;
      }
      if ((bits & READ_HEADING) === 0) {
        this.withoutHeading++;
        continue;
      }
      const halfWidth = typeof halfWidthDeg === 'number' ? halfWidthDeg : halfWidthDeg[i]!;
      const slot = slotFor(headingDeg[i]!);
      if (!arcs.holds(slot, headingDeg[i]!, halfWidth)) arcs.learn(slot, headingDeg[i]!, halfWidth);
      const base = cell + (bounds === null ? 0 : classOf(bounds, speed));
      const last = arcs.starts[slot]! + arcs.counts[slot]!;
      let sector = arcs.firsts[slot]!;
      for (let part = arcs.starts[slot]!; part < last; part++) {
        cells[base + sector * classes]! += arcs.shares[part]!;
        groupCells[groupCell + sector]! += arcs.shares[part]!;
        sector = sector + 1 === sectors.count ? 0 : sector + 1;
      }
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
