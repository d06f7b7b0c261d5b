import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { LiveAlerts, LiveWind, LiveWinds } from '../app/api.ts';
import { VanewrightError } from '../core/error/index.ts';
import { columnBytes } from '../core/wind/index.ts';
import type { Alert, RecordReading } from '../ports/index.ts';
import {
  columnsSchema,
  ledgerSchema,
  samplesSchema,
  stationsSchema,
  windSchema,
  windowSchema,
  type WindowWords,
} from './recordSchemas.ts';

/** What the record is served from. */
export interface RecordServerParts {
  readonly store: RecordReading;
  readonly live: LiveWinds;
  /** Faults that are watched for; left out where nobody watches. */
  readonly alerts?: LiveAlerts;
}

/** A comment keeps a quiet line of events open. [ms] */
const HEARTBEAT_MS = 15_000;
/** Listeners at once; each costs a connection. [-] */
const LISTENERS_MOST = 100;
/** Events that a slow listener may have waiting before it is let go. [byte] */
const WAITING_MOST = 1_000_000;

function eventOf(wind: LiveWind): string {
  return `event: wind\ndata: ${JSON.stringify(wind)}\n\n`;
}

const faultEventOf = (alert: Alert): string => `event: fault\ndata: ${JSON.stringify(alert)}\n\n`;

/** Server-sent events: the wind of every station as it changes, and its faults as they come and go. */
function sendEvents(
  { live, alerts }: RecordServerParts,
  listeners: Set<FastifyReply>,
  request: FastifyRequest,
  reply: FastifyReply,
): void {
  reply.hijack();
  const { raw } = reply;
  raw.writeHead(200, {
    ...(reply.getHeaders() as Record<string, string>),
    'content-type': 'text/event-stream',
    'cache-control': 'no-store',
  });
  for (const station of live.stations()) raw.write(eventOf(live.wind(station)!));
  for (const alert of alerts?.current() ?? []) raw.write(faultEventOf(alert));
  raw.write(': listening\n\n');
  const send = (text: string): void => {
    if (raw.writableLength > WAITING_MOST) raw.destroy();
    else raw.write(text);
  };
  const endWind = live.listen((wind) => send(eventOf(wind)));
  const endFaults = alerts?.listen((alert) => send(faultEventOf(alert)));
  const beat = setInterval(() => raw.write(': still here\n\n'), HEARTBEAT_MS);
  listeners.add(reply);
  request.raw.once('close', () => {
    endWind();
    endFaults?.();
    clearInterval(beat);
    listeners.delete(reply);
  });
}

function problem(reply: FastifyReply, status: number, what: string, got: string): FastifyReply {
  const { problems } = new VanewrightError({
    code: 'log/no-such-station',
    what,
    where: 'station',
    got: got.slice(0, 80),
    allowed: 'a name of /api/stations',
    fix: 'Ask /api/stations for the names.',
  });
  return reply.status(status).send({ problems });
}

/** At most this many samples are sent in one answer; the rest is asked for from the last instant on. [-] */
const SAMPLES_MOST = 10_000;

async function samplesOf(store: RecordReading, station: string, { sinceMs, untilMs }: WindowWords) {
  const samples = [];
  for await (const batch of store.samples({ station, fromMs: sinceMs, untilMs })) {
    samples.push(...batch.slice(0, SAMPLES_MOST - samples.length));
    if (samples.length >= SAMPLES_MOST) break;
  }
  const isWhole = samples.length < SAMPLES_MOST;
  return { samples, nextSinceMs: isWhole ? null : samples.at(-1)!.atMs + 1 };
}

async function* frames(store: RecordReading, station: string, { sinceMs, untilMs }: WindowWords) {
  for await (const columns of store.columns({ station, fromMs: sinceMs, untilMs }))
    yield columnBytes(columns);
}

/** Routes of a record; gives back what ends the listening, before the server can close. */
export function addRecordRoutes(app: FastifyInstance, parts: RecordServerParts): () => void {
  const { store, live } = parts;
  const listeners = new Set<FastifyReply>();
  app.get('/api/stations', { schema: stationsSchema }, () => store.stations());
  app.get('/api/ledger', { schema: ledgerSchema }, () => store.ledgerCounts());
  app.get<{ Params: { station: string } }>(
    '/api/stations/:station/wind',
    { schema: windSchema },
    (request, reply) => {
      const wind = live.wind(request.params.station);
      return (
        wind ?? problem(reply, 404, 'Nothing has come from a station of that name.', request.params.station)
      );
    },
  );
  app.get<{ Params: { station: string }; Querystring: WindowWords }>(
    '/api/stations/:station/samples',
    { schema: { ...samplesSchema, querystring: windowSchema } },
    (request) => samplesOf(store, request.params.station, request.query),
  );
  app.get<{ Params: { station: string }; Querystring: WindowWords }>(
    '/api/stations/:station/columns',
    { schema: columnsSchema },
    ({ params, query }, reply) =>
      reply.type('application/octet-stream').send(Readable.from(frames(store, params.station, query))),
  );
  app.get(
    '/api/events',
    { schema: { summary: 'Wind of every station as it changes, as server-sent events.' } },
    (request, reply) => {
      if (listeners.size >= LISTENERS_MOST)
        return problem(reply, 503, 'Too many listeners at once.', `${listeners.size}`);
      sendEvents(parts, listeners, request, reply);
      return reply;
    },
  );
  return () => {
    for (const { raw } of listeners) raw.end();
  };
}
