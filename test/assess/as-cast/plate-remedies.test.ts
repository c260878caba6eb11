import { describe, expect, it } from 'vitest';
import type { ChangedPlate, PlateChange, PlateQuestion } from '../../../src/assess/as-cast/changed-plate.ts';
import { findPlateRemedies } from '../../../src/assess/as-cast/plate-remedies.ts';
import { findNoRoom } from '../../../src/assess/as-cast/plate-room.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { findThread } from '../../../src/engine/hardware/threads.ts';
import type { Fixture, FixtureHole } from '../../../src/job/documents/fixture.ts';
import { turnVector } from '../../../src/job/face-frame.ts';
import { makeRandom } from '../../engine/tolerance/hole-cases.ts';

const M16 = findThread('M16');

function hole(id: string, at_mm: Point, more: Partial<FixtureHole> = {}): FixtureHole {
  return { id, at_mm, diameter_mm: 18, slot_mm: 0, slotAngle_deg: 0, takesShear: true, ...more };
}

const CORNERS: readonly FixtureHole[] = [
  hole('1', [-100, -50]),
  hole('2', [100, -50]),
  hole('3', [100, 50]),
  hole('4', [-100, 50]),
];

/** A plate of 300 × 200 about its holes, its bolts off by so much each. */
function ask(off: readonly Point[], holes = CORNERS, outline: Point = [150, 100], thread = M16): PlateQuestion {
  const [x, y] = outline;
  const fixture: Fixture = {
    outline_mm: [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ],
    thickness_mm: 12,
    yield_MPa: 250,
    holes: [...holes],
    attachment_mm: null,
  };
  const bolts = off.map((by, i) => {
    const one = holes[i]!;
    return { bolt: [one.at_mm[0] + by[0], one.at_mm[1] + by[1]] as Point, hole: one, boltDiameter: thread.diameter };
  });
  return { fixture, bolts, thread };
}

function plateOf(change: PlateChange | undefined): ChangedPlate {
  if (change?.kind !== 'goes on') throw new Error(`expected a plate that goes on, got ${JSON.stringify(change)}`);
  return change.plate;
}
const slotted = (question: PlateQuestion, direction: string) =>
  findPlateRemedies(question).slotted.find((one) => one.direction === direction)?.change;
const changedHoles = ({ holes, changed }: ChangedPlate) => holes.filter(({ id }) => changed.includes(id));

/** Whether every bolt is in its hole with the plate moved, written out in the axes of the panel. */
function letsAllIn({ bolts }: PlateQuestion, { holes, move, about }: ChangedPlate): boolean {
  const degrees = (move.turn * 180) / Math.PI;
  return bolts.every(({ bolt, hole: { id }, boltDiameter }) => {
    const one = holes.find((each) => each.id === id)!;
    const [x, y] = turnVector([one.at_mm[0] - about[0], one.at_mm[1] - about[1]], degrees);
    const [dx, dy] = [bolt[0] - about[0] - x - move.shift[0], bolt[1] - about[1] - y - move.shift[1]];
    const [along, across] = turnVector([dx, dy], -one.slotAngle_deg - degrees);
    const beyond = Math.max(0, Math.abs(along) - one.slot_mm / 2);
    return Math.hypot(beyond, across) <= (one.diameter_mm - boltDiameter) / 2 + 1e-5;
  });
}

const NONE: Point = [0, 0];

describe('a plate that goes on as it is', () => {
  it('is moved only, and nothing is cut', () => {
    const remedies = findPlateRemedies(
      ask([
        [5, 3],
        [5, 3],
        [5, 3],
        [5, 3],
      ]),
    );
    const plate = plateOf(remedies.moved);
    // Of 5.83 mm the holes take 1: the least shift is 4.83 mm that way.
    expect(Math.hypot(...plate.move.shift)).toBeCloseTo(Math.hypot(5, 3) - 1, 4);
    expect(plate.margin).toBeCloseTo(1, 4);
    expect(plate.changed).toEqual([]);
    expect(remedies.enlarged).toEqual({ kind: 'not this way', why: 'it goes on without that' });
    expect(remedies.slotted.map(({ change }) => change.kind)).toEqual(Array(3).fill('not this way'));
  });
});

