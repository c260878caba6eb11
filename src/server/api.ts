import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { ENGINE_VERSION } from '../engine/version.ts';
import type { Store } from '../store/store.ts';
import { type Route, type RouteName, routes } from '../wire/routes.ts';
import type { Call, Handlers } from './handler.ts';
import { makeHandlers } from './handlers.ts';
import { describeSchemas } from './open-api.ts';
import { addPhotos } from './photos.ts';
import type { Reply } from './reply.ts';

const DESCRIPTION =
  'Jobs of threaded inserts cast into precast panels: drafts saved as edits, issued revisions, versions kept of conflicts, records of what was ' +
  'done. Photos are bytes under their SHA-256: PUT and GET /api/photos/HASH. ' +
  'There are no accounts yet; the server is for the machine that it runs on.';

function describe({ summary, params, query, body, answers }: Route, operationId: string) {
  return {
    operationId,
    summary,
    ...(params === undefined ? {} : { params }),
    ...(query === undefined ? {} : { querystring: query }),
    ...(body === undefined ? {} : { body }),
    response: answers,
  };
}

function addRoute<Name extends RouteName>(app: FastifyInstance, name: Name, handlers: Handlers): void {
  const route: Route = routes[name];
  app.route({
    method: route.method,
    url: route.path,
    schema: describe(route, name),
    handler: async ({ params, query, body }, reply) => {
      // The schemas of the route have read all three; Fastify does not carry their types to here.
      const answer: Reply<Name> = await handlers[name]({ params, query, body } as Call<Name>);
      return reply.code(answer.status as number).send(answer.body);
    },
  });
}

/** Every route of the contract, checked by its schemas on the way in and on the way out, and described at /api/openapi.json. */
export async function addApi(app: FastifyInstance, store: Store): Promise<void> {
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Onepour', version: ENGINE_VERSION, description: DESCRIPTION } },
    transform: describeSchemas,
  });
  const handlers = makeHandlers(store);
  await app.register(async (api) => {
    for (const name of Object.keys(routes) as RouteName[]) addRoute(api, name, handlers);
    api.get('/api/openapi.json', { schema: { hide: true } }, async () => app.swagger());
  });
  await addPhotos(app, store);
}
