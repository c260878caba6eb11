import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { editJob, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { indexJob, type JobIndex } from '../../../src/job/job-index.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import type { Person } from '../../../src/records/person.ts';
import { demo } from '../../job/edit/demo.ts';
import type { OfficeServer } from '../harness/office-server.ts';

/** The mark that is cast eight times in one pour, and another mark of the job. */
export const MARK = 'P04';
export const OTHER_MARK = 'P07';
export const POUR = 'T21';
export const SERIALS = ['1', '2', '3', '4', '5', '6', '7', '8'] as const;

const PEOPLE: readonly Person[] = [
  { id: 'eightchecker', name: 'D. Nobody (invented checker)', roles: ['checker'], registration: null },
  { id: 'eightforeman', name: 'E. Nobody (invented foreman)', roles: ['foreman', 'checker'], registration: null },
  { id: 'eightquality', name: 'F. Nobody (invented QA)', roles: ['qa'], registration: null },
];

/** Two panels of the demo, the first cast eight times in one pour. */
function makeFile(): JobFile {
  const marks = new Set([MARK, OTHER_MARK]);
  const { job } = demo;
  const [bed] = demo.library.yard.beds;
  const pieces = SERIALS.map((serial) => ({ panel: MARK, serial, revision: null, along_mm: null }));
  return {
    ...demo,
    job: {
      ...job,
      panels: job.panels.filter(({ mark }) => marks.has(mark)),
      castIns: job.castIns.filter(({ panel }) => marks.has(panel)),
      connections: job.connections.filter(({ panel }) => marks.has(panel)),
      pours: [{ id: POUR, bed: bed!.id, date: '2026-12-14', strengthAtStrip_MPa: 15, remarks: [], pieces }],
    },
  };
}

async function post<T>(server: OfficeServer, path: string, body: unknown): Promise<T> {
  const response = await fetch(`${server.address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${path} was answered with ${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

/** The job with its mark cast eight times, as the server has it. */
export class Eight {
  readonly id: string;
  readonly #server: OfficeServer;
  #file: JobFile;
  #version: number;
  #index: JobIndex;
  #fingerprint = '';
  #letter = '';

  private constructor(server: OfficeServer, id: string, version: number, file: JobFile) {
    this.#server = server;
    this.id = id;
    this.#version = version;
    this.#file = file;
    this.#index = indexJob(file);
  }

  /** Makes it on an empty server, with the people of its yard, and issues it for construction as revision A. */
  static async serve(server: OfficeServer): Promise<Eight> {
    for (const person of PEOPLE) await post(server, '/api/people', person);
    const { id, version } = await post<{ id: string; version: number }>(server, '/api/jobs', { file: makeFile() });
    const { file } = (await (await fetch(`${server.address}/api/jobs/${id}`)).json()) as { file: JobFile };
    const eight = new Eight(server, id, version, file);
    await eight.issue('A');
    return eight;
  }

  get index(): JobIndex {
    return this.#index;
  }

  /** Of the revision issued last. */
  get revision(): { readonly letter: string; readonly fingerprint: string } {
    return { letter: this.#letter, fingerprint: this.#fingerprint };
  }

  get people(): readonly Person[] {
    return PEOPLE;
  }

  /** The draft as it stands is from now on what the yard works by. */
  async issue(letter: string): Promise<void> {
    const body = {
      base: this.#version,
      letter,
      status: 'for construction',
      date: '2026-12-01',
      note: null,
      recipients: [],
    };
    const issued = await post<{ version: number; fingerprint: string }>(
      this.#server,
      `/api/jobs/${this.id}/revisions`,
      body,
    );
    this.#version = issued.version;
    this.#letter = letter;
    this.#fingerprint = issued.fingerprint;
    const answer = await fetch(`${this.#server.address}/api/jobs/${this.id}/revisions/${letter}`);
    this.#file = ((await answer.json()) as { file: JobFile }).file;
    this.#index = indexJob(this.#file);
  }

  /** Changes the draft, as the office does. */
  async edit(label: string, recipe: Recipe): Promise<void> {
    const made = editJob(this.#file, label, recipe, { id: `eight-${label}`, at: new Date().toISOString() });
    if (made === null) throw new Error(`${label} changes nothing`);
    const saved = await post<{ version: number }>(this.#server, `/api/jobs/${this.id}/edits`, {
      base: this.#version,
      editor: 'eight',
      edits: [made.edit],
    });
    this.#version = saved.version;
    this.#file = made.file;
  }

  /** Id of a piece of the mark. */
  piece(serial: string): string {
    return namePiece(this.id, this.#index.panels.get(MARK)!.key, serial);
  }

  /** All pieces that the pour plans. */
  pieces(): readonly string[] {
    return SERIALS.map((serial) => this.piece(serial));
  }

  /** What the yard must do for a piece, by the revision issued last. */
  plan(serial: string, mark = MARK): PiecePlan {
    const [bed] = this.#file.library.yard.beds;
    return planPiece(this.#index, { id: this.piece(serial), mark, bed: bed ?? null });
  }
}
