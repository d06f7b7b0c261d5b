export { definitions, type Definition, type DefinitionId } from './page/definitions.ts';
export { answerOf, reviewPage } from './page/reviewPage.ts';
export { reviewPictures, type ReviewPicture } from './page/reviewPictures.ts';
export type { ReviewTable } from './page/reviewTable.ts';
export { reviewTables } from './page/reviewTables.ts';
export { RecordSum, type FoundFaults, type ReviewChoices } from './record.ts';
export { reviewOf, type OtherRecord, type Review, type ReviewSubject } from './review.ts';
export { readingWidths, type ReadingWidths } from './sum/readingWidths.ts';
export { sampleIntervalMs } from './sum/sampleInterval.ts';
