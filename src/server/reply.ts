import type * as z from 'zod';
import type { DocumentFault } from '../job/fault.ts';
import { placeInFile, showPath } from '../job/fault.ts';
import type { Absent, Conflicting, Faulty } from '../store/job-store.ts';
import type { Conflict, WireFault } from '../wire/errors.ts';
import type { RouteName, routes } from '../wire/routes.ts';

type Answers<Name extends RouteName> = (typeof routes)[Name]['answers'];

/** An answer of a route: one of its statuses with the body that belongs to it. */
export type Reply<Name extends RouteName> = {
  [Status in keyof Answers<Name>]: {
    readonly status: Status;
    readonly body: Answers<Name>[Status] extends z.ZodType ? z.input<Answers<Name>[Status]> : never;
  };
}[keyof Answers<Name>];

interface NotFoundReply {
  readonly status: 404;
  readonly body: { readonly error: 'not-found'; readonly message: string };
}

export function replyNotFound(message: string): NotFoundReply {
  return { status: 404, body: { error: 'not-found', message } };
}

export function replyAbsent(id: string, { isRemoved }: Absent): NotFoundReply {
  return replyNotFound(
    isRemoved
      ? `job ${id} was removed; POST /api/jobs/${id}/restore puts it back`
      : `there is no job ${id}; GET /api/jobs lists them`,
  );
}

const CAUSES = {
  behind: 'somebody else saved since: the call is made on an earlier version',
  ahead: 'the call is made on a version that the job has not reached',
  'same-id': 'the id of an edit stands for another edit already',
} as const;

export function replyConflict({ cause, version, savedAt }: Conflicting): {
  readonly status: 409;
  readonly body: Conflict;
} {
  const message = `${CAUSES[cause]}; the job stands at version ${version}, and nothing was stored`;
  return { status: 409, body: { error: 'conflict', message, version, savedAt } };
}

function showFault(fault: DocumentFault): WireFault {
  const { message } = placeInFile('job', fault);
  return { path: showPath(fault.path), value: fault.value, expected: fault.expected, message };
}

interface FaultsReply {
  readonly status: 422;
  readonly body: { readonly error: 'faults'; readonly message: string; readonly faults: readonly WireFault[] };
}

/** @param what was asked to be stored or read, as the sentence says it */
export function replyFaults(what: string, { faults }: Pick<Faulty, 'faults'>): FaultsReply {
  const count = faults.length === 1 ? '1 fault' : `${faults.length} faults`;
  return { status: 422, body: { error: 'faults', message: `${what}: ${count}`, faults: faults.map(showFault) } };
}
