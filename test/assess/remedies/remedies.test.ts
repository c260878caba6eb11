import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessConnection } from '../../../src/assess/assess-connection.ts';
import type { ConnectionAnswer } from '../../../src/assess/connection-answer.ts';
import { findRemedies } from '../../../src/assess/remedies/find-remedies.ts';
import type { Remedy } from '../../../src/assess/remedies/remedy.ts';
import { findLeastSteps } from '../../../src/assess/remedies/step-search.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { editJob, previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { withFollowing } from '../../../src/job/edit/follow.ts';
import { ReplacementError, replaceValues } from '../../../src/job/edit/replace-values.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { demo } from '../../job/edit/demo.ts';
import { sampleCastIn, sampleConnection, sampleFixture, samplePanel } from '../../job/sample-job.ts';
import { makeItem, readJob } from '../choosing.ts';

function assess(file: JobFile, mark: string): ConnectionAnswer {
  const connection = file.job.connections.find((one) => one.mark === mark)!;
  return assessConnection(resolveConnection(indexJob(file), connection));
}

const apply = (file: JobFile, remedy: Remedy): JobFile =>
  previewEdit(file, withFollowing(replaceValues(remedy.change)));

/** The same change with a little less of it; null where there is no less. */
function takeLess(file: JobFile, mark: string, { kind, change }: Remedy): Recipe | null {
  const connection = file.job.connections.find((one) => one.mark === mark)!;
  const panel = file.job.panels.find((one) => one.mark === connection.panel)!;
  if (kind === 'move') {
    const [x, y] = change.connections[0]!.set.origin_mm!;
    const [dx, dy] = [x - connection.origin_mm[0], y - connection.origin_mm[1]];
    const length = Math.hypot(dx, dy);
    expect(Math.abs(length / 5 - Math.round(length / 5))).toBeLessThan(1e-9);
    const [backX, backY] = [(5 * dx) / length, (5 * dy) / length];
    return (draft) => {
      replaceValues(change)(draft);
      const moved = draft.job.connections.find(({ key }) => key === connection.key)!;
      moved.origin_mm = [moved.origin_mm[0] - backX, moved.origin_mm[1] - backY];
      for (const { key } of change.castIns) {
        const castIn = draft.job.castIns.find((one) => one.key === key)!;
        castIn.x_mm -= backX;
        castIn.y_mm -= backY;
      }
    };
  }
  if (kind === 'thicker panel') {
    const thickness = change.panels[0]!.set.thickness_mm!;
    expect(thickness % 10).toBe(0);
    if (thickness - 10 <= panel.thickness_mm) return null;
    return (draft) => {
      const found = draft.job.panels.find(({ key }) => key === panel.key)!;
      found.thickness_mm = thickness - 10;
      expect(found.layers).toEqual([]);
    };
  }
  return null;
}

/** Inserts that would be less of the same kind of change. */
function listLesser(file: JobFile, mark: string, { kind, change }: Remedy): readonly string[] {
  if (kind !== 'longer insert') return [];
  const { items } = file.library.catalogue;
  const connection = file.job.connections.find((one) => one.mark === mark)!;
  const present = connection.inserts.map(({ insert }) => {
    const castIn = file.job.castIns.find(({ panel, id }) => panel === connection.panel && id === insert)!;
    return items.find(({ id }) => id === castIn.item)!;
  });
  const chosen = items.find(({ id }) => id === change.castIns[0]!.set.item)!;
  const longest = Math.max(...present.map(({ length_mm }) => length_mm));
  expect(chosen.thread).toBe(present[0]!.thread);
  expect(chosen.length_mm).toBeGreaterThan(longest);
  return items
    .filter(
      ({ thread, length_mm, ratedLoads }) =>
        thread === chosen.thread && length_mm > longest && length_mm < chosen.length_mm && ratedLoads.length === 0,
    )
    .map(({ id }) => id);
}

