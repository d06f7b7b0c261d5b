import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';
import { explainInline } from '../core/make/index.ts';
import { sendProblem } from './problemReply.ts';

/** Tells the page that a server stands behind it, so that a page without one asks for nothing. */
const MARK = '<meta name="vanewright-server" content="yes" />';
/** Files whose name holds a hash of their content never change. [s] */
const YEAR_S = 31_536_000;

/** Lets this very text run, or style, and no other. */
function hashSource(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

/** The policy of every answer: what is shown and run comes from here, the solid kernel compiled in the browser. */
export async function addPolicy(app: FastifyInstance): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        // The page that tells how a disc works is shown in a frame of its own, which keeps to this policy too.
        scriptSrc: ["'self'", "'wasm-unsafe-eval'", hashSource(explainInline.script)],
        styleSrc: ["'self'", hashSource(explainInline.style)],
        workerSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    // Plain HTTP on one's own machine or network: a promise of HTTPS would lock the browser out.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
  app.addHook('onSend', async (_request, reply) => {
    reply.header('permissions-policy', 'serial=(self), camera=(), microphone=(), geolocation=()');
  });
}

/** Serves the built workbench. */
export async function addPages(app: FastifyInstance, folder: string): Promise<void> {
  const page = (await readFile(join(folder, 'index.html'), 'utf8')).replace('<head>', `<head>${MARK}`);
  await app.register(fastifyStatic, {
    root: folder,
    index: false,
    dotfiles: 'deny',
    setHeaders: (reply, path) =>
      void reply.header(
        'cache-control',
        /[\\/]assets[\\/]/.test(path) ? `public, max-age=${YEAR_S}, immutable` : 'no-cache',
      ),
  });
  for (const url of ['/', '/index.html']) {
    app.get(url, { schema: { hide: true } }, (_request, reply) =>
      reply.type('text/html; charset=utf-8').header('cache-control', 'no-store').send(page),
    );
  }
  app.setNotFoundHandler((request, reply) =>
    sendProblem(reply, {
      code: 'open/no-page',
      what: 'There is nothing at that address.',
      where: 'address',
      got: `${request.method} ${request.url.slice(0, 80)}`,
      allowed: 'the workbench at /, and what /openapi.json lists',
      fix: 'Open the address that `vanewright open` printed.',
    }),
  );
}
