import { windowSchema } from './recordSchemas.ts';

const text = { type: 'string' } as const;
const station = { type: 'object', properties: { station: text }, required: ['station'] } as const;
const orNothing = { type: ['number', 'null'] } as const;
const refused = { $ref: 'problems#' } as const;

const point = {
  type: 'object',
  properties: {
    atMs: { type: 'number' },
    coverage: { type: 'number' },
    headingDeg: orNothing,
    meanMPerS: orNothing,
    mostMPerS: orNothing,
  },
} as const;

export const recordSchema = {
  summary: 'Which record is served, and how what is logged reaches it: logger, shared or nobody.',
  response: { 200: { type: 'object', properties: { name: text, logging: text } } },
} as const;

export const daysSchema = {
  summary:
    'Every day of a station with samples, named by its end: coverage, mean heading and speed [deg, m/s].',
  params: station,
  response: { 200: { type: 'array', items: point }, '4xx': refused },
} as const;

/** What a series is asked for. */
export interface SeriesWords {
  /** Not included. [ms UTC] */
  readonly sinceMs: number;
  /** Included. [ms UTC] */
  readonly untilMs: number;
  /** [-] */
  readonly most: number;
}

export const seriesSchema = {
  summary: 'A stretch of a station in so many points or fewer, each named by its end [ms UTC, deg, m/s].',
  params: station,
  querystring: {
    type: 'object',
    properties: {
      ...windowSchema.properties,
      most: { type: 'integer', minimum: 1, maximum: 10_000, default: 2000 },
    },
  },
  response: {
    200: {
      type: 'object',
      properties: { stepMs: { type: 'number' }, points: { type: 'array', items: point } },
    },
    '4xx': refused,
  },
} as const;

/** What a review is asked for. */
export interface ReviewWords {
  readonly station: string;
  /** Not included; `undefined` for the beginning. [ms UTC] */
  readonly sinceMs?: number;
  /** Included; `undefined` for the end. [ms UTC] */
  readonly untilMs?: number;
  /** [-] */
  readonly sectors: number;
  /** [min] */
  readonly utcOffsetMin: number;
}

export const reviewSchema = {
  summary:
    'A stretch of a station reviewed: figures, pictures as SVG, tables, and the whole report as a page.',
  querystring: {
    type: 'object',
    required: ['station'],
    properties: {
      station: text,
      sinceMs: { type: 'integer' },
      untilMs: { type: 'integer' },
      sectors: { type: 'integer', minimum: 4, maximum: 72, default: 16 },
      utcOffsetMin: { type: 'integer', minimum: -840, maximum: 840, default: 0 },
    },
  },
  response: { '4xx': refused },
} as const;