describe('one bolt that is off by 3 mm along the plate', () => {
  const question = ask([NONE, NONE, [3, 0], NONE]);

  it('goes in where its hole is one of 20 mm: the others give 1 mm, it gives 2', () => {
    expect(findPlateRemedies(question).moved.kind).toBe('not this way');
    const plate = plateOf(findPlateRemedies(question).enlarged);
    expect(changedHoles(plate).map(({ id, diameter_mm }) => [id, diameter_mm])).toEqual([['3', 20]]);
    expect(letsAllIn(question, plate)).toBe(true);
    // 20 mm is wider than the 18 over which M16 share a shear.
    expect(plate.noShear).toEqual(['3']);
    // Wider than 16 + 3: a plate washer, 50 × 6.
    expect(plate.washers).toEqual([{ hole: '3', washer: { kind: 'plate', outside: 50, thickness: 6 } }]);
  });

  it('goes in where one hole is a slot, as short as does, from the hole toward the bolt', () => {
    for (const direction of ['along x', 'toward the bolt']) {
      const plate = plateOf(slotted(question, direction));
      const [slot] = changedHoles(plate);
      expect(plate.changed).toEqual(['3']);
      expect(slot).toMatchObject({ diameter_mm: 18, slotAngle_deg: 0, takesShear: true });
      expect(slot!.at_mm[0]).toBeCloseTo(100 + slot!.slot_mm / 2, 6);
      expect(letsAllIn(question, plate)).toBe(true);
      expect(plate.acrossOnly).toEqual(['3']);
      expect(plate.noShear).toEqual([]);
    }
    // Along x the plate moves too: 1 mm of the others, 1 of its own, 1 of slot.
    expect(changedHoles(plateOf(slotted(question, 'along x')))[0]!.slot_mm).toBe(1);
    // Held by the others at their middle the bolt is 3 off, of which its slack takes 1.
    expect(changedHoles(plateOf(slotted(question, 'toward the bolt')))[0]!.slot_mm).toBe(2);
  });

  it('does not go in by a slot across', () => {
    expect(slotted(question, 'along y')).toMatchObject({ kind: 'not this way' });
  });
});

describe('limits of the hole rules', () => {
  it('refuses slots longer than 2.5 d, and says so', () => {
    // 40 mm over all less the width of 18: 22 mm of straight part each way, and 2 of play; farther, holes of both sides must give way.
    expect(plateOf(slotted(ask([NONE, NONE, [22, 0], NONE], CORNERS, [200, 200]), 'along x')).changed).toEqual(['3']);
    expect(slotted(ask([NONE, NONE, [47, 0], NONE], CORNERS, [200, 200]), 'along x')).toMatchObject({
      kind: 'not this way',
      why: expect.stringContaining('EN 1090-2') as string,
    });
  });

  it('refuses holes wider than oversize, slots in holes wider than normal, and threads that the table does not have', () => {
    const far = findPlateRemedies(ask([NONE, NONE, [9, 0], NONE]));
    expect(far.enlarged).toMatchObject({ kind: 'not this way', why: expect.stringContaining('20 mm') as string });
    const wide = CORNERS.map((one) => ({ ...one, diameter_mm: 20 }));
    expect(slotted(ask([NONE, NONE, [9, 0], NONE], wide), 'along x')).toMatchObject({ kind: 'not this way' });
    const M10 = findThread('M10');
    const small = CORNERS.map((one) => ({ ...one, diameter_mm: 12 }));
    const tiny = findPlateRemedies(ask([NONE, NONE, [9, 0], NONE], small, [150, 100], M10));
    expect(tiny.enlarged).toMatchObject({ kind: 'not this way', why: expect.stringContaining('M10') as string });
    expect(tiny.slotted[0]!.change).toMatchObject({
      kind: 'not this way',
      why: expect.stringContaining('M10') as string,
    });
  });

  it("keeps the edge and the next hole: 1.2 and 2.2 d_0, from the middle of a slot's end 1.5 d_0", () => {
    const plate = { outline_mm: ask([]).fixture.outline_mm };
    const at = (x: number, more: Partial<FixtureHole> = {}) => [hole('9', [x, 0], more)];
    expect(findNoRoom(plate, at(150 - 21.6), [])).toBeNull();
    expect(findNoRoom(plate, at(150 - 21.5), [])).toContain('21.6 mm is wanted (1.2 d_0');
    expect(findNoRoom(plate, at(150 - 27 - 5, { slot_mm: 10 }), [])).toBeNull();
    expect(findNoRoom(plate, at(150 - 27 - 4.9, { slot_mm: 10 }), [])).toContain('27 mm is wanted (1.5 d_0');
    expect(findNoRoom(plate, at(150 - 27, { slot_mm: 10, slotAngle_deg: 90 }), [])).toBeNull();
    expect(findNoRoom(plate, at(160), [])).toContain('0 mm from the edge');
    expect(findNoRoom(plate, at(0), [hole('8', [39.6, 0])])).toBeNull();
    expect(findNoRoom(plate, at(0), [hole('8', [39.5, 0])])).toContain('from hole 8; at least 39.6 mm');
    const across = { slot_mm: 60, slotAngle_deg: 90 };
    expect(findNoRoom(plate, at(0, { slot_mm: 60 }), [hole('8', [0, 0], across)])).toContain('0 mm from hole 8');
    expect(findNoRoom(plate, at(0), [hole('8', [35, 35], { ...across, slotAngle_deg: 0, slot_mm: 10 })])).toBeNull();
  });

  it('cuts no slot that leaves too little of the plate', () => {
    // Of 30 mm the others take 22 and 2 at most, the sixth of a slot outward leaves 30 − 6 to the edge; 27 are wanted.
    const narrow = slotted(ask([NONE, NONE, [30, 0], NONE], CORNERS, [130, 100]), 'along x');
    expect(narrow).toMatchObject({ kind: 'not this way', why: expect.stringContaining('from the edge') as string });
  });
});

