import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { isRecord } from '../job/json-record.ts';

const STATUS_WORDS: Readonly<Record<string, string>> = {
  200: 'As asked',
  201: 'Made',
  400: 'The call is wrong; the message says where',
  403: 'A foreign name for the server, or a change asked for by a page of another site',
  404: 'No such job, version, letter or kept version',
  409: 'Somebody else was first; nothing was stored',
  413: 'Too long',
  415: 'Not JSON',
  422: 'No sound job, or a letter that was issued before; nothing was stored',
  507: 'No room on the disk of the server; nothing of the call was stored',
  500: 'A fault of the server; nothing was stored',
};

/**
 * Makes a generated schema stand alone. Any JSON value is a schema that refers to itself, which is written as "anything"; read-only is a
 * word of the sources' types, in a description of calls it would mean something else.
 */
function tidy(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(tidy);
  if (!isRecord(schema)) return schema;
  if (typeof schema.$ref === 'string') return { description: 'any JSON value' };
  const entries = Object.entries(schema).filter(([key, value]) => key !== 'readOnly' || value !== true);
  return Object.fromEntries(entries.map(([key, value]) => [key, tidy(value)]));
}

/** Schemas of a route as the OpenAPI document shows them. */
export const describeSchemas: typeof jsonSchemaTransform = (document) => {
  const { schema, url } = jsonSchemaTransform(document);
  if (!isRecord(schema)) return { schema, url };
  const shown = tidy(schema) as typeof schema;
  if (!isRecord(shown.response)) return { schema: shown, url };
  const response = Object.fromEntries(
    Object.entries(shown.response).map(([status, answer]) => [
      status,
      { ...(isRecord(answer) ? answer : {}), description: STATUS_WORDS[status] },
    ]),
  );
  return { schema: { ...shown, response }, url };
};
