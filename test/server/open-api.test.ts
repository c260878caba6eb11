import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { routes } from '../../src/wire/routes.ts';
import { type Served, serve } from './serve.ts';

type Json = Record<string, unknown>;

interface Operation {
  readonly operationId: string;
  readonly summary: string;
  readonly parameters?: readonly {
    readonly in: string;
    readonly name: string;
    readonly required?: boolean;
    readonly schema: Json;
  }[];
  readonly requestBody?: { readonly required: boolean; readonly content: Record<string, { readonly schema: Json }> };
  readonly responses: Record<
    string,
    { readonly description: string; readonly content: Record<string, { readonly schema: Json }> }
  >;
}

const TYPES = ['string', 'integer', 'number', 'boolean', 'null', 'array', 'object'];

/** Words of JSON Schema 2020-12 that a schema of the document uses in the wrong way. */
function findWrongWords(schema: unknown, at: string): string[] {
  if (schema === true || schema === false) return [];
  if (typeof schema !== 'object' || schema === null || Array.isArray(schema)) return [`${at}: no schema`];
  const entries = Object.entries(schema as Json).flatMap(([word, value]): string[] => {
    const here = `${at}/${word}`;
    if (word === '$ref' || word === 'readOnly' || word === 'nullable') return [`${here}: must not stand here`];
    if (word === 'type')
      return [value].flat().every((type) => TYPES.includes(String(type))) ? [] : [`${here}: ${value}`];
    if (word === 'properties')
      return Object.entries(value as Json).flatMap(([name, one]) => findWrongWords(one, `${here}/${name}`));
    if (['items', 'additionalProperties', 'propertyNames', 'not'].includes(word)) return findWrongWords(value, here);
    if (['anyOf', 'oneOf', 'allOf', 'prefixItems'].includes(word))
      return Array.isArray(value) && value.length > 0
        ? value.flatMap((one, index) => findWrongWords(one, `${here}/${index}`))
        : [`${here}: no list`];
    if (word === 'required')
      return Array.isArray(value) && new Set(value).size === value.length ? [] : [`${here}: ${value}`];
    if (word === 'pattern') return isPattern(String(value)) ? [] : [`${here}: ${value}`];
    return [];
  });
  return entries;
}

function isPattern(text: string): boolean {
  try {
    new RegExp(text, 'u');
    return true;
  } catch {
    return false;
  }
}

describe('the OpenAPI document', () => {
  let served: Served;
  let document: { openapi: string; info: Json; paths: Record<string, Record<string, Operation>> };
  beforeAll(async () => {
    served = await serve();
    const { status, body } = await served.call('GET', '/api/openapi.json');
    expect(status).toBe(200);
    document = body as typeof document;
  });
  afterAll(() => served.end());

  it('names each route of the contract, once', () => {
    expect(document.openapi).toBe('3.1.0');
    expect(document.info).toMatchObject({ title: 'Onepour', version: '0.1.0' });
    const told = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(
        ([method, { operationId }]) => [operationId, `${method.toUpperCase()} ${path}`] as const,
      ),
    );
    const wanted = Object.entries(routes).map(
      ([name, { method, path }]) => [name, `${method} ${path.replace(/:([a-z]+)/g, '{$1}')}`] as const,
    );
    expect(told.sort()).toEqual(wanted.sort());
  });

  it('describes what goes in and what comes out in sound schemas that need no other file', () => {
    for (const [path, methods] of Object.entries(document.paths))
      for (const [method, operation] of Object.entries(methods)) {
        const at = `${method} ${path}`;
        const inPath = (operation.parameters ?? []).filter((parameter) => parameter.in === 'path');
        expect(inPath.map(({ name }) => `{${name}}`).sort(), at).toEqual((path.match(/\{[a-z]+\}/g) ?? []).sort());
        expect(
          inPath.every(({ required }) => required === true),
          at,
        ).toBe(true);
        const schemas = [
          ...(operation.parameters ?? []).map(({ schema }) => schema),
          ...Object.values(operation.requestBody?.content ?? {}).map(({ schema }) => schema),
          ...Object.values(operation.responses).flatMap(({ content }) =>
            Object.values(content).map(({ schema }) => schema),
          ),
        ];
        expect(schemas.flatMap((schema) => findWrongWords(schema, at))).toEqual([]);
        expect(operation.summary.length, at).toBeGreaterThan(10);
        for (const { description } of Object.values(operation.responses))
          expect(description, at).not.toBe('Default Response');
      }
  });

  it('says which answers a call may have, and that edits need base, editor and edits', () => {
    const save = document.paths['/api/jobs/{id}/edits']!.post!;
    expect(Object.keys(save.responses)).toEqual(['200', '400', '403', '404', '409', '413', '415', '422', '500', '507']);
    expect(save.requestBody!.content['application/json']!.schema).toMatchObject({
      required: ['base', 'editor', 'edits'],
      properties: { edits: { maxItems: 500, items: { required: ['id', 'label', 'at', 'changes', 'back'] } } },
    });
  });
});
