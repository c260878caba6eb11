import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';
import { hashText } from '../../src/job/fingerprint.ts';
import { sampleJob, samplePanel } from '../job/sample-job.ts';
import { change, numberEdits, sampleFile } from '../store/edits.ts';
import { type Served, serve } from './serve.ts';

const HEAD = {
  id: expect.stringMatching(/^[a-z0-9]{12}$/),
  name: 'Sample',
  number: null,
  version: 0,
  savedAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT.*Z$/),
  panels: 1,
  connections: 1,
  revision: null,
  issued: null,
};

const ISSUE = {
  base: 0,
  letter: 'A',
  status: 'for approval',
  date: '2026-11-30',
  note: null,
  recipients: [{ name: 'N. Nobody', firm: null, how: 'by e-mail' }],
};

describe('the API', () => {
  let served: Served;
  let call: Served['call'];
  let id: string;
  beforeEach(async () => {
    served = await serve();
    ({ call } = served);
    ({ id } = await served.store.createJob(sampleFile()));
  });
  afterEach(() => served.end());
  const { edits, file } = numberEdits(sampleFile(), ['1', '2']);
  const save = (base: number, more = edits) =>
    call('POST', `/api/jobs/${id}/edits`, { base, editor: 'tab', edits: more });

  it('says that it is there', async () => {
    expect(await call('GET', '/api/health')).toEqual({ status: 200, body: { ok: true, version: '0.1.0' } });
  });

  it('lists jobs, and removed ones when asked', async () => {
    const made = await call('POST', '/api/jobs', { file: sampleJob() });
    expect(made).toEqual({ status: 201, body: HEAD });
    expect(await call('GET', '/api/jobs')).toMatchObject({ status: 200, body: { jobs: [HEAD, HEAD] } });
    expect(await call('DELETE', `/api/jobs/${id}`)).toMatchObject({ status: 200, body: { removedAt: HEAD.savedAt } });
    expect(await call('GET', '/api/jobs')).toMatchObject({ body: { jobs: [made.body] } });
    expect(await call('GET', '/api/jobs?removed=yes')).toMatchObject({ body: { jobs: [{ id }] } });
    const gone = await call('GET', `/api/jobs/${id}`);
    expect(gone).toMatchObject({
      status: 404,
      body: { error: 'not-found', message: expect.stringContaining('restore') },
    });
    expect(await call('POST', `/api/jobs/${id}/restore`)).toEqual({ status: 200, body: { ...HEAD, id } });
    expect((await call('GET', `/api/jobs/${id}`)).status).toBe(200);
  });

  it('opens a job with its whole file', async () => {
    const opened = await call('GET', `/api/jobs/${id}`);
    expect(opened).toEqual({ status: 200, body: { id, version: 0, savedAt: HEAD.savedAt, file: sampleFile() } });
  });

  it('names every fault of a file that is no sound job', async () => {
    const wrong = sampleJob({ panels: [samplePanel({ thickness_mm: -1 })], revision: { letter: 'A' } });
    const answer = await call('POST', '/api/jobs', { file: wrong });
    expect(answer).toMatchObject({ status: 422, body: { error: 'faults' } });
    const { faults } = answer.body as { faults: { path: string; value: string; message: string }[] };
    expect(faults.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['job.panels[0].thickness_mm', 'job.revision.status', 'job.revision.date']),
    );
    expect(faults.find(({ path }) => path === 'job.panels[0].thickness_mm')).toMatchObject({ value: '-1' });
    expect(await call('POST', '/api/jobs', { file: null })).toMatchObject({ status: 422, body: { error: 'faults' } });
    expect(await call('GET', '/api/jobs')).toMatchObject({ body: { jobs: [{ id }] } });
  });

  it('saves edits, once, and gives them back', async () => {
    const saved = await save(0);
    expect(saved).toEqual({ status: 200, body: { version: 2, savedAt: HEAD.savedAt } });
    expect(await save(0)).toEqual(saved);
    expect(await call('GET', `/api/jobs/${id}`)).toMatchObject({ body: { version: 2, file } });
    const { savedAt } = saved.body as { savedAt: string };
    expect(await call('GET', `/api/jobs/${id}/edits?after=1`)).toEqual({
      status: 200,
      body: { version: 2, edits: [{ version: 2, editor: 'tab', savedAt, edit: edits[1] }] },
    });
    expect(await call('GET', `/api/jobs/${id}/edits`)).toMatchObject({
      body: { edits: [{ version: 1 }, { version: 2 }] },
    });
    expect(await call('GET', `/api/jobs/${id}/at/0`)).toEqual({
      status: 200,
      body: { id, version: 0, file: sampleFile() },
    });
    expect(await call('GET', `/api/jobs/${id}/at/3`)).toMatchObject({ status: 404, body: { error: 'not-found' } });
  });

  it('lets one of two writers with the same base win', async () => {
    const theirs = numberEdits(sampleFile(), ['9']).edits;
    const answers = await Promise.all([save(0), save(0, theirs)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    const lost = answers.find(({ status }) => status === 409)!;
    expect(lost.body).toMatchObject({ error: 'conflict', message: expect.stringContaining('nothing was stored') });
    const { version } = lost.body as { version: number };
    const { edits: stored } = (await call('GET', `/api/jobs/${id}/edits`)).body as { edits: unknown[] };
    expect(stored).toHaveLength(version);
  });

  it('refuses edits that break the job, with the place', async () => {
    const { edit } = change(sampleFile(), '1', ({ job }) => {
      job.panels[0]!.concrete = 'C99';
    });
    expect(await save(0, [edit])).toMatchObject({
      status: 422,
      body: { error: 'faults', faults: [{ path: 'job.panels[0].concrete', value: '"C99"' }] },
    });
    const nowhere = { ...edit, changes: [{ op: 'remove' as const, path: ['job', 'panels', 7] }] };
    expect(await save(0, [nowhere])).toMatchObject({ status: 422, body: { faults: [{ path: 'job.panels[7]' }] } });
    expect(await call('GET', `/api/jobs/${id}`)).toMatchObject({ body: { version: 0 } });
  });

  it('says of a version between two edits of one call that it was never sound', async () => {
    const bad = change(sampleFile(), '1', ({ job }) => {
      job.panels[0]!.mark = 'P2';
    });
    const good = change(bad.file, '2', ({ job }) => {
      job.panels[0]!.mark = 'P1';
    });
    expect((await save(0, [bad.edit, good.edit])).status).toBe(200);
    expect(await call('GET', `/api/jobs/${id}/at/1`)).toMatchObject({ status: 422, body: { error: 'faults' } });
  });

  it('keeps the other version of a conflict', async () => {
    const kept = await call('POST', `/api/jobs/${id}/kept`, { base: 0, editor: 'tab', reason: 'two tabs', file });
    const head = { id: HEAD.id, base: 0, editor: 'tab', reason: 'two tabs', keptAt: HEAD.savedAt };
    expect(kept).toEqual({ status: 201, body: head });
    expect(await call('GET', `/api/jobs/${id}/kept`)).toEqual({ status: 200, body: { kept: [kept.body] } });
    const { id: name } = kept.body as { id: string };
    expect(await call('GET', `/api/jobs/${id}/kept/${name}`)).toEqual({ status: 200, body: { ...head, file } });
    expect((await call('GET', `/api/jobs/${id}/kept/other`)).status).toBe(404);
    const broken = { base: 0, editor: 'tab', reason: 'two tabs', file: { ...file, job: null } };
    expect((await call('POST', `/api/jobs/${id}/kept`, broken)).status).toBe(422);
  });

  it('issues a revision once, on the version that was looked at', async () => {
    await save(0);
    expect(await call('POST', `/api/jobs/${id}/revisions`, ISSUE)).toMatchObject({ status: 409, body: { version: 2 } });
    const issued = await call('POST', `/api/jobs/${id}/revisions`, { ...ISSUE, base: 2 });
    const { base: _, ...transmittal } = ISSUE;
    const frozen = {
      ...file,
      job: { ...file.job, revision: { letter: 'A', status: 'for approval', date: '2026-11-30' } },
    };
    const body = { ...transmittal, version: 3, issuedAt: HEAD.savedAt, fingerprint: hashText(writeCanonical(frozen)) };
    expect(issued).toEqual({ status: 201, body });
    expect(await call('POST', `/api/jobs/${id}/revisions`, { ...ISSUE, base: 3 })).toMatchObject({
      status: 422,
      body: { error: 'issued-before', message: expect.stringContaining('revision A was issued on') },
    });
    expect(await call('GET', `/api/jobs/${id}/revisions`)).toEqual({ status: 200, body: { revisions: [issued.body] } });
    expect(await call('GET', `/api/jobs/${id}/revisions/A`)).toEqual({
      status: 200,
      body: { ...(issued.body as object), file: frozen },
    });
    expect((await call('GET', `/api/jobs/${id}/revisions/B`)).status).toBe(404);
  });

  it('knows no job of another id, whatever is asked of it', async () => {
    const other = 'nnnnnnnnnnnn';
    const answers = await Promise.all([
      call('GET', `/api/jobs/${other}`),
      call('DELETE', `/api/jobs/${other}`),
      call('POST', `/api/jobs/${other}/restore`),
      call('GET', `/api/jobs/${other}/edits`),
      call('POST', `/api/jobs/${other}/edits`, { base: 0, editor: 'tab', edits }),
      call('GET', `/api/jobs/${other}/at/0`),
      call('GET', `/api/jobs/${other}/kept`),
      call('GET', `/api/jobs/${other}/kept/nnnnnnnnnnnn`),
      call('POST', `/api/jobs/${other}/kept`, { base: 0, editor: 'tab', reason: 'x', file }),
      call('GET', `/api/jobs/${other}/revisions`),
      call('GET', `/api/jobs/${other}/revisions/A`),
      call('POST', `/api/jobs/${other}/revisions`, ISSUE),
    ]);
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 404));
    for (const { body } of answers)
      expect(body).toMatchObject({ error: 'not-found', message: `there is no job ${other}; GET /api/jobs lists them` });
  });

  it('says where a call is wrong', async () => {
    for (const [answer, says] of [
      [await call('GET', '/api/jobs/NOT-AN-ID'), 'address /id: the id of a job'],
      [await call('GET', `/api/jobs/${id}/at/-1`), 'address /version: a whole number'],
      [await call('GET', `/api/jobs/${id}/edits?after=two`), 'question in the address /after'],
      [await call('GET', `/api/jobs?removed=perhaps`), 'question in the address /removed'],
      [await save(-1), 'body /base'],
      [await save(0, []), 'body /edits'],
      [await save(0, [{ ...edits[0]!, changes: [] }]), 'body /edits/0/changes'],
      [await save(0, [{ ...edits[0]!, extra: 1 } as never]), 'extra'],
      [
        await save(
          0,
          Array.from({ length: 501 }, (_, at) => ({ ...edits[0]!, id: `${at}` })),
        ),
        'body /edits',
      ],
      [await call('POST', `/api/jobs/${id}/revisions`, { ...ISSUE, date: 'today' }), 'body /date'],
      [await call('POST', `/api/jobs/${id}/revisions`, { ...ISSUE, status: 'perhaps' }), 'body /status'],
      [await call('POST', '/api/jobs'), 'body'],
      [await call('POST', '/api/jobs', {}), 'body /file'],
    ] as const) {
      expect(answer).toMatchObject({ status: 400, body: { error: 'bad-input' } });
      expect((answer.body as { message: string }).message).toContain(says);
    }
  });

  it('takes JSON alone, and no more of it than it can hold', async () => {
    const post = (payload: string | Buffer, type: string) =>
      served.inject({ method: 'POST', url: '/api/jobs', payload, headers: { 'content-type': type } });
    expect((await post('{"file":', 'application/json')).json()).toMatchObject({ error: 'bad-input' });
    expect((await post('{"file":{"__proto__":{"x":1}}}', 'application/json')).statusCode).toBe(400);
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])
      expect((await post('{"file":{}}', type)).statusCode).toBe(415);
    const long = await post(Buffer.alloc(33 * 1024 * 1024, 32), 'application/json');
    expect(long.statusCode).toBe(413);
    expect(long.json()).toMatchObject({ error: 'too-large', message: expect.stringContaining('33554432 bytes') });
  });

  it('stands a value that is nested very deep', async () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    const body = JSON.stringify({ base: 0, editor: 'tab', edits: [edits[0]] }).replace('"N1"', deep);
    const headers = { 'content-type': 'application/json' };
    const answer = await served.inject({ method: 'POST', url: `/api/jobs/${id}/edits`, payload: body, headers });
    expect(answer.json()).toEqual({ error: 'bad-input', message: 'body: values are nested too deep' });
    const file = await served.inject({ method: 'POST', url: '/api/jobs', payload: `{"file":${deep}}`, headers });
    expect(file.statusCode).toBe(400);
    expect(await call('GET', `/api/jobs/${id}`)).toMatchObject({ status: 200, body: { version: 0 } });
  });

  it('gives a fault of its own without telling what it is about', async () => {
    await served.store.close();
    const answer = await call('GET', '/api/jobs');
    expect(answer).toEqual({
      status: 500,
      body: { error: 'failed', message: 'the server failed; nothing of the call was stored' },
    });
    expect(served.told).toEqual([expect.stringMatching(/^GET \/api\/jobs: Error: driver/)]);
    await served.app.close();
    served = await serve();
  });
});
