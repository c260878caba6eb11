import { describe, expect, it } from 'vitest';
import { checkEdit } from '../../../src/job/edit/check-edit.ts';
import { makePatternPlate, turnToFace } from '../../../src/job/edit/commands/edit-face.ts';
import { editJob, previewEdit } from '../../../src/job/edit/edit-job.ts';
import { moveInsert, moveWhole, putMoved } from '../../../src/job/edit/moved-parts.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { demo } from './demo.ts';

const index = indexJob(demo);
const stamp = { id: 'e1', at: '2031-01-01T00:00:00Z' };

/** On the inside face of a panel that is drawn from the outside: its plate is seen as in a mirror. */
const panel = index.panels.get('P02')!;
const connection = index.connectionsOf('P02').find(({ mark }) => mark === 'C05')!;
const castIns = connection.inserts.map(({ insert }) => index.castIn('P02', insert)!);

describe('moving', () => {
  it('takes plate and inserts along as one, and writes nothing else', () => {
    const parts = moveWhole(castIns, connection, [12.5, -40]);
    const made = editJob(demo, 'moved', putMoved(parts), stamp)!;
    const { job } = made.file;
    expect(job.connections.find(({ mark }) => mark === 'C05')?.origin_mm).toEqual([
      connection.origin_mm[0] + 12.5,
      connection.origin_mm[1] - 40,
    ]);
    for (const before of castIns) {
      const after = job.castIns.find(({ key }) => key === before.key)!;
      expect([after.x_mm, after.y_mm]).toEqual([before.x_mm + 12.5, before.y_mm - 40]);
    }
    expect(checkEdit(demo, made.file)).toEqual([]);
    expect(made.edit.changes.every(({ path }) => path[1] === 'castIns' || path[1] === 'connections')).toBe(true);
  });

  it('takes the hole of one insert along where the plate is its own, in the mirror of the other face too', () => {
    const [first] = castIns;
    const parts = moveInsert(panel, first!, connection, [7, 3]);
    const [was, is] = [connection, parts.connection!].map(({ fixture }) => fixture!.holes[0]!.at_mm);
    expect([is![0] - was![0], is![1] - was![1]]).toEqual([-7, 3]);
    expect(checkEdit(demo, previewEdit(demo, putMoved(parts)))).toEqual([]);
  });

  it('leaves the holes of a standard detail where they are, so that a bolt misses its hole', () => {
    const placed = index.connectionsOf('P01').find(({ detail }) => detail === 'T1')!;
    const insert = index.castIn('P01', placed.inserts[0]!.insert)!;
    const parts = moveInsert(index.panels.get('P01')!, insert, placed, [7, 3]);
    expect(parts.connection).toBeNull();
    const [fault] = checkEdit(demo, previewEdit(demo, putMoved(parts)));
    expect(fault?.text).toContain('misses the hole');
  });

  it('gives back to the digit what was moved there and back', () => {
    // In floating point 700 + 0.1 − 0.3 + 0.2 is not 700.
    const there = moveWhole(castIns, connection, [0.1, 0.1]);
    const further = moveWhole(there.castIns, there.connection, [-0.3, -0.3]);
    const back = moveWhole(further.castIns, further.connection, [0.2, 0.2]);
    expect(back.castIns).toEqual(castIns);
    expect(back.connection).toEqual(connection);
  });
});

describe('turning to the other face', () => {
  it('keeps each insert behind its hole', () => {
    const ids = new Set(castIns.map(({ id }) => id));
    const turned = previewEdit(demo, turnToFace(panel, ids, 'C05', 'outside'));
    expect(turned.job.connections.find(({ mark }) => mark === 'C05')?.face).toBe('outside');
    // Its plate is its own mirror image: the first hole, at the left, is now at the left of the drawing.
    const first = turned.job.castIns.find(({ key }) => key === castIns[0]!.key)!;
    expect([first.x_mm, first.y_mm]).toEqual([connection.origin_mm[0] - 100, connection.origin_mm[1] + 100]);
    expect(checkEdit(demo, turned).filter(({ text }) => text.includes('hole'))).toEqual([]);
  });
});

describe('a plate from a pattern', () => {
  it('has its holes about its middle, rows from the top, and room to its sides', () => {
    const plate = makePatternPlate(
      { rows: 2, columns: 3, columnSpacing: 150, rowSpacing: 80, margin: 40, thickness: 12 },
      'M16',
    );
    expect(plate.holes.map(({ at_mm }) => at_mm)).toEqual([
      [-150, 40],
      [0, 40],
      [150, 40],
      [-150, -40],
      [0, -40],
      [150, -40],
    ]);
    expect(plate.outline_mm).toEqual([
      [-190, -80],
      [190, -80],
      [190, 80],
      [-190, 80],
    ]);
    // EN 1992-4, Table 6.1 for M16, as the engine has it.
    expect(plate.holes[0]!.diameter_mm).toBe(18);
  });
});
