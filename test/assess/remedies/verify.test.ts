import { describe, expect, it } from 'vitest';
import { findRemedies } from '../../../src/assess/remedies/find-remedies.ts';
import { openQuestion, openVerifying } from '../../../src/assess/remedies/question.ts';
import { tryThicker } from '../../../src/assess/remedies/try-panel.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { previewEdit } from '../../../src/job/edit/edit-job.ts';
import { withFollowing } from '../../../src/job/edit/follow.ts';
import { NOTHING_REPLACED, replaceValues, type ValueReplacement } from '../../../src/job/edit/replace-values.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from '../../job/edit/demo.ts';
import { sampleCastIn, sampleConnection, samplePanel } from '../../job/sample-job.ts';
import { loads, makeItem, readJob } from '../choosing.ts';

/** What verifying says of a change to the first connection. */
function verify(file: JobFile, change: Partial<ValueReplacement>) {
  const question = openQuestion(file, file.job.connections[0]!);
  const proposal = {
    kind: 'other insert',
    deed: { kind: 'plate', from: 1, to: 2 },
    notes: [],
    change: { ...NOTHING_REPLACED, ...change },
  } as const;
  return openVerifying(question)(proposal);
}

/** Two single inserts, each a connection of its own; the first fails by its load. */
function twoOfThem(secondLoad: number): JobFile {
  const single = (mark: string, insert: string, x: number, N: number) =>
    sampleConnection({
      ...{ key: mark, mark, origin_mm: [x, 1500], fixture: null, inserts: [{ insert, hole: null }] },
      actions: loads({ N_kN: N }),
    });
  return readJob({
    items: [makeItem('F16', 103), makeItem('F16-L', 158), makeItem('F16-S', 75)],
    panels: [samplePanel({ thickness_mm: 200 })],
    castIns: [sampleCastIn('1', 1500, 1500), sampleCastIn('2', 2500, 1500)],
    connections: [single('C1', '1', 1500, 45), single('C2', '2', 2500, secondLoad)],
  });
}

describe('a change is verified', () => {
  const longer = [{ key: 'i1', set: { item: 'F16-L' } }];

  it('by the full check of the connection', () => {
    const file = twoOfThem(10);
    expect(verify(file, { castIns: longer })).toMatchObject({ kind: 'remedy' });
    expect(verify(file, {})).toMatchObject({ kind: 'refused', why: 'C1 then: fails' });
  });

  it('by the reading of the job: a place outside the panel is none', () => {
    const file = twoOfThem(10);
    const castIns = [...longer, { key: 'i2', set: { x_mm: 9000 } }];
    expect(verify(file, { castIns })).toMatchObject({
      kind: 'refused',
      why: expect.stringContaining('outside the outline'),
    });
  });

  it('by the other connections of the panel: none that passed may fail', () => {
    const file = twoOfThem(20);
    const castIns = [...longer, { key: 'i2', set: { item: 'F16-S' } }];
    expect(verify(file, { castIns })).toMatchObject({ kind: 'refused', why: 'C2 then: fails' });
    // One that fails already may go on failing: it is another question.
    const failing = twoOfThem(45);
    expect(verify(failing, { castIns: longer })).toMatchObject({ kind: 'remedy' });
  });
});

describe('a thicker panel', () => {
  it('is a multiple of 10 mm whatever it was, and its structural layer takes what is more', () => {
    // An edge insert loaded toward the faces: the thickness is its edge distance.
    const file = readJob({
      items: [makeItem('F16', 103)],
      panels: [
        samplePanel({
          thickness_mm: 153,
          layers: [
            { kind: 'outer skin', thickness_mm: 3 },
            { kind: 'structural', thickness_mm: 150 },
          ],
        }),
      ],
      castIns: [sampleCastIn('1', 2000, 600)],
      connections: [
        sampleConnection({
          ...{ origin_mm: [2000, 600], fixture: null, inserts: [{ insert: '1', hole: null }] },
          actions: loads({ N_kN: 5 }),
        }),
      ],
    });
    const question = openQuestion(file, file.job.connections[0]!);
    // Asked as if it passed from 172 mm on.
    const assess: typeof question.assess = ({ panel }) => ({
      ...question.before,
      state: (panel?.thickness_mm ?? 0) >= 172 ? 'passes' : 'fails',
    });
    const [proposal] = tryThicker({ ...question, assess }).proposals;
    expect(proposal!.change.panels).toEqual([
      {
        key: 'p1',
        set: {
          thickness_mm: 180,
          layers: [
            { kind: 'outer skin', thickness_mm: 3 },
            { kind: 'structural', thickness_mm: 177 },
          ],
        },
      },
    ]);
    const never = tryThicker({ ...question, assess: () => ({ ...question.before, state: 'fails' }) });
    expect(never).toEqual({ proposals: [], inVain: [{ kind: 'thickness', most: 300 }] });
  });
});

describe('a connection of a handed partner', () => {
  it('is changed where it comes from, and follows', () => {
    const failing = previewEdit(
      demo,
      withFollowing(({ job }) => {
        const connection = job.connections.find(({ mark }) => mark === 'C43')!;
        if (connection.actions.kind === 'loads')
          for (const one of connection.actions.combinations)
            Object.assign(one, { N_kN: 7.6 * one.N_kN, Vx_kN: 7.6 * one.Vx_kN, Vy_kN: 7.6 * one.Vy_kN });
      }),
    );
    expect(readJobDocument(failing).ok).toBe(true);
    const { connection, state, remedies } = findRemedies(failing, 'C43-H');
    expect([connection, state]).toEqual(['C43', 'fails']);
    expect(remedies.length).toBeGreaterThan(0);
    for (const { change } of remedies) {
      const after = previewEdit(failing, withFollowing(replaceValues(change)));
      expect(readJobDocument(after).ok).toBe(true);
      expect(findRemedies(after, 'C43-H').state).toBe('passes');
    }
  });
});
