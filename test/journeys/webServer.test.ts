import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { request, type IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { opened, running, type Running } from '../support/openCommand.ts';
import { ownFolder, vanewright } from '../support/runCli.ts';
import { textOf } from '../support/sourceFiles.ts';

const isOutput = new Ajv2020({ allowUnionTypes: true }).compile(
  JSON.parse(textOf('schema/output.schema.json')),
);

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

interface Asked {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Buffer;
}

/** Asks with the path exactly as it is written, which browsers and fetch would tidy up. */
function ask(
  server: Running,
  path: string,
  { method = 'GET', headers = {}, body }: Asked = {},
): Promise<Answer> {
  const { hostname, port } = new URL(server.urls[0]!);
  return new Promise((done, failed) => {
    const asked = request({ host: hostname, port, path, method, headers, agent: false }, (response) => {
      const pieces: Buffer[] = [];
      response.on('data', (piece: Buffer) => pieces.push(piece));
      response.on('error', failed);
      response.on('end', () =>
        done({
          status: response.statusCode!,
          headers: response.headers,
          body: Buffer.concat(pieces).toString(),
        }),
      );
    });
    asked.on('error', failed);
    asked.end(body);
  });
}

const codeOf = ({ body }: Answer): string =>
  (JSON.parse(body) as { problems: { code: string }[] }).problems[0]!.code;
const file = (path: string): string => `/api/project/file?path=${path}`;

let own: ReturnType<typeof ownFolder>;
let server: Running;
const at = (name: string): string => join(own.path, name);
beforeAll(async () => {
  own = ownFolder();
  mkdirSync(at('jetty'));
  writeFileSync(at('secret.txt'), 'secret');
  writeFileSync(at('jetty/instrument.yaml'), 'vanewright: 1\n');
  symlinkSync(own.path, at('jetty/up'));
  server = await opened(at('jetty/instrument.yaml'), '--port', '0');
});
afterAll(async () => {
  await server.end();
  own.end();
});

describe('the server of the workbench', () => {
  it.each([
    '../secret.txt',
    '..%2fsecret.txt',
    '%2e%2e%2fsecret.txt',
    '..%5csecret.txt',
    '%2fetc%2fpasswd.txt',
    'up%2fsecret.txt',
    'a%2f..%2f..%2fsecret.txt',
    'secret.txt%00.yaml',
    'C%3A%5Csecret.txt',
    'file%3A%2F%2F%2Fetc%2Fpasswd.txt',
    '.git%2fconfig.txt',
  ])('gives and takes nothing at %s', async (path) => {
    const read = await ask(server, file(path));
    expect([read.status, codeOf(read)]).toEqual([403, 'open/outside-project']);
    const write = await ask(server, file(path), {
      method: 'PUT',
      headers: { 'if-none-match': '*' },
      body: 'x',
    });
    expect([write.status, codeOf(write)]).toEqual([403, 'open/outside-project']);
    expect(readFileSync(at('secret.txt'), 'utf8')).toBe('secret');
  });

  it.each([
    '/../../package.json',
    '/..%2f..%2fpackage.json',
    '/assets/..%2f..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/package.json',
    '/assets/..%5c..%5c..%5cpackage.json',
    '/assets/%00',
    '//etc/passwd',
    '/.git/config',
  ])('serves no file beside the page at %s', async (path) => {
    const answer = await ask(server, path);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.body).not.toMatch(/"name": "vanewright"|root:/);
  });

  it('answers to no name that only points here, so that no other page can read', async () => {
    for (const host of ['evil.example', 'evil.example:80', '127.0.0.1.evil.example', 'localhost.evil']) {
      const answer = await ask(server, '/api/project', { headers: { host } });
      expect([answer.status, codeOf(answer)], host).toEqual([421, 'open/other-host']);
    }
  });

  it('does nothing for pages of other sites', async () => {
    const headers = { 'if-none-match': '*' };
    for (const origin of ['http://evil.example', 'null', 'https://127.0.0.1', 'http://127.0.0.1:1']) {
      const write = await ask(server, file('x.txt'), {
        method: 'PUT',
        headers: { ...headers, origin },
        body: 'x',
      });
      expect([write.status, codeOf(write)], origin).toEqual([403, 'open/other-site']);
    }
    const read = await ask(server, '/api/project', { headers: { 'sec-fetch-site': 'cross-site' } });
    expect(read.status).toBe(403);
    const preflight = await ask(server, file('x.txt'), {
      method: 'OPTIONS',
      headers: { origin: 'http://evil.example', 'access-control-request-method': 'PUT' },
    });
    expect(preflight.headers['access-control-allow-origin']).toBeUndefined();
    expect((await ask(server, file('x.txt'))).status).toBe(404);
  });

  it('has a strict policy for what a page may run, and shows no file as a page', async () => {
    const page = await ask(server, '/');
    const policy = page.headers['content-security-policy']!;
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|\*/);
    expect(page.headers['x-content-type-options']).toBe('nosniff');
    writeFileSync(at('jetty/<img src=x onerror=alert(1)>.txt'), '<script>alert(1)</script>');
    const listed = JSON.parse((await ask(server, '/api/project/files')).body) as {
      files: { path: string }[];
    };
    expect(listed.files.map(({ path }) => path)).toContain('<img src=x onerror=alert(1)>.txt');
    writeFileSync(at('jetty/words.txt'), '<script>alert(1)</script>');
    const answer = await ask(server, file('words.txt'));
    expect(answer.headers).toMatchObject({
      'content-type': 'application/octet-stream',
      'content-disposition': 'attachment',
      'content-security-policy': policy,
    });
  });

  it('refuses what is too large, before it is stored, and says how large it may be', async () => {
    const write = (path: string, bytes: number): Promise<Answer> =>
      ask(server, file(path), {
        method: 'PUT',
        headers: { 'if-none-match': '*' },
        body: Buffer.alloc(bytes, 'x'),
      });
    const over = await write('turn.csv', 64 * 1024 * 1024 + 1).catch((error: Error) => error);
    // The server may hang up while the rest is still on its way.
    if (!(over instanceof Error)) expect([over.status, codeOf(over)]).toEqual([413, 'open/too-large']);
    const headers = {
      'if-match': `"${'0'.repeat(64)}"`,
      'content-length': String(1024 ** 3),
      'content-type': 'text/plain',
    };
    const said = await ask(server, file('turn.csv'), { method: 'PUT', headers }).catch(
      (error: Error) => error,
    );
    if (!(said instanceof Error)) expect([said.status, codeOf(said)]).toEqual([413, 'open/too-large']);
    const instrument = await write('instrument.yaml', 1_048_577);
    expect([instrument.status, codeOf(instrument)]).toEqual([413, 'open/too-large']);
    expect((await ask(server, file('turn.csv'))).status).toBe(404);
    expect((await ask(server, `/api/project/file?path=${'a'.repeat(100_000)}`)).status).toBe(431);
  });

  it('writes nothing blindly', async () => {
    const blind = await ask(server, file('instrument.yaml'), { method: 'PUT', body: 'x' });
    expect([blind.status, codeOf(blind)]).toEqual([428, 'open/no-version']);
    const late = await ask(server, file('instrument.yaml'), {
      method: 'PUT',
      body: 'x',
      headers: { 'if-match': `"${'0'.repeat(64)}"` },
    });
    expect([late.status, codeOf(late)]).toEqual([409, 'open/changed-elsewhere']);
    expect(readFileSync(at('jetty/instrument.yaml'), 'utf8')).toBe('vanewright: 1\n');
    expect(codeOf(await ask(server, '/api/project/file'))).toBe('open/request');
    expect(codeOf(await ask(server, file('none.csv')))).toBe('open/no-file');
    expect(codeOf(await ask(server, '/nothing'))).toBe('open/no-page');
  });

  it('describes everything it answers as OpenAPI', async () => {
    const api = JSON.parse((await ask(server, '/openapi.json')).body) as { openapi: string; paths: object };
    expect(api.openapi).toMatch(/^3\./);
    expect(Object.keys(api.paths)).toEqual(expect.arrayContaining(['/api/project', '/api/project/file']));
  });
});

