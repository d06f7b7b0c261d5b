import type { Problem } from '../../core/error/index.ts';
import { store } from '../project/store.ts';
import { knownToken } from './token.ts';

/** How the server behind the page stands: none at all, answering, silent, or asking for a token. */
export type Connection = 'none' | 'here' | 'lost' | 'token';

/** What is known of the server. */
export const connection = store<Connection>(
  document.querySelector('meta[name="vanewright-server"]') === null ? 'none' : 'here',
);

/** The record that the server reads; `null` where it has none. */
export const servedRecord = store<string | null>(null);

/** The server has refused; it says why. */
export class Refused extends Error {
  readonly problems: readonly Problem[];
  readonly status: number;

  constructor(status: number, problems: readonly Problem[]) {
    super(problems[0]?.what ?? `${status}`);
    this.status = status;
    this.problems = problems;
  }
}

/** The server does not answer. */
export class Away extends Error {}

async function problemsOf(response: Response): Promise<readonly Problem[]> {
  const body = (await response.json().catch(() => ({}))) as { readonly problems?: readonly Problem[] };
  return body.problems ?? [];
}

/**
 * Asks the server; every answer, and every silence, tells how the connection stands.
 *
 * @param path - Below `api/`.
 * @throws Refused, Away
 */
export async function askServer(path: string, init: RequestInit = {}): Promise<Response> {
  const headers = new Headers(init.headers);
  const token = knownToken();
  if (token !== null) headers.set('authorization', `Bearer ${token}`);
  const response = await fetch(`./api/${path}`, { cache: 'no-store', ...init, headers }).catch(() => null);
  if (response === null) {
    // Work that was called off says nothing about the server.
    if (!init.signal?.aborted) connection.set('lost');
    throw new Away();
  }
  connection.set(response.status === 401 ? 'token' : 'here');
  if (response.ok) return response;
  throw new Refused(response.status, await problemsOf(response));
}

/** Asks for a document. @throws Refused, Away */
export async function documentOf<T>(path: string, init?: RequestInit): Promise<T> {
  return (await (await askServer(path, init)).json()) as T;
}
