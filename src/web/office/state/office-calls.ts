import type { JobFile } from '../../../job/documents/job-file.ts';
import type { Person } from '../../../records/person.ts';
import type { EditList, NewEdits, Saved } from '../../../wire/edits.ts';
import type { JobAt, JobHead, OpenJob } from '../../../wire/jobs.ts';
import type { KeptHead, KeptVersion, NewKept } from '../../../wire/kept.ts';
import type { Issued, IssuedRevision, NewRevision } from '../../../wire/revisions.ts';
import { call } from '../../parts/call.ts';

const at = (id: string, rest = '') => `/api/jobs/${encodeURIComponent(id)}${rest}`;

/** Everything that the office asks of the server, one line a route of wire/routes.ts. */
export const calls = {
  listJobs: (removed = false) =>
    call<{ readonly jobs: readonly JobHead[] }>('GET', `/api/jobs${removed ? '?removed=yes' : ''}`),
  createJob: (file: JobFile) => call<JobHead>('POST', '/api/jobs', { file }),
  openJob: (id: string) => call<OpenJob>('GET', at(id)),
  removeJob: (id: string) => call<{ readonly removedAt: string }>('DELETE', at(id)),
  restoreJob: (id: string) => call<JobHead>('POST', at(id, '/restore')),
  saveEdits: (id: string, edits: NewEdits) => call<Saved>('POST', at(id, '/edits'), edits),
  listEdits: (id: string, after: number) => call<EditList>('GET', at(id, `/edits?after=${after}`)),
  jobAt: (id: string, version: number) => call<JobAt>('GET', at(id, `/at/${version}`)),
  keepVersion: (id: string, kept: NewKept) => call<KeptHead>('POST', at(id, '/kept'), kept),
  listKept: (id: string) => call<{ readonly kept: readonly KeptHead[] }>('GET', at(id, '/kept')),
  openKept: (id: string, kept: string) => call<KeptVersion>('GET', at(id, `/kept/${encodeURIComponent(kept)}`)),
  issue: (id: string, revision: NewRevision) => call<Issued>('POST', at(id, '/revisions'), revision),
  listRevisions: (id: string) => call<{ readonly revisions: readonly Issued[] }>('GET', at(id, '/revisions')),
  openRevision: (id: string, letter: string) =>
    call<IssuedRevision>('GET', at(id, `/revisions/${encodeURIComponent(letter)}`)),
  listPeople: () => call<{ readonly people: readonly Person[] }>('GET', '/api/people'),
  savePerson: (person: Person) => call<{ readonly people: readonly Person[] }>('POST', '/api/people', person),
};
