import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listLocalOverrides } from '../../../src/job/details/local-overrides.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { checkEdit } from '../../../src/job/edit/check-edit.ts';
import { editJob, previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { FollowError, follow, withFollowing } from '../../../src/job/edit/follow.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { mustRead } from '../read.ts';
import { sampleCastIn, sampleConnection, sampleFixture, sampleItem, sampleJob, samplePanel } from '../sample-job.ts';
import { demo } from './demo.ts';

const stamp = { id: 'e1', at: '2031-01-01T00:00:00Z' };

const castInsOf = ({ job }: JobFile, mark: string) => job.castIns.filter(({ panel }) => panel === mark);

describe('handed partners', () => {
  it('follow their source under their own permanent keys, and lie in the form as before', () => {
    const own = previewEdit(demo, ({ job }) => {
      for (const castIn of job.castIns) if (castIn.panel === 'P13-H') castIn.key = `own ${castIn.id}`;
      const partner = job.panels.find(({ mark }) => mark === 'P13-H')!;
      Object.assign(partner, { key: 'own panel', inForm: { turn_deg: 180, datum: 'top-left' } });
    });
    const moved = previewEdit(
      own,
      withFollowing(({ job }) => {
        const castIn = job.castIns.find(({ panel, role }) => panel === 'P13' && role !== 'fixing');
        const loose = castIn ?? job.castIns.find(({ panel }) => panel === 'P13')!;
        loose.description = 'looked at again';
      }),
    );
    expect(readJobDocument(moved).ok).toBe(true);
    const partner = moved.job.panels.find(({ mark }) => mark === 'P13-H')!;
    expect(partner).toMatchObject({ key: 'own panel', inForm: { turn_deg: 180, datum: 'top-left' } });
    const castIns = castInsOf(moved, 'P13-H');
    expect(castIns.every(({ key, id }) => key === `own ${id}`)).toBe(true);
    expect(castIns.filter(({ description }) => description === 'looked at again')).toHaveLength(1);
  });

  it('follow any move of a connection of the source, and the edit writes no more than changed', () => {
    const connections = demo.job.connections.filter(({ panel }) => panel === 'P13');
    fc.assert(
      fc.property(fc.constantFrom(...connections), fc.integer({ min: 1, max: 30 }), ({ key, inserts }, by) => {
        const recipe = withFollowing(({ job }) => {
          const connection = job.connections.find((one) => one.key === key)!;
          connection.origin_mm = [connection.origin_mm[0] + by, connection.origin_mm[1]];
          for (const castIn of job.castIns)
            if (castIn.panel === 'P13' && inserts.some(({ insert }) => insert === castIn.id)) castIn.x_mm += by;
        });
        const made = editJob(demo, 'moved', recipe, stamp)!;
        expect(follow(demo, made.file)).toEqual(made.file);
        const faults = checkEdit(demo, made.file);
        expect(faults.filter(({ text }) => text.includes('mirror image'))).toEqual([]);
        expect(made.edit.changes.length).toBeLessThanOrEqual(2 * (inserts.length + 1));
      }),
      { numRuns: 30 },
    );
  });

  it('leave a job without them alone, and say why one cannot be made anew', () => {
    const recipe: Recipe = ({ job }) => {
      job.castIns.find(({ panel }) => panel === 'P01')!.description = 'x';
    };
    const after = previewEdit(demo, recipe);
    expect(follow(demo, after)).toBe(after);
    const taken: Recipe = ({ job }) => {
      const connection = job.connections.find(({ panel }) => panel === 'P13')!;
      job.connections.find(({ panel }) => panel === 'P01')!.mark = `${connection.mark}x-H`;
      connection.mark = `${connection.mark}x`;
    };
    expect(() => previewEdit(demo, withFollowing(taken))).toThrow(FollowError);
  });
});

/** Two connections of one standard detail; the second has another type and an insert off its hole. */
function sampleOfDetail(): JobFile {
  return mustRead(
    sampleJob({
      items: [
        sampleItem(),
        sampleItem({ id: 'F16L', length_mm: 133, embedment_mm: 126 }),
        sampleItem({ id: 'F16M', length_mm: 120, embedment_mm: 113 }),
      ],
      details: [{ id: 'D1', name: 'Angle', item: 'F16', fixture: sampleFixture() }],
      panels: [samplePanel()],
      castIns: [
        sampleCastIn('1', 900, 500),
        sampleCastIn('2', 1100, 500),
        sampleCastIn('3', 2000, 900, { item: 'F16M' }),
        sampleCastIn('4', 2000.5, 1100),
      ],
      connections: [
        sampleConnection({ fixture: null, detail: 'D1' }),
        sampleConnection({
          ...{ key: 'c2', mark: 'C2', fixture: null, detail: 'D1', origin_mm: [2000, 1000], turn_deg: 90 },
          ...{
            inserts: [
              { insert: '3', hole: '1' },
              { insert: '4', hole: '2' },
            ],
            packers_mm: 12,
            boltClass: '10.9',
          },
        }),
      ],
    }),
  );
}

describe('a standard detail', () => {
  it('takes its inserts along: those that stand in their holes, and those of its type', () => {
    const file = sampleOfDetail();
    const after = previewEdit(
      file,
      withFollowing(({ library }) => {
        const detail = library.details.details[0]!;
        detail.item = 'F16L';
        detail.fixture.holes[0]!.at_mm = [-110, 5];
        detail.fixture.holes[1]!.at_mm = [110, 0];
      }),
    );
    const placeOf = (id: string) => {
      const { x_mm, y_mm, item } = after.job.castIns.find((castIn) => castIn.id === id)!;
      return [x_mm, y_mm, item];
    };
    expect(placeOf('1')).toEqual([890, 505, 'F16L']);
    expect(placeOf('2')).toEqual([1110, 500, 'F16L']);
    // Turned by a quarter: hole 1 at (-110, 5) lies 110 mm below and 5 mm left of the plate's origin. Its type is its own.
    expect(placeOf('3')).toEqual([1995, 890, 'F16M']);
    // Half a millimetre off its hole: it stays where it was put, and takes the type.
    expect(placeOf('4')).toEqual([2000.5, 1100, 'F16L']);
  });

  it('leaves a type of its own alone', () => {
    const file = sampleOfDetail();
    const back = previewEdit(
      previewEdit(file, ({ job }) => {
        job.castIns[1]!.item = 'F16L';
      }),
      withFollowing(({ library }) => {
        library.details.details[0]!.item = null;
      }),
    );
    expect(back.job.castIns.map(({ item }) => item)).toEqual(['F16', 'F16L', 'F16M', 'F16']);
  });

  it('is told apart from what a connection does on its own', () => {
    const index = indexJob(sampleOfDetail());
    const [first, second] = index.file.job.connections;
    expect(listLocalOverrides(index, first!).map(({ words }) => words)).toEqual(['bolts: class 8.8']);
    expect(listLocalOverrides(index, second!).map(({ kind, words }) => `${kind}: ${words}`)).toEqual([
      'type: insert 3 is F16M, detail D1 has F16',
      'place: insert 4 stands 0.5 mm down of the middle of hole 2',
      'packers: 12 mm of packers',
      'bolts: bolts: class 10.9',
    ]);
    const lone = { ...second!, inserts: second!.inserts.slice(0, 1) };
    expect(listLocalOverrides(index, lone).map(({ kind }) => kind)).toContain('holes');
    expect(listLocalOverrides(index, { ...second!, detail: null })).toEqual([]);
  });
});
