import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { ProjectFolder, SerialPorts } from '../ports/index.ts';
import { LOOPBACK_HOSTS } from './gate.ts';
import { workbenchServer } from './workbench.ts';

const noPorts: SerialPorts = {
  list: async () => [],
  open: () => {
    throw new Error('no port');
  },
};

it('says a fault of ours in the terminal, and in the answer only that there is one', async () => {
  const pages = await mkdtemp(join(tmpdir(), 'vanewright-pages-'));
  await writeFile(join(pages, 'index.html'), '<head></head>');
  const said: string[] = [];
  const broken: ProjectFolder = {
    name: 'jetty',
    list: () => Promise.reject(new TypeError('inner workings')),
    read: () => Promise.reject(new TypeError('inner workings')),
    write: () => Promise.reject(new TypeError('inner workings')),
  };
  const server = await workbenchServer(
    {
      pages,
      project: { folder: broken, path: 'instrument.yaml' },
      record: null,
      ports: noPorts,
      say: (text) => said.push(text),
    },
    {
      host: '127.0.0.1',
      port: 0,
      hosts: LOOPBACK_HOSTS,
      isAnyAddress: false,
      token: null,
      nowMs: Date.now,
    },
  );
  const response = await fetch(`${server.url}/api/project`);
  expect(response.status).toBe(500);
  const body = await response.text();
  expect(body).toContain('open/fault');
  expect(body).not.toContain('inner workings');
  expect(said.join()).toContain('inner workings');
  await server.close();
  await rm(pages, { recursive: true });
});
