import type * as z from 'zod';
import type { RouteName, routes } from '../wire/routes.ts';
import type { Reply } from './reply.ts';

type Read<Name extends RouteName, Key extends 'params' | 'query' | 'body'> = (typeof routes)[Name] extends {
  readonly [K in Key]: infer Schema;
}
  ? Schema extends z.ZodType
    ? z.output<Schema>
    : undefined
  : undefined;

/** A call after its schemas have read it. */
export interface Call<Name extends RouteName> {
  readonly params: Read<Name, 'params'>;
  readonly query: Read<Name, 'query'>;
  readonly body: Read<Name, 'body'>;
}

/** What some of the routes do. */
export type HandlersOf<Names extends RouteName> = {
  readonly [Name in Names]: (call: Call<Name>) => Promise<Reply<Name>>;
};

export type Handlers = HandlersOf<RouteName>;
