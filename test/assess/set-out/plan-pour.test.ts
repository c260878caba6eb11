import { describe, expect, it } from 'vitest';
import { mayBePoured, planPour } from '../../../src/assess/set-out/plan-pour.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { type Json, sampleBed, sampleCastIn, sampleJob, samplePanel, samplePour } from '../../job/sample-job.ts';

const issued = { letter: 'B', status: 'for construction', date: '2026-12-01' };
const chair = { id: 'CH', name: 'Chair 75', kind: 'chair', height_mm: 75, reusable: false };
const onChair = { id: 'ON', name: 'On a chair', method: 'chair', recess_mm: 2, chairs: ['CH'] };

function plan(pour: Json = {}, revision: Json | undefined = issued, castIns?: readonly Json[]) {
  const file = mustRead(
    sampleJob({
      beds: [sampleBed()],
      panels: [samplePanel(), samplePanel({ key: 'p2', mark: 'P2' })],
      pours: [samplePour(pour)],
      parts: [chair],
      ways: [onChair],
      ...(revision === undefined ? {} : { revision }),
      ...(castIns === undefined ? {} : { castIns, connections: [] }),
    }),
  );
  return planPour(indexJob(file), 'T1');
}

describe('a pour', () => {
  it('is fine when it is issued for construction, in one revision', () => {
    expect(plan().problems).toEqual([]);
  });

  it.each(['preliminary', 'for approval', 'void'])('must not be poured when the revision is %s', (status) => {
    const { problems, revision } = plan({}, { ...issued, status });
    expect(mayBePoured(revision)).toBe(false);
    expect(problems).toEqual([
      { severity: 'error', text: `revision B is "${status}": do not pour; only "for construction" may be poured` },
    ]);
  });

  it('must not be poured when nothing was issued', () => {
    const file = mustRead(sampleJob({ beds: [sampleBed()], pours: [samplePour()] }));
    const { problems, pieces } = planPour(indexJob(file), 'T1');
    expect(problems[0]!.text).toContain('the job has no revision');
    expect(pieces[0]!.revision).toBe('not issued');
  });

  it('warns when it mixes revisions, and says which piece is of which', () => {
    const pieces = [
      { panel: 'P1', serial: '1' },
      { panel: 'P2', serial: '1', revision: 'A' },
    ];
    const [problem] = plan({ pieces }).problems;
    expect(problem).toMatchObject({ severity: 'warning' });
    expect(problem!.text).toBe(
      'this pour mixes revisions: P2 no. 1 was planned by revision A, the sheets show revision B: plan anew, or take out of the pour',
    );
  });

  it('tells pieces that were all planned by an older revision', () => {
    const pieces = ['P1', 'P2'].map((panel) => ({ panel, serial: '1', revision: 'A' }));
    expect(plan({ pieces }).problems.map(({ text }) => text)).toEqual([
      'P1 no. 1, P2 no. 1 were planned by revision A, the sheets show revision B: plan anew, or take out of the pour',
    ]);
  });

  it('sets a panel out once however often it is cast', () => {
    const pieces = ['1', '2', '3'].map((serial) => ({ panel: 'P1', serial }));
    const { setOuts, pieces: cast } = plan({ pieces });
    expect([setOuts.length, cast.length]).toEqual([1, 3]);
  });

  it('stops when a panel lies on the wrong face for how its inserts are held', () => {
    const down = sampleCastIn('1', 900, 500, { holding: 'ON', recess_mm: 2 });
    const { problems } = plan({}, issued, [down]);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.text).toContain('panel P1 lies with its outside face on the form');
    expect(problems[0]!.text).toContain('inserts 1 are held');
    const up = sampleCastIn('1', 900, 500, { face: 'inside', holding: 'ON', recess_mm: 2 });
    expect(plan({}, issued, [up]).problems).toEqual([]);
  });

  it('refuses a pour that the job has not', () => {
    expect(() => planPour(indexJob(mustRead(sampleJob())), 'T9')).toThrow('no pour T9');
  });
});
