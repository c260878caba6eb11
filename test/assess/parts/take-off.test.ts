import { describe, expect, it } from 'vitest';
import { findJobParts } from '../../../src/assess/parts/job-parts.ts';
import type { PartLine } from '../../../src/assess/parts/part-kind.ts';
import { takeOffPanel } from '../../../src/assess/parts/take-off.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { sampleCastIn, sampleConnection, sampleFixture, sampleItem, samplePanel } from '../../job/sample-job.ts';
import { indexParts, parts, ways } from './parts-job.ts';

const countsOf = (lines: readonly PartLine[]) => Object.fromEntries(lines.map(({ kind, count }) => [kind.id, count]));

/** Parts of one casting of a panel on the job's first bed. */
function takeOff(changes: Parameters<typeof indexParts>[0] = {}, mark = 'P1') {
  const index = indexParts(changes);
  return takeOffPanel(setOutPanel(index, mark, index.file.library.yard.beds[0]!));
}

/** The kit for the site of the whole job. */
function kitOf(changes: Parameters<typeof indexParts>[0]) {
  const { lines, unplanned } = findJobParts(indexParts({ pours: [], ...changes }));
  return {
    counts: countsOf(lines.filter(({ kind }) => kind.group === 'bolts and washers')),
    open: unplanned.flatMap(({ parts: { open } }) => open.map(({ text }) => text)),
  };
}

