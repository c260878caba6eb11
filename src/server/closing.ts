import type { FastifyInstance } from 'fastify';

/**
 * Calls that come while the server closes are cut off, as they are a moment later when it is gone: whoever calls knows what to do then.
 * Calls under way are answered.
 */
export function cutOffWhenClosing(app: FastifyInstance): void {
  const state = { isClosing: false };
  app.addHook('preClose', async () => {
    state.isClosing = true;
  });
  app.addHook('onRequest', async (request, reply) => {
    if (!state.isClosing) return;
    reply.hijack();
    request.raw.socket.destroy();
  });
}
