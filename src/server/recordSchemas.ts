/** Shapes of what is served; the OpenAPI document and the checks are both made from these. */
const number = { type: 'number' } as const;
const integer = { type: 'integer' } as const;
const text = { type: 'string' } as const;
const orNothing = (type: 'number' | 'string' | 'integer') => ({ type: [type, 'null'] }) as const;

/** What a refusal looks like. */
export const problemSchema = {
  $id: 'problems',
  type: 'object',
  properties: { problems: { type: 'array', items: { type: 'object', additionalProperties: true } } },
} as const;

const mean = {
  type: 'object',
  properties: {
    headingDeg: orNothing('number'),
    agreement: orNothing('number'),
    spreadDeg: orNothing('number'),
    speedMPerS: orNothing('number'),
    samples: integer,
    calms: integer,
  },
} as const;

export const stationsSchema = {
  summary: 'Stations of the store, with the span of their samples [ms UTC].',
  response: {
    200: {
      type: 'array',
      items: {
        type: 'object',
        properties: { station: text, samples: integer, firstMs: number, lastMs: number },
      },
    },
  },
} as const;

export const ledgerSchema = {
  summary: 'How often each reason stands in the repair ledger.',
  response: {
    200: { type: 'array', items: { type: 'object', properties: { reason: text, count: integer } } },
  },
} as const;

export const windSchema = {
  summary: 'Wind of now: last sample, 3 s gust of ten minutes, means of two and ten minutes [deg, m/s].',
  params: { type: 'object', properties: { station: text }, required: ['station'] },
  response: {
    200: {
      type: 'object',
      properties: {
        station: text,
        atMs: number,
        headingDeg: orNothing('number'),
        halfWidthDeg: orNothing('number'),
        speedMPerS: orNothing('number'),
        flags: integer,
        word: orNothing('string'),
        gust: { type: ['object', 'null'], properties: { speedMPerS: number, atMs: number } },
        twoMinutes: mean,
        tenMinutes: mean,
      },
    },
    404: { $ref: 'problems#' },
  },
} as const;

/** Part of a station's samples, as asked for. */
export interface WindowWords {
  /** Included. [ms UTC] */
  readonly sinceMs: number;
  /** Not included. [ms UTC] */
  readonly untilMs: number;
}

/** Latest instant that JavaScript dates have. [ms UTC] */
const LAST_MS = 8.64e15;

export const windowSchema = {
  type: 'object',
  properties: {
    sinceMs: { type: 'integer', minimum: -LAST_MS, maximum: LAST_MS, default: 0 },
    untilMs: { type: 'integer', minimum: -LAST_MS, maximum: LAST_MS, default: LAST_MS },
  },
} as const;

export const samplesSchema = {
  summary: 'Samples of a station, oldest first; ask again from nextSinceMs on while it is not null.',
  params: { type: 'object', properties: { station: text }, required: ['station'] },
  response: {
    200: {
      type: 'object',
      properties: {
        samples: {
          type: 'array',
          items: {
            type: 'object',
            properties: {
              atMs: number,
              withinMs: number,
              headingDeg: orNothing('number'),
              halfWidthDeg: orNothing('number'),
              speedMPerS: orNothing('number'),
              gustMPerS: orNothing('number'),
              flags: integer,
              word: orNothing('string'),
              meanHeadingDeg: orNothing('number'),
              agreement: orNothing('number'),
              counts: { type: ['array', 'null'], items: number },
              pulses: orNothing('number'),
              edges: orNothing('number'),
              stream: integer,
              line: integer,
            },
          },
        },
        nextSinceMs: orNothing('number'),
      },
    },
  },
} as const;

export const columnsSchema = {
  summary:
    'Samples as columns of numbers in this machine\u2019s byte order, frame by frame: count, instants [ms UTC], headings [deg], speeds [m/s], and a byte each for what was read (1 heading, 2 speed), filled up to 8 bytes.',
  produces: ['application/octet-stream'],
  params: { type: 'object', properties: { station: text }, required: ['station'] },
  querystring: windowSchema,
} as const;