// Counted by hand from the job as parts-job.ts describes it.
describe('one casting of a panel', () => {
  it('takes each insert, what holds it, bars and everything else that is cast in', () => {
    expect(countsOf(takeOff().lines)).toEqual({
      F16: 3,
      F16L: 1,
      'bar 10 x 250': 1,
      'BOARD 2xM16 200x0': 1,
      // 4 of the template board, 2 of the plate of insert 3.
      NAIL: 6,
      'PLATE-16': 3,
      'duct: conduit box': 1,
    });
  });

  it('counts an insert without a way of holding, and says so', () => {
    const { open } = takeOff();
    expect(open.map(({ kind, text }) => [kind, text])).toEqual([
      ['holding', expect.stringMatching(/^holding not decided of insert 4: .*choose a way of holding/)],
    ]);
  });

  it('counts the parts of a group once a connection, and once an insert that is in none', () => {
    const boarded = (id: string, x: number) => sampleCastIn(id, x, 500, { holding: 'BOARDED' });
    const castIns = [boarded('1', 900), boarded('2', 1100), boarded('3', 2000), boarded('4', 2500)];
    expect(countsOf(takeOff({ castIns }).lines)).toMatchObject({
      'BOARD 1xM16 0x0': 2,
      'BOARD 2xM16 200x0': 1,
      NAIL: 12,
      'PLATE-16': 4,
    });
  });

  it('counts one template for a connection though its inserts are built in two ways of a letter', () => {
    const castIns = [
      sampleCastIn('1', 900, 500, { holding: 'BOARDED' }),
      sampleCastIn('2', 1100, 500, { holding: 'BOARDED', crossBar: { diameter_mm: 10, length_mm: 200 } }),
    ];
    const index = indexParts({ castIns });
    const setOut = setOutPanel(index, 'P1', index.file.library.yard.beds[0]!);
    expect(setOut.assemblies).toHaveLength(2);
    expect(countsOf(takeOffPanel(setOut).lines)).toMatchObject({ 'BOARD 2xM16 200x0': 1, NAIL: 4, 'bar 10 x 200': 1 });
  });

  // Thickness 180 with the insert 103 long: a chair of 70 leaves the top 7 mm below the face, more than the 5 mm by which the panel may come out thin; 50 leaves 27 mm.
  it('counts chairs by the height that the thickness asks for, one an insert', () => {
    const castIns = [1, 2, 3].map((n) => sampleCastIn(String(n), 800 * n, 500, { face: 'inside', holding: 'CHAIRED' }));
    const { lines } = takeOff({ castIns, connections: [] });
    expect(countsOf(lines)).toEqual({ F16: 3, 'CHAIR-70': 3, 'CAP-16': 3 });
    expect(lines.find(({ kind }) => kind.group === 'chairs')!.kind.size).toBe(70);
  });

  it("counts a maker's cross bar where it is not decided how the insert is held", () => {
    const item = sampleItem({ crossBar: { diameter_mm: 8, length_mm: 300 } });
    const castIns = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)];
    expect(countsOf(takeOff({ items: [item], castIns }).lines)).toEqual({ F16: 2, 'bar 8 x 300': 2 });
  });

  it('tells a cross bar that nobody gives a size', () => {
    const castIns = [sampleCastIn('1', 900, 500, { crossBar: { direction_deg: 0 } }), sampleCastIn('2', 1100, 500)];
    const { open, lines } = takeOff({ castIns });
    expect(countsOf(lines)).toEqual({ F16: 2 });
    expect(open.find(({ kind }) => kind === 'cross bar')!.text).toMatch(/^insert 1: .*cross bar/);
  });

  it('keeps kinds apart that differ in finish alone', () => {
    const items = [sampleItem(), sampleItem({ id: 'F16Z', finish: 'zinc', threadClass: '6H', boltFinishes: ['zinc'] })];
    const castIns = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500, { item: 'F16Z' })];
    const { lines } = takeOff({ items, castIns, connections: [] });
    expect(lines.map(({ kind, count }) => [kind.id, kind.finish, count])).toEqual([
      ['F16', 'galvanised', 1],
      ['F16Z', 'zinc', 1],
    ]);
  });

  it('takes nothing where nothing is cast in', () => {
    expect(takeOff({ castIns: [], connections: [] })).toEqual({ mark: 'P1', lines: [], open: [] });
  });

  it('takes the bolts through the side form as what holds an insert', () => {
    const bolt = { id: 'FORM-BOLT', name: 'bolt through the side form', kind: 'side form bolt', reusable: true };
    const through = {
      id: 'THROUGH',
      name: 'bolted through',
      method: 'through the side form',
      parts: [{ part: 'FORM-BOLT', count: 1 }],
    };
    const castIns = [sampleCastIn('1', 900, 90, { face: 'edge', edge: 0, holding: 'THROUGH' })];
    const { lines } = takeOff({ castIns, connections: [], parts: [...parts, bolt], ways: [...ways, through] });
    expect(lines.map(({ kind, count }) => [kind.group, kind.id, count])).toEqual([
      ['inserts', 'F16', 1],
      ['holding', 'FORM-BOLT', 1],
    ]);
  });
});

