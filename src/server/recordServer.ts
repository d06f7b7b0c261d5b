import fastify from 'fastify';
import { LOOPBACK_HOSTS, addGate } from './gate.ts';
import { describeApi } from './describeApi.ts';
import { answerErrors } from './problemReply.ts';
import { addRecordRoutes, type RecordServerParts } from './recordRoutes.ts';

/** Where it listens. */
export interface Listening {
  /** `http://127.0.0.1:8080` */
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves a record to programs on this machine while it is being written.
 *
 * @param port - 0 takes a free one. [-]
 */
export async function recordServer(parts: RecordServerParts, port: number): Promise<Listening> {
  const app = fastify({ logger: false, forceCloseConnections: true, routerOptions: { maxParamLength: 300 } });
  app.setErrorHandler(answerErrors((text) => process.stderr.write(`${text}\n`)));
  addGate(app, { hosts: LOOPBACK_HOSTS, isAnyAddress: false, token: null, nowMs: Date.now });
  await describeApi(app, 'Wind record', 'What a running logger knows; times in ms UTC.');
  let endListening = (): void => {};
  await app.register(async (routes) => {
    endListening = addRecordRoutes(routes, parts);
  });
  const url = await app.listen({ host: '127.0.0.1', port });
  return {
    url,
    async close() {
      endListening();
      await app.close();
    },
  };
}