describe('a plate drilled anew', () => {
  it('is a new one where new holes would meet the old ones', () => {
    const { redrilled } = findPlateRemedies(ask([NONE, NONE, [9.04, 0], NONE]));
    if (redrilled.kind !== 'new plate') throw new Error(`expected a new plate, got ${redrilled.kind}`);
    expect(redrilled.notSame).toContain('from hole 3; at least 39.6 mm');
    expect(redrilled.plate.holes[2]!.at_mm).toEqual([109, 50]);
    expect(redrilled.plate.margin).toBeGreaterThan(0.9);
  });

  it('is the same one where there is room beside the old hole', () => {
    const { redrilled } = findPlateRemedies(ask([NONE, NONE, [-45, 0], NONE]));
    expect(redrilled.kind).toBe('same plate');
    if (redrilled.kind === 'same plate') expect(redrilled.plate.changed).toEqual(['3']);
  });

  it('is none where a bolt stands at the edge, or nothing is off', () => {
    expect(findPlateRemedies(ask([NONE, NONE, [35, 0], NONE])).redrilled).toMatchObject({ kind: 'not this way' });
    expect(findPlateRemedies(ask([NONE, NONE, NONE, NONE])).redrilled).toMatchObject({ kind: 'not this way' });
  });
});

describe('every remedy of random plates', () => {
  it('lets every bolt in, changes as few holes as any other choice would, and widens nothing it need not', () => {
    const random = makeRandom(11);
    const met = { enlarged: 0, slotted: 0 };
    for (let i = 0; i < 50; i++) {
      const most = i % 2 === 0 ? 7 : 2.5;
      const off = CORNERS.map((): Point => [most * (2 * random() - 1), most * (2 * random() - 1)]);
      const question = ask(off);
      const { enlarged, slotted: slots } = findPlateRemedies(question);
      if (enlarged.kind === 'goes on') {
        met.enlarged += 1;
        expect(letsAllIn(question, enlarged.plate)).toBe(true);
        for (const { id, diameter_mm } of changedHoles(enlarged.plate))
          expectNeeded(question, enlarged.plate, id, { diameter_mm: diameter_mm - 1 });
      }
      for (const { change } of slots) {
        if (change.kind !== 'goes on') continue;
        met.slotted += 1;
        expect(letsAllIn(question, change.plate)).toBe(true);
        for (const { slot_mm, diameter_mm } of changedHoles(change.plate)) {
          expect(Number.isInteger(slot_mm)).toBe(true);
          expect(slot_mm + diameter_mm).toBeLessThanOrEqual(40);
        }
      }
    }
    expect(met.enlarged).toBeGreaterThan(2);
    expect(met.slotted).toBeGreaterThan(20);
  });
});

/** With one hole less changed than a remedy has it the plate does not go on. */
function expectNeeded(question: PlateQuestion, plate: ChangedPlate, id: string, less: Partial<FixtureHole>): void {
  const holes = plate.holes.map((one) => (one.id === id ? { ...one, ...less } : one));
  const bolts = question.bolts.map((one) => ({ ...one, hole: holes.find((each) => each.id === one.hole.id)! }));
  expect(findPlateRemedies({ ...question, fixture: { ...question.fixture, holes }, bolts }).moved.kind).toBe(
    'not this way',
  );
}