/** Whether an insert of a connection comes nearer to another of the panel than 3 h_ef, and than it stands now. */
function comesTooNear(before: JobFile, after: JobFile, mark: string): boolean {
  const connection = before.job.connections.find((one) => one.mark === mark)!;
  const own = new Set(connection.inserts.map(({ insert }) => insert));
  const ofPanel = ({ job }: JobFile) => job.castIns.filter(({ panel }) => panel === connection.panel);
  const [was, now] = [ofPanel(before), ofPanel(after)];
  const apart = (list: typeof was, i: number, k: number) =>
    Math.hypot(list[i]!.x_mm - list[k]!.x_mm, list[i]!.y_mm - list[k]!.y_mm);
  return now.some((castIn, i) => {
    if (!own.has(castIn.id)) return false;
    const { embedment_mm } = before.library.catalogue.items.find(({ id }) => id === castIn.item)!;
    return now.some(
      (other, k) => !own.has(other.id) && apart(now, i, k) < Math.min(3 * embedment_mm, apart(was, i, k)) - 1e-6,
    );
  });
}

function checkRemedies(file: JobFile, asked: string): readonly Remedy[] {
  const before = assess(file, asked);
  const { connection: mark, state, remedies } = findRemedies(file, asked);
  expect(state).toBe(before.state);
  for (const remedy of remedies) {
    const after = apply(file, remedy);
    expect(readJobDocument(after).ok).toBe(true);
    expect(assess(after, asked)).toMatchObject({ state: 'passes' });
    expect(assess(after, mark).ratio).toBeCloseTo(remedy.ratioAfter, 9);
    expect(remedy.ratioBefore).toBe(before.ratio);
    const less = takeLess(file, mark, remedy);
    if (less !== null) {
      const nearer = previewEdit(file, less);
      expect(assess(nearer, mark).state !== 'passes' || comesTooNear(file, nearer, mark)).toBe(true);
    }
    for (const id of listLesser(file, mark, remedy)) {
      const castIns = remedy.change.castIns.map(({ key, set }) => ({ key, set: { ...set, item: id } }));
      const lesser = previewEdit(file, replaceValues({ ...remedy.change, castIns }));
      expect(assess(lesser, mark).state !== 'passes' || !readJobDocument(lesser).ok).toBe(true);
    }
    // Data alone: it can be handed from a worker.
    expect(structuredClone(remedy)).toEqual(remedy);
  }
  return remedies;
}

describe('remedies of the demo job', () => {
  it.each(demo.job.connections.map(({ mark }) => mark))('make it pass, and no less would: %s', (mark) => {
    const { state } = assess(demo, mark);
    const remedies = checkRemedies(demo, mark);
    if (state === 'passes' || state === 'strength not checked') expect(remedies).toEqual([]);
    if (state === 'fails') expect(remedies.length).toBeGreaterThan(1);
  });

  it('leave alone what no rule covers, and say what was tried in vain', () => {
    const seismic = demo.job.connections.find(({ uses }) => uses.length > 0)!;
    expect(findRemedies(demo, seismic.mark)).toMatchObject({ state: 'not covered', remedies: [], inVain: [] });
    const tried = demo.job.connections.flatMap(({ mark }) => findRemedies(demo, mark).inVain);
    expect(tried.some(({ kind }) => kind === 'thickness')).toBe(true);
    expect(() => findRemedies(demo, 'no such')).toThrow('no such');
  });
});

const items = [
  makeItem('F16', 103),
  makeItem('F16-L', 133),
  makeItem('F16-LL', 158),
  makeItem('F12', 75, { thread: 'M12', bodyDiameter_mm: 18, threadDepth_mm: 30 }),
  makeItem('F20', 138, { thread: 'M20', bodyDiameter_mm: 30, threadDepth_mm: 45 }),
];

