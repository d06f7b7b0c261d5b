import { createHash, timingSafeEqual } from 'node:crypto';
import { isIP } from 'node:net';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { VanewrightError, type Problem } from '../core/error/index.ts';

/** Who may ask, and how. */
export interface GateRules {
  /** Names that this server answers to, without a port; every number of an address besides when `isAnyAddress`. */
  readonly hosts: readonly string[];
  readonly isAnyAddress: boolean;
  /** Needed for everything but the page itself; `null` on a machine of one's own. */
  readonly token: string | null;
  readonly nowMs: () => number;
}

/** Names of this machine for itself. */
export const LOOPBACK_HOSTS = ['127.0.0.1', 'localhost', '[::1]'];
/** Wrong tokens from one address within a minute; then right ones wait as well. [-] */
const WRONG_MOST = 10;
const MINUTE_MS = 60_000;
/** Addresses remembered. [-] */
const REMEMBERED_MOST = 10_000;

const refusal = (problem: Problem): never => {
  throw new VanewrightError(problem);
};

const hash = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Compares in a time that tells nothing about how much of it is right. */
export function isSameToken(given: string, token: string): boolean {
  return timingSafeEqual(hash(given), hash(token));
}

/** Name of a `Host` header, without its port. */
function hostName(header: string | undefined): string {
  return (header ?? '').toLowerCase().replace(/:\d+$/, '');
}

/** A name that only points here could be that of a page which wants to read what is served. */
function checkHost({ hosts, isAnyAddress }: GateRules, request: FastifyRequest): void {
  const host = hostName(request.headers.host);
  if (hosts.includes(host)) return;
  if (isAnyAddress && isIP(host.replace(/^\[|\]$/g, '')) !== 0) return;
  refusal({
    code: 'open/other-host',
    what: 'The server is not asked by a name of its own.',
    where: 'Host',
    got: JSON.stringify(host.slice(0, 80)),
    allowed: hosts.join(', '),
    fix: 'Open the address that `vanewright open` printed.',
  });
}

/** Pages of other sites may neither write nor make the browser ask for them. */
function checkSite(request: FastifyRequest): void {
  const { origin, host } = request.headers;
  const site = request.headers['sec-fetch-site'];
  const isOwn = origin === undefined || origin === `http://${host}`;
  const isRead = request.method === 'GET' || request.method === 'HEAD';
  const isNavigation = isRead && request.headers['sec-fetch-mode'] === 'navigate';
  const isOwnSite = site === undefined || site === 'same-origin' || site === 'none' || isNavigation;
  if (isOwn && isOwnSite) return;
  refusal({
    code: 'open/other-site',
    what: 'A page of another site has asked.',
    where: origin === undefined ? 'Sec-Fetch-Site' : 'Origin',
    got: JSON.stringify((origin ?? String(site)).slice(0, 80)),
    allowed: 'the workbench itself',
    fix: 'Open the address that `vanewright open` printed.',
  });
}

/** Counts wrong tokens by address. */
class WrongTokens {
  readonly #byAddress = new Map<string, { count: number; sinceMs: number }>();

  count(address: string, nowMs: number): number {
    const found = this.#byAddress.get(address);
    if (found && nowMs - found.sinceMs < MINUTE_MS) return found.count;
    this.#byAddress.delete(address);
    return 0;
  }

  add(address: string, nowMs: number): void {
    const count = this.count(address, nowMs) + 1;
    if (count === 1 && this.#byAddress.size >= REMEMBERED_MOST) this.#byAddress.clear();
    this.#byAddress.set(address, { count, sinceMs: this.#byAddress.get(address)?.sinceMs ?? nowMs });
  }
}

function checkToken(rules: GateRules, wrong: WrongTokens, request: FastifyRequest): void {
  const { token, nowMs } = rules;
  if (token === null || !isGuarded(request)) return;
  if (wrong.count(request.ip, nowMs()) >= WRONG_MOST) {
    refusal({
      code: 'open/too-fast',
      what: 'Too many wrong tokens came from this address.',
      where: 'Authorization',
      got: `${WRONG_MOST} within a minute`,
      allowed: `fewer than ${WRONG_MOST} a minute`,
      fix: 'Wait a minute, then open the address that `vanewright open` printed.',
    });
  }
  const given = /^Bearer (.+)$/.exec(request.headers.authorization ?? '')?.[1];
  if (given !== undefined && isSameToken(given, token)) return;
  if (given !== undefined) wrong.add(request.ip, nowMs());
  refusal({
    code: 'open/token',
    what: 'The workbench asks for its token.',
    where: 'Authorization',
    got: given === undefined ? 'none' : 'another token',
    allowed: 'the token that `vanewright open` printed',
    fix: 'Open the whole address that it printed, with everything behind #.',
  });
}

/** Routes of the files of the page, which are the same for everyone. */
const OPEN_ROUTES = ['/', '/index.html', '/*'];

/** Everything else is guarded; asked by the route that was found, since one address can be written in many ways. */
function isGuarded({ routeOptions }: FastifyRequest): boolean {
  return routeOptions.url !== undefined && !OPEN_ROUTES.includes(routeOptions.url);
}

/** Lets in who may ask: by the right name, from the page itself, with the token where one is needed. */
export function addGate(app: FastifyInstance, rules: GateRules): void {
  const wrong = new WrongTokens();
  app.addHook('onRequest', async (request) => {
    checkHost(rules, request);
    checkSite(request);
    checkToken(rules, wrong, request);
  });
}
