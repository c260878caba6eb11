import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain } from '../../../src/assess/explain/explanation.ts';
import { findMisplaced } from '../../../src/assess/live/find-misplaced.ts';
import { answerLive, openLive } from '../../../src/assess/live/live-connection.ts';
import { checkEdit } from '../../../src/job/edit/check-edit.ts';
import { previewEdit } from '../../../src/job/edit/edit-job.ts';
import { moveInsert, moveWhole, putMoved } from '../../../src/job/edit/moved-parts.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { demo } from '../../job/edit/demo.ts';

const index = indexJob(demo);
/** Handed partners follow their source, which is not the subject here. */
const connections = demo.job.connections.filter(({ panel }) => !['P13', 'P13-H'].includes(panel));

const move = fc.record({
  connection: fc.constantFrom(...connections),
  by: fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
  isWhole: fc.boolean(),
});

type Move = typeof move extends fc.Arbitrary<infer T> ? T : never;

function makeMove({ connection, by, isWhole }: Move) {
  const panel = index.panels.get(connection.panel)!;
  const castIns = connection.inserts.map(({ insert }) => index.castIn(panel.mark, insert)!);
  // One insert is moved a little: further than its hole lets it, within its plate.
  const little = [by[0] / 20, by[1] / 20] as const;
  const parts = isWhole ? moveWhole(castIns, connection, by) : moveInsert(panel, castIns[0]!, connection, little);
  return { live: openLive(index, panel.mark), parts, held: parts.connection ?? connection };
}

describe('a connection while it is held', () => {
  it('has the answer that it has once it stands there', () => {
    fc.assert(
      fc.property(move, (made) => {
        const { live, parts, held } = makeMove(made);
        fc.pre(findMisplaced(live, parts.castIns, held) === null);
        const edited = previewEdit(demo, putMoved(parts));
        const after = indexJob(edited);
        const standing = after.connectionsOf(held.panel).find(({ key }) => key === held.key)!;
        const { explanation } = answerLive(live, held, parts.castIns);
        expect(explanation).toEqual(explain(resolveConnection(after, standing)));
      }),
      { numRuns: 60 },
    );
  });

  it('may stay just where the job would be read with it', () => {
    fc.assert(
      fc.property(move, (made) => {
        const { live, parts, held } = makeMove(made);
        const faults = checkEdit(demo, previewEdit(demo, putMoved(parts)));
        const why = findMisplaced(live, parts.castIns, held);
        expect(why === null, `${why}; ${faults[0]?.text}`).toBe(faults.length === 0);
      }),
      { numRuns: 150 },
    );
  });

  it('gives areas that the answer names, and more concrete further from the edge', () => {
    const connection = index.connectionsOf('P03').find(({ mark }) => mark === 'C09')!;
    const live = openLive(index, 'P03');
    const castIns = connection.inserts.map(({ insert }) => index.castIn('P03', insert)!);
    const now = answerLive(live, connection, []);
    const { castIns: moved, connection: further } = moveWhole(castIns, connection, [0, -100]);
    const then = answerLive(live, further!, moved);
    expect(now.explanation.answer.state).toBe('fails');
    expect(then.explanation.answer.state).toBe('passes');
    expect(then.areas!.cone[0]!.area).toBeGreaterThan(now.areas!.cone[0]!.area);
    expect(then.areas!.shear!.area).toBeGreaterThan(now.areas!.shear!.area);
  });
});
