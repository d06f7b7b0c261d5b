import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import { problemSchema } from './recordSchemas.ts';

/** Describes the routes that follow, as OpenAPI at /openapi.json. */
export async function describeApi(app: FastifyInstance, title: string, description: string): Promise<void> {
  await app.register(swagger, { openapi: { info: { title, version: '1', description } } });
  app.addSchema(problemSchema);
  app.get('/openapi.json', { schema: { hide: true } }, () => app.swagger());
}