/** One connection of two inserts near a corner of a panel, with another beside it, and loads that are at times too much. */
const anyJob: fc.Arbitrary<JobFile> = fc
  .record({
    x: fc.integer({ min: 200, max: 600 }),
    y: fc.integer({ min: 70, max: 200 }),
    N: fc.integer({ min: 10, max: 45 }),
    Vy: fc.integer({ min: -25, max: 0 }),
    thickness: fc.integer({ min: 150, max: 240 }),
    plate: fc.constantFrom(10, 15, 25),
    boltClass: fc.constantFrom('4.6', '8.8'),
    turn: fc.constantFrom(0, 180),
    neighbour: fc.integer({ min: 60, max: 500 }),
  })
  .map(({ x, y, N, Vy, thickness, plate, boltClass, turn, neighbour }) =>
    readJob({
      items,
      panels: [samplePanel({ thickness_mm: thickness })],
      castIns: [
        sampleCastIn('1', x - 100, y),
        sampleCastIn('2', x + 100, y),
        sampleCastIn('3', x + 100 + neighbour, y + 300),
      ],
      connections: [
        sampleConnection({
          ...{ origin_mm: [x, y], turn_deg: turn, boltClass },
          inserts: [
            { insert: turn === 0 ? '1' : '2', hole: '1' },
            { insert: turn === 0 ? '2' : '1', hole: '2' },
          ],
          fixture: sampleFixture({
            thickness_mm: plate,
            attachment_mm: [
              [-30, -10],
              [30, -10],
              [30, 10],
              [-30, 10],
            ],
          }),
          actions: { kind: 'loads', combinations: [{ name: 'wind', N_kN: N, Vx_kN: 3, Vy_kN: Vy }] },
        }),
        sampleConnection({
          ...{ key: 'c2', mark: 'C2', origin_mm: [x + 100 + neighbour, y + 300], fixture: null },
          inserts: [{ insert: '3', hole: null }],
          actions: { kind: 'loads', combinations: [{ name: 'wind', N_kN: 6, Vx_kN: 0, Vy_kN: 0 }] },
        }),
      ],
    }),
  );

describe('remedies of any job', () => {
  it('make it pass, leave the neighbours passing, and no less would', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(anyJob, (file) => {
        const neighbour = assess(file, 'C2').state;
        for (const remedy of checkRemedies(file, 'C1')) {
          kinds.add(remedy.kind);
          if (neighbour === 'passes') expect(assess(apply(file, remedy), 'C2').state).toBe('passes');
        }
      }),
      { numRuns: 25, seed: 20 },
    );
    expect(kinds.size).toBeGreaterThan(3);
  }, 60_000);

  it('keep plate steel and bolts as weak as may be', () => {
    const file = readJob({
      items,
      connections: [
        sampleConnection({
          boltClass: '4.6',
          actions: { kind: 'loads', combinations: [{ name: 'wind', N_kN: 0, Vx_kN: 55, Vy_kN: 0 }] },
        }),
      ],
    });
    const bolts = findRemedies(file, 'C1').remedies.find(({ kind }) => kind === 'stronger bolts')!;
    const chosen = bolts.change.connections[0]!.set.boltClass!;
    // The classes of this program by strength (ISO 898-1); each weaker one must fail.
    const order = ['4.6', '5.6', '5.8', '8.8', '10.9'] as const;
    for (const weaker of order.slice(1, order.indexOf(chosen as (typeof order)[number]))) {
      const tried = previewEdit(file, ({ job }) => {
        job.connections[0]!.boltClass = weaker;
      });
      expect(assess(tried, 'C1').state).not.toBe('passes');
    }
  });
});

describe('a change as data', () => {
  it('is one small edit, and is refused once the job is another', () => {
    const failing = demo.job.connections.find(({ mark }) => assess(demo, mark).state === 'fails')!;
    const { remedies } = findRemedies(demo, failing.mark);
    const move = remedies.find(({ kind }) => kind === 'move')!;
    const made = editJob(demo, 'moved', replaceValues(move.change), { id: 'e', at: '2031-01-01T00:00:00Z' })!;
    expect(made.edit.changes.length).toBeLessThanOrEqual(2 * (failing.inserts.length + 1));
    const without = previewEdit(demo, ({ job }) => {
      job.connections = job.connections.filter(({ key }) => key !== failing.key);
    });
    expect(() => previewEdit(without, replaceValues(move.change))).toThrow(ReplacementError);
    const mix = { ...demo.job.concretes[0]!, strength28_MPa: 1 };
    const other = { castIns: [], connections: [], panels: [], concretes: [mix] };
    expect(() => previewEdit(demo, replaceValues(other))).toThrow(ReplacementError);
  });
});

describe('the least number of steps', () => {
  it('passes, and one less does not; null where none does', () => {
    fc.assert(
      fc.property(fc.nat({ max: 200 }), fc.integer({ min: 0, max: 130 }), (from, most) => {
        const found = findLeastSteps(most, (steps) => steps >= from);
        const wanted = Math.max(1, from);
        expect(found).toBe(wanted <= most ? wanted : null);
      }),
    );
  });

  it('is where it begins to pass, in one of several stretches', () => {
    const passes = (steps: number) => steps === 3 || steps >= 9;
    const found = findLeastSteps(100, passes)!;
    expect([passes(found), passes(found - 1)]).toEqual([true, false]);
  });
});
