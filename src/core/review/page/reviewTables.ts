import type { Review } from '../review.ts';
import { causesTable } from './causesTable.ts';
import { clockTable } from './clockTable.ts';
import { coverageTables, qualityTables } from './recordTables.ts';
import { faultsTable } from './findingsSection.ts';
import type { ReviewTable } from './reviewTable.ts';
import { comparisonTable, roseTable } from './roseTables.ts';
import { extremesTable, forcesTable, gustsTable } from './speedTables.ts';
import { wholeTable } from './wholeTable.ts';

/** Every table of a review, in the order of the page. */
export function reviewTables(review: Review): ReviewTable[] {
  return [
    wholeTable(review),
    faultsTable(review.findings),
    ...causesTable(review.prints),
    ...roseTable(review),
    clockTable('hours', 'By hour of the day', 'hour', review.hours),
    clockTable('months', 'By month', 'month', review.months),
    ...forcesTable(review),
    gustsTable(review),
    extremesTable(review),
    ...comparisonTable(review),
    ...coverageTables(review),
    ...qualityTables(review),
  ];
}
