import { describe, expect, it } from 'vitest';
import { type Route, type RouteName, routes } from '../../src/wire/routes.ts';

describe('the routes', () => {
  it('have a schema for each parameter of their path', () => {
    for (const name of Object.keys(routes) as RouteName[]) {
      const { path, params }: Route = routes[name];
      const inPath = [...path.matchAll(/:([a-z]+)/g)].map((match) => match[1]);
      expect(Object.keys(params?.shape ?? {}), name).toEqual(inPath);
    }
  });

  it('are each another call', () => {
    const calls = Object.values(routes).map(({ method, path }) => `${method} ${path}`);
    expect(new Set(calls).size).toBe(calls.length);
  });

  it('give one answer that is a success', () => {
    for (const [name, { answers }] of Object.entries(routes))
      expect(
        Object.keys(answers).filter((status) => status.startsWith('2')),
        name,
      ).toHaveLength(1);
  });
});
