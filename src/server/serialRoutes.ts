import { PassThrough } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import { VanewrightError } from '../core/error/index.ts';
import type { LineSource, SerialPorts } from '../ports/index.ts';

const text = { type: 'string' } as const;

const portsSchema = {
  summary: 'Serial ports that a turn can be recorded from.',
  response: {
    200: { type: 'array', items: { type: 'object', properties: { path: text, label: text } } },
  },
} as const;

const linesSchema = {
  summary: 'What a serial port sends, as it comes, until the asker hangs up [bit/s].',
  body: {
    type: 'object',
    properties: { path: text, baud: { type: 'integer', minimum: 300, maximum: 2_000_000 } },
    required: ['path', 'baud'],
    additionalProperties: false,
  },
} as const;

/** Bytes that a slow asker may have waiting before the port waits too. [byte] */
const WAITING_MOST = 1 << 20;

function noPort(path: string, known: readonly string[]): VanewrightError {
  return new VanewrightError({
    code: 'open/no-serial-port',
    what: 'There is no such serial port.',
    where: 'path',
    got: JSON.stringify(path.slice(0, 80)),
    allowed: known.join(', ') || 'a port of /api/ports; none is plugged in',
    fix: 'Plug the controller in, or name its port: vanewright open --serial /dev/serial/by-id/NAME',
  });
}

function busy(path: string): VanewrightError {
  return new VanewrightError({
    code: 'open/serial-busy',
    what: 'The port is being read already.',
    where: 'path',
    got: path,
    allowed: 'one reader at a time',
    fix: 'Stop the other recording first, or close the page that does it.',
  });
}

/** A port that cannot be opened says so within this time. [ms] */
const OPENS_WITHIN_MS = 250;

/** Lines of one port, until whoever asked hangs up. @throws `log/source-not-found` when the port cannot be opened. */
async function linesOf(source: LineSource, onEnd: () => void): Promise<PassThrough> {
  const out = new PassThrough({ highWaterMark: WAITING_MOST });
  out.on('error', () => {});
  out.once('close', () => void source.close());
  const running = source
    .run(async ({ bytes }) => {
      if (out.destroyed || bytes.length === 0 || out.write(bytes)) return;
      await new Promise<void>((done) => out.once('drain', done).once('close', done));
    })
    .finally(onEnd);
  const opens = new Promise<void>((done) => setTimeout(done, OPENS_WITHIN_MS));
  await Promise.race([running, opens]);
  running.then(
    () => out.end(),
    (error: Error) => out.destroy(error),
  );
  return out;
}

/** Routes to record a turn of the vane where the browser itself cannot read a port. */
export function addSerialRoutes(app: FastifyInstance, ports: SerialPorts): void {
  const reading = new Set<string>();
  app.get('/api/ports', { schema: portsSchema }, () => ports.list());
  app.post<{ Body: { path: string; baud: number } }>(
    '/api/ports/lines',
    { schema: linesSchema },
    async ({ body }, reply) => {
      const { path, baud } = body;
      const known = (await ports.list()).map((port) => port.path);
      // Only ports that are offered: a path of one's own could name any file.
      if (!known.includes(path)) throw noPort(path, known);
      if (reading.has(path)) throw busy(path);
      reading.add(path);
      const lines = await linesOf(ports.open(path, baud), () => reading.delete(path));
      reply.hijack();
      reply.raw.once('close', () => lines.destroy());
      reply.raw.writeHead(200, {
        ...(reply.getHeaders() as Record<string, string>),
        'content-type': 'text/plain; charset=utf-8',
        'cache-control': 'no-store',
      });
      // The page is told that the port is open before the first line comes.
      reply.raw.flushHeaders();
      lines.pipe(reply.raw);
      return reply;
    },
  );
}
