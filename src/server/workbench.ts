import rateLimit from '@fastify/rate-limit';
import fastify, { type FastifyInstance } from 'fastify';
import { describeApi } from './describeApi.ts';
import { addGate, type GateRules } from './gate.ts';
import { addPages, addPolicy } from './pages.ts';
import { answerErrors } from './problemReply.ts';
import { addProjectRoutes, type ServedProject } from './projectRoutes.ts';
import { addRecordRoutes } from './recordRoutes.ts';
import { addReviewRoutes, type ServedRecord } from './reviewRoutes.ts';
import type { Listening } from './recordServer.ts';
import { addSerialRoutes } from './serialRoutes.ts';
import type { SerialPorts } from '../ports/index.ts';
import { VanewrightError } from '../core/error/index.ts';

/** What the workbench is served from. */
export interface WorkbenchParts {
  /** Folder of the built page. */
  readonly pages: string;
  readonly project: ServedProject;
  /** `null` where no store was named. */
  readonly record: ServedRecord | null;
  readonly ports: SerialPorts;
  /** Hears of faults of ours. */
  say(text: string): void;
}

/** Where it listens, and who may ask. */
export interface WorkbenchAddress extends GateRules {
  /** Address of the network to listen on. */
  readonly host: string;
  /** 0 takes a free one. [-] */
  readonly port: number;
}

/** Requests of one address a minute: a page in use asks for far fewer. [1/min] */
const REQUESTS_MOST = 1200;

function tooFast(): VanewrightError {
  return new VanewrightError({
    code: 'open/too-fast',
    what: 'More requests came from this address than a page makes.',
    where: 'address',
    got: `more than ${REQUESTS_MOST} within a minute`,
    allowed: `${REQUESTS_MOST} a minute`,
    fix: 'Wait a minute.',
  });
}

/** All routes; gives back what must end before the server can close. */
async function addAll(
  app: FastifyInstance,
  { pages, project, record, ports }: WorkbenchParts,
): Promise<() => void> {
  await addPages(app, pages);
  let endListening = (): void => {};
  await app.register(async (routes) => {
    await addProjectRoutes(routes, project, record?.name ?? null);
    addSerialRoutes(routes, ports);
    if (!record) return;
    endListening = addRecordRoutes(routes, record);
    addReviewRoutes(routes, project, record);
  });
  return endListening;
}

/** Serves the workbench and the project it works on. */
export async function workbenchServer(parts: WorkbenchParts, address: WorkbenchAddress): Promise<Listening> {
  const app = fastify({ logger: false, forceCloseConnections: true, routerOptions: { maxParamLength: 300 } });
  app.setErrorHandler(answerErrors(parts.say));
  await addPolicy(app);
  await app.register(rateLimit, {
    max: REQUESTS_MOST,
    timeWindow: '1 minute',
    errorResponseBuilder: () => tooFast(),
  });
  addGate(app, address);
  await describeApi(app, 'Workbench', 'The project, its record and its serial ports; times in ms UTC.');
  const endListening = await addAll(app, parts);
  const url = await app.listen({ host: address.host, port: address.port });
  return {
    url,
    async close() {
      endListening();
      await app.close();
    },
  };
}
