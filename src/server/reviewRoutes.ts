import type { FastifyInstance } from 'fastify';
import { RecordOutline, reviewOfRecord, shortReasons, type LiveAlerts, type LiveRelay } from '../app/api.ts';
import { VanewrightError } from '../core/error/index.ts';
import {
  answerOf,
  definitions,
  reviewData,
  reviewPage,
  reviewPictures,
  reviewTables,
} from '../core/review/index.ts';
import { csvText } from '../core/report/index.ts';
import type { InstrumentFiles, ProjectFolder, RecordReading } from '../ports/index.ts';
import type { ServedProject } from './projectRoutes.ts';
import {
  daysSchema,
  recordSchema,
  reviewSchema,
  seriesSchema,
  type ReviewWords,
  type SeriesWords,
} from './reviewSchemas.ts';

/** The record that is served beside the project. */
export interface ServedRecord {
  /** What it is called to the maker. */
  readonly name: string;
  readonly store: RecordReading;
  readonly live: LiveRelay;
  readonly alerts: LiveAlerts;
}

/** Files of the project, for the use cases that read an instrument. */
function instrumentFilesOf(folder: ProjectFolder): Pick<InstrumentFiles, 'readText'> {
  return {
    async readText(path, mostBytes) {
      const file = await folder.read(path, mostBytes);
      if (file) return new TextDecoder('utf-8', { fatal: true }).decode(file.bytes);
      throw new VanewrightError({
        code: 'files/not-found',
        what: 'The project has no instrument file yet.',
        where: path,
        got: 'nothing',
        allowed: 'a saved instrument file',
        fix: 'Change something on the Disc page, which saves the file.',
      });
    },
  };
}

/** Outlines of the stations, each read through once and then only continued. */
class Outlines {
  readonly #store: RecordReading;
  readonly #byStation = new Map<string, RecordOutline>();

  constructor(store: RecordReading) {
    this.#store = store;
  }

  async of(station: string): Promise<RecordOutline> {
    const known = this.#byStation.get(station);
    const outline = known ?? new RecordOutline(this.#store, station);
    if (!known) {
      // A name that nobody has is not remembered.
      const spans = await this.#store.stations();
      if (!spans.some((span) => span.station === station)) throw noStation(station);
      this.#byStation.set(station, outline);
    }
    await outline.refresh();
    return outline;
  }
}

function noStation(station: string): VanewrightError {
  return new VanewrightError({
    code: 'log/no-such-station',
    what: 'The record holds no station of that name.',
    where: 'station',
    got: station.slice(0, 80),
    allowed: 'a name of /api/stations',
    fix: 'Ask /api/stations for the names.',
  });
}

/** A review as the page shows it: everything worked out and drawn, nothing left to do but to lay it out. */
async function shownReview({ folder, path }: ServedProject, store: RecordReading, words: ReviewWords) {
  const files = instrumentFilesOf(folder) as InstrumentFiles;
  const { station, sinceMs = null, untilMs = null, sectors, utcOffsetMin } = words;
  const review = await reviewOfRecord(
    { files, store },
    {
      path,
      station,
      sinceMs,
      untilMs,
      against: null,
      sectors,
      equalWeight: 'reading',
      utcOffsetMin,
      calmBelowMPerS: null,
    },
  );
  const csv = new Map(reviewData(review).map(({ name, headings, rows }) => [name, csvText(headings, rows)]));
  return {
    answer: answerOf(review),
    reasons: shortReasons(review),
    fromMs: review.fromMs,
    untilMs: review.untilMs,
    samples: review.samples,
    pictures: reviewPictures(review).map(({ drawing, ...picture }) => ({ ...picture, svg: drawing.html })),
    tables: reviewTables(review).map((table) => ({ ...table, csv: csv.get(table.name)! })),
    definitions,
    page: reviewPage(review),
  };
}

/** Routes of what the record comes to. */
export function addReviewRoutes(app: FastifyInstance, project: ServedProject, record: ServedRecord): void {
  const { name, store, live } = record;
  const outlines = new Outlines(store);
  app.get('/api/record', { schema: recordSchema }, () => ({ name, logging: live.logging }));
  app.get<{ Params: { station: string } }>(
    '/api/stations/:station/days',
    { schema: daysSchema },
    async ({ params }) => (await outlines.of(params.station)).days(),
  );
  app.get<{ Params: { station: string }; Querystring: SeriesWords }>(
    '/api/stations/:station/series',
    { schema: seriesSchema },
    async ({ params, query }) => (await outlines.of(params.station)).series(query, query.most),
  );
  app.get<{ Querystring: ReviewWords }>('/api/review', { schema: reviewSchema }, ({ query }) =>
    shownReview(project, store, query),
  );
}
