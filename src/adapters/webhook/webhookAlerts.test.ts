import { createServer } from 'node:http';
import { expect, it } from 'vitest';
import { someAlert } from '../../../test/support/someAlert.ts';
import { webhookAlerts } from './webhookAlerts.ts';

it('posts an alert as JSON, and says so when it was not taken', async () => {
  const bodies: unknown[] = [];
  let status = 204;
  const server = createServer((request, response) => {
    let body = '';
    request.on('data', (piece) => (body += piece));
    request.on('end', () => {
      bodies.push([request.method, request.headers['content-type'], JSON.parse(body)]);
      response.writeHead(status).end();
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', () => done()));
  const { port } = server.address() as { port: number };
  const channel = webhookAlerts(`http://127.0.0.1:${port}/hook/secret-token`);
  await channel.send(someAlert());
  expect(bodies).toEqual([['POST', 'application/json', someAlert()]]);
  expect(channel.name).not.toContain('secret');
  status = 500;
  await expect(channel.send(someAlert())).rejects.toThrow('it answered 500');
  await channel.close();
  server.closeAllConnections();
  server.close();
});