describe('bolts and washers of connections', () => {
  const plain = { castIns: [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)] };

  // Plate 15 + thickest washer 3.3 (ISO 7089) + engagement 16 = 34.3: the next nominal length (ISO 4017) is 35.
  it('are one each an insert, of the length that plate, washer and engagement ask for', () => {
    expect(kitOf(plain)).toMatchObject({
      counts: { 'bolt M16 x 35 8.8 galvanised': 2, 'washer M16 ISO 7089 galvanised': 2 },
    });
  });

  it('go to the site and are not waited for by a pour', () => {
    const { lines } = findJobParts(indexParts());
    const site = lines.filter(({ kind }) => kind.neededAt === 'site').map(({ kind }) => kind.group);
    expect(new Set(site)).toEqual(new Set(['bolts and washers']));
    expect(site).toHaveLength(2);
  });

  it('name the finish of stainless bolts by their class', () => {
    const item = sampleItem({ finish: 'stainless', coating_um: 0, threadClass: '6H', boltFinishes: ['stainless'] });
    const connections = [sampleConnection({ boltClass: 'A4-70' })];
    expect(Object.keys(kitOf({ ...plain, items: [item], connections }).counts)).toEqual([
      'bolt M16 x 35 A4-70',
      'washer M16 ISO 7089 stainless',
    ]);
  });

  it.each([
    ['no plate', { fixture: null, actions: { kind: 'none' } }, /no plate is given: add one/],
    // 200 mm of plate: ISO 4014 has M16 to 160, ISO 4017 to 150 (Table of nominal lengths).
    ['a plate for no nominal length', { fixture: sampleFixture({ thickness_mm: 400 }) }, /no nominal length suits/],
  ])('are counted with their length open where there is %s', (_, changes, why) => {
    const { counts, open } = kitOf({ ...plain, connections: [sampleConnection(changes)] });
    expect(Object.entries(counts)).toEqual([
      [expect.stringMatching(/^bolt M16, length open 8\.8/), 2],
      [expect.stringMatching(/^washer M16 ISO 7089/), 2],
    ]);
    expect(open.some((text) => text.startsWith('connection C1: ') && why.test(text))).toBe(true);
  });

  it('have a thread each where inserts of a connection differ in it', () => {
    const items = [sampleItem(), sampleItem({ id: 'F12', thread: 'M12', threadDepth_mm: 30 })];
    const castIns = [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500, { item: 'F12' })];
    const { counts } = kitOf({ items, castIns });
    expect(Object.entries(counts).filter(([id]) => id.startsWith('bolt'))).toEqual([
      [expect.stringMatching(/^bolt M12, length open/), 1],
      [expect.stringMatching(/^bolt M16, length open/), 1],
    ]);
  });
});

describe('the job', () => {
  // P1 is cast three times, P2 once, P3 in no pour.
  it('adds up castings over its pours, and panels that no pour casts once', () => {
    expect(countsOf(findJobParts(indexParts()).lines)).toEqual({
      F16: 10,
      F16L: 3,
      'bar 10 x 250': 3,
      'BOARD 2xM16 200x0': 3,
      NAIL: 20,
      'PLATE-16': 10,
      'duct: conduit box': 3,
      'lifting: loop': 1,
      'bolt M16 x 35 8.8 galvanised': 6,
      'washer M16 ISO 7089 galvanised': 6,
    });
  });

  it('counts each panel once where no pour is planned', () => {
    const { pours, lines } = findJobParts(indexParts({ pours: [] }));
    expect(pours).toEqual([]);
    expect(countsOf(lines)).toMatchObject({ F16: 4, NAIL: 8, 'lifting: loop': 1 });
  });

  it('puts pours into the order of their days', () => {
    const pour = (id: string, date: string, serial: string) => ({
      id,
      bed: 'B1',
      date,
      pieces: [{ panel: 'P1', serial }],
    });
    const pours = [pour('late', '2027-01-04', '1'), pour('soon', '2026-12-28', '2'), pour('then', '2027-01-04', '3')];
    const found = findJobParts(indexParts({ pours }));
    expect(found.pours.map(({ plan }) => plan.pour.id)).toEqual(['soon', 'late', 'then']);
  });

  it('lists by group, thread and size, bolts before their washers', () => {
    const items = [
      sampleItem({ id: 'Z8', thread: 'M8', threadDepth_mm: 20 }),
      sampleItem({ id: 'A16', length_mm: 143 }),
      sampleItem({ id: 'B16', length_mm: 103 }),
    ];
    const castIns = items.map((item, i) => sampleCastIn(String(i), 500 * (i + 1), 500, { item: item.id }));
    const { lines } = findJobParts(indexParts({ items, castIns, connections: [], pours: [], panels: [samplePanel()] }));
    expect(lines.map(({ kind }) => kind.id)).toEqual(['Z8', 'B16', 'A16']);
    const groups = findJobParts(indexParts()).lines.map(({ kind }) => kind.group);
    expect([...new Set(groups)]).toEqual(['inserts', 'cross bars', 'holding', 'other cast-ins', 'bolts and washers']);
    expect(findJobParts(indexParts()).lines.at(-1)!.kind.id).toMatch(/^washer/);
  });
});
