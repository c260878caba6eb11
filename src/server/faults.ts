import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { DiskFullError } from '../store/record-store.ts';
import type { WireError } from '../wire/errors.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Content types of a route whose body is not JSON. */
    readonly takes?: readonly string[];
  }
}

/** Where in a call a schema found a fault. */
const PLACES: Readonly<Record<string, string>> = {
  params: 'address',
  querystring: 'question in the address',
  body: 'body',
};

function send(reply: FastifyReply, status: number, body: WireError): FastifyReply {
  return reply.code(status).send(body);
}

/** Where and what a schema objects to: `body/edits/0/id: …`. */
function wordSchemaFaults(error: FastifyError): string {
  const place = PLACES[error.validationContext ?? ''] ?? 'call';
  const faults = (error.validation ?? []).map(({ instancePath, message }) => `${instancePath || '/'}: ${message}`);
  const more = faults.length > 5 ? `; and ${faults.length - 5} more` : '';
  return `${place} ${faults.slice(0, 5).join('; ')}${more}`;
}

/** Lists in lists without end: a schema follows them down until the stack is full. */
function isTooDeep(error: Error): boolean {
  return error instanceof RangeError && error.message.includes('call stack');
}

/** Words every answer that no handler gives: wrong calls, too long ones, and the server's own faults. */
export function wordFaults(app: FastifyInstance, tell: (line: string) => void): void {
  app.setErrorHandler<FastifyError>((error, request, reply) => {
    if (hasZodFastifySchemaValidationErrors(error))
      return send(reply, 400, { error: 'bad-input', message: wordSchemaFaults(error) });
    if (isTooDeep(error)) return send(reply, 400, { error: 'bad-input', message: 'body: values are nested too deep' });
    if (error instanceof DiskFullError) {
      tell(`${request.method} ${request.url}: ${error.message}`);
      return send(reply, 507, { error: 'disk-full', message: error.message });
    }
    const status = error.statusCode ?? 500;
    const { bodyLimit, config } = request.routeOptions;
    if (status === 413)
      return send(reply, 413, { error: 'too-large', message: `the body is longer than ${bodyLimit} bytes` });
    if (status >= 400 && status < 500) {
      const message =
        status === 415
          ? `the body is expected ${config.takes === undefined ? 'as JSON, with the content type application/json' : `as one of ${config.takes.join(', ')}`}`
          : `body: ${error.message}`;
      return send(reply, status === 415 ? 415 : 400, { error: 'bad-input', message });
    }
    tell(`${request.method} ${request.url}: ${error.stack ?? error.message}`);
    return send(reply, 500, { error: 'failed', message: 'the server failed; nothing of the call was stored' });
  });
}