describe('a workbench for other machines', () => {
  it('asks for its token everywhere but for the page itself, and slows down who guesses', async () => {
    const open = await opened(at('jetty'), '--host', '0.0.0.0', '--port', '0');
    const token = /#token=([\w-]{32})/.exec(open.urls[0]!)?.[1];
    expect(token).toBeDefined();
    const mine = { authorization: `Bearer ${token}` };
    expect((await ask(open, '/')).status).toBe(200);
    expect((await ask(open, '/api/project', { headers: mine })).status).toBe(200);
    for (const path of [
      '/api/project',
      '/openapi.json',
      '/api/project/files',
      '/%61pi/project',
      '//api/project',
    ]) {
      const answer = await ask(open, path);
      expect([401, 403, 404], path).toContain(answer.status);
      expect(['open/token', 'open/no-page', 'open/request'], path).toContain(codeOf(answer));
    }
    const guess = { headers: { authorization: `Bearer ${token!.slice(0, -1)}_` } };
    for (let i = 0; i < 10; i++) expect((await ask(open, '/api/project', guess)).status).toBe(401);
    const slowed = await ask(open, '/api/project', { headers: mine });
    expect([slowed.status, codeOf(slowed)]).toEqual([429, 'open/too-fast']);
    expect((await ask(open, '/api/project', { headers: { host: 'evil.example', ...mine } })).status).toBe(
      421,
    );
    expect(await open.end()).toBe(0);
  });

  it('refuses weak tokens, taken ports and addresses of others', async () => {
    const said = (...words: string[]): string =>
      vanewright('open', at('jetty'), '--no-browser', ...words).err;
    expect(said('--token', 'short')).toContain('open/weak-token');
    expect(said('--port', new URL(server.urls[0]!).port)).toContain('open/cannot-listen');
    expect(said('--host', '192.0.2.77')).toContain('open/cannot-listen');
  });

  it('answers a flood with patience, not with work', async () => {
    const open = await running('open', at('jetty'), '--no-browser', '--port', '0', '--json');
    const statuses = new Map<number, number>();
    for (let i = 0; i < 26; i++) {
      const answers = await Promise.all(Array.from({ length: 50 }, () => ask(open, '/api/project/version')));
      for (const { status } of answers) statuses.set(status, (statuses.get(status) ?? 0) + 1);
    }
    expect(Object.fromEntries(statuses)).toEqual({ 200: 1200, 429: 100 });
    expect(await open.end()).toBe(0);
    const said = open.said();
    const document: unknown = JSON.parse(said.slice(said.indexOf('{')));
    expect(isOutput(document), JSON.stringify(isOutput.errors)).toBe(true);
  });
});
