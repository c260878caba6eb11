import type { Fault } from '../../job/fault.ts';
import type { Draft } from './records.ts';
import { REST_FILE, type Rest } from './rest.ts';
import type { Sources } from './sources.ts';
import type { Table } from './table.ts';

/** The schedules of one job. */
export interface Tables {
  readonly panels: Table;
  readonly inserts: Table;
  readonly connections: Table;
  readonly loads: Table;
  readonly catalogue: Table;
  readonly pours: Table;
}

/** What is put together while schedules are read. */
export interface Assembly {
  readonly rest: Rest;
  readonly sources: Sources;
  readonly faults: Fault[];
  readonly assumptions: Set<string>;
}

/** A permanent key where the row brings none: made from the mark, so that reading twice gives the same job. */
export function fillKey(draft: Draft, key: string, { assumptions }: Assembly): void {
  if (draft.key !== undefined) return;
  draft.key = key;
  assumptions.add(
    'permanent keys are made from marks where the schedules give none: a renamed item counts as a new one',
  );
}

/** Copies a value of job.json into a draft, remembering that it came from there. */
export function copyFromRest(
  draft: Draft,
  key: string,
  value: unknown,
  at: readonly (string | number)[],
  from: readonly (string | number)[],
  sources: Sources,
): void {
  if (value === undefined) return;
  draft[key] = value;
  sources.add([...at, key], { file: REST_FILE, path: [...from, key] });
}
