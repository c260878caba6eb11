import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { findBlindMirrors } from '../../../src/assess/yard/blind-mirrors.ts';
import { listMirrors, type Mirror, mirrorSide, mirrorTaped } from '../../../src/assess/yard/mirrors.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import type { FoundPlace } from '../../../src/assess/yard/placing-answer.ts';
import { recognise } from '../../../src/assess/yard/recognise.ts';
import { demo } from '../../job/edit/demo.ts';
import { demoMarks, findAt, planOf, withPanel } from './pieces.ts';

/** What is found of every insert, by where a set that lies another way has it. */
function findAll(plan: PiecePlan, placeOf: (item: SetOutItem) => readonly [number, number] = ({ taped }) => taped) {
  return new Map(
    plan.setOut.items.map((item): [string, FoundPlace] => {
      const [x, y] = placeOf(item);
      return [item.castIn.key, { x, y, level: null }];
    }),
  );
}

/** Of what is found only the lengths that the piece is asked for. */
function onlyAsked({ stops }: PiecePlan, found: ReadonlyMap<string, FoundPlace>): ReadonlyMap<string, FoundPlace> {
  const asks = stops.flatMap((stop) => stop.asks);
  return new Map(
    [...found].flatMap(([key, { x, y }]): [string, FoundPlace][] => {
      const axes = asks.filter((ask) => ask.key === key).map(({ axis }) => axis);
      if (axes.length === 0) return [];
      return [[key, { x: axes.includes('x') ? x : null, y: axes.includes('y') ? y : null, level: null }]];
    }),
  );
}

function mirrorOf(plan: PiecePlan, name: Mirror['name']): Mirror {
  return listMirrors(plan.setOut).find((mirror) => mirror.name === name)!;
}

/** As a mirrored set is taped: where something stands in the place it is that which is found, else the insert itself, wherever it is. */
function findMirrored(plan: PiecePlan, mirror: Mirror): ReadonlyMap<string, FoundPlace> {
  const { setOut } = plan;
  return findAll(plan, (item) => {
    const there = setOut.items
      .filter((one) => one.place === item.place && mirrorSide(setOut, mirror, one) === item.side)
      .map((one) => mirrorTaped(setOut, mirror, one))
      .find(([x, y]) => Math.hypot(x - item.taped[0], y - item.taped[1]) < 5);
    return there ?? mirrorTaped(setOut, mirror, item);
  });
}

/** Whether nothing that was found differs from the design. */
function isLikeDesign({ setOut }: PiecePlan, found: ReadonlyMap<string, FoundPlace>): boolean {
  return setOut.items.every(({ castIn, taped, tolerance }) => {
    const { x, y } = found.get(castIn.key) ?? { x: null, y: null };
    return Math.abs((x ?? taped[0]) - taped[0]) <= tolerance && Math.abs((y ?? taped[1]) - taped[1]) <= tolerance;
  });
}

const NAMED = ['mirrored', 'turned', 'handed partner', 'from another corner'];

describe('a set that lies the other way round', () => {
  const cases = demoMarks.flatMap((mark) => listMirrors(planOf(mark).setOut).map(({ name }) => [mark, name] as const));

  it.each(cases)(
    '%s, %s: is named where its pattern can show it, by all lengths and by those asked for',
    (mark, name) => {
      const plan = planOf(mark);
      const isBlind = findBlindMirrors(plan).some((blind) => blind.name === name);
      const found = findMirrored(plan, mirrorOf(plan, name));
      if (isBlind) expect(isLikeDesign(plan, found)).toBe(true);
      for (const taped of [found, onlyAsked(plan, found)]) {
        const { kind } = recognise(plan, taped);
        if (isLikeDesign(plan, taped)) expect(kind).toBe('cannot be told');
        else expect(NAMED).toContain(kind);
      }
    },
  );

  it('is called mirrored, turned, or the handed partner', () => {
    const plan = planOf('P13');
    const see = (name: Mirror['name'], partner: string | null = null) =>
      recognise(
        plan,
        findAll(plan, (item) => mirrorTaped(plan.setOut, mirrorOf(plan, name), item)),
        partner,
      );
    expect(see('other end').kind).toBe('mirrored');
    expect(see('other rail').kind).toBe('mirrored');
    expect(see('half turn').kind).toBe('turned');
    expect(see('other end', 'P13-H')).toMatchObject({
      kind: 'handed partner',
      words: expect.stringContaining('P13-H') as string,
    });
    expect(see('half turn', 'P13-H').kind).toBe('turned');
    expect((see('other end') as { words: string }).words).toBe(
      'What was taped fits as if the lengths along the form ran from crane stop end and not from gate stop end. The set lies mirrored, or it was taped from the wrong corner. Stop, and look at the painted datum mark (gate stop end / slipway rail) and at the mark on the form.',
    );
  });

  it('the partner of a handed pair knows the other', () => {
    const plan = planOf('P13-H');
    expect(recognise(plan, findMirrored(plan, mirrorOf(plan, 'other end')))).toMatchObject({
      kind: 'handed partner',
      words: expect.stringContaining('P13,') as string,
    });
  });

  it('was taped from another corner where an insert was seen in a side form that a mirrored set would not have it in', () => {
    const plan = planOf('P13');
    const found = findMirrored(plan, mirrorOf(plan, 'other end'));
    const inEnd = plan.setOut.items.find(({ side }) => side === plan.setOut.words.start)!;
    const onRail = plan.setOut.items.find(({ side }) => side === plan.setOut.words.railB)!;
    expect(recognise(plan, found, null, new Set([inEnd.castIn.key])).kind).toBe('from another corner');
    // The other end leaves the rails where they are.
    expect(recognise(plan, found, null, new Set([onRail.castIn.key])).kind).toBe('mirrored');
  });

  it('of a square panel may have its lengths exchanged, or be turned by a quarter', () => {
    const square = withPanel('P01', () => ({
      outline_mm: [
        [0, 0],
        [6000, 0],
        [6000, 6000],
        [0, 6000],
      ],
      openings_mm: [],
    }));
    const plan = planOf('P01', square);
    expect(listMirrors(plan.setOut)).toHaveLength(6);
    for (const mirror of listMirrors(plan.setOut))
      expect(NAMED).toContain(
        recognise(
          plan,
          findAll(plan, (item) => mirrorTaped(plan.setOut, mirror, item)),
        ).kind,
      );
    expect(listMirrors(planOf('P01').setOut)).toHaveLength(3);
  });
});

describe('the lengths that are asked for', () => {
  it('show a mirrored set of every panel of the demo job that all its lengths show', () => {
    const hidden = demoMarks.flatMap((mark) => {
      const plan = planOf(mark);
      return listMirrors(plan.setOut).flatMap((mirror) => {
        const found = findMirrored(plan, mirror);
        const isHidden = isLikeDesign(plan, onlyAsked(plan, found)) && !isLikeDesign(plan, found);
        return isHidden ? [`${mark} ${mirror.name}`] : [];
      });
    });
    expect(hidden).toEqual([]);
  });
});

describe('a set as designed', () => {
  it.each(demoMarks)('%s: is never named wrong, wherever its inserts are within their tolerances', (mark) => {
    const plan = planOf(mark);
    const off = fc.double({ min: -1, max: 1, noNaN: true });
    const offs = fc.array(fc.tuple(off, off), {
      minLength: plan.setOut.items.length,
      maxLength: plan.setOut.items.length,
    });
    const isBlind = findBlindMirrors(plan).length > 0;
    fc.assert(
      fc.property(offs, fc.boolean(), (by, isInFull) => {
        const all = findAll(plan, ({ number, taped, tolerance }) => {
          const [dx, dy] = by[number - 1]!;
          return [taped[0] + dx * tolerance, taped[1] + dy * tolerance];
        });
        const { kind } = recognise(plan, isInFull ? all : onlyAsked(plan, all));
        expect(['as designed', 'cannot be told']).toContain(kind);
        if (!isBlind && isInFull) expect(kind).toBe('as designed');
      }),
      { numRuns: 30 },
    );
  });

  it('that would lie the same the other way round cannot be told, and what to look at is said', () => {
    const plan = planOf('P07');
    const told = recognise(plan, findAll(plan));
    expect(told).toEqual({
      kind: 'cannot be told',
      words:
        'Measuring cannot show it here as if the lengths along the form ran from loose stop end and not from fixed stop end. Look at the painted datum mark (fixed stop end / wall rail) and at the mark on the form.',
    });
    expect(findBlindMirrors(plan)).toHaveLength(1);
    // Look-alikes in each other's places: the lengths are right, the inserts are not.
    const [blind] = findBlindMirrors(planOf('P05'));
    expect(blind!.lookAlikes.length).toBeGreaterThan(0);
    expect(blind!.words).toMatch(/Read the rim or try the depth with a stick at no\. 4, 5/);
  });

  it('of which too little is taped cannot be told yet, and what to tape is said', () => {
    const plan = planOf('P13');
    expect(recognise(plan, new Map())).toMatchObject({
      kind: 'cannot be told',
      words: expect.stringContaining('Nothing is taped yet') as string,
    });
    const board = plan.setOut.items.filter(({ connection }) => connection === 'C41');
    const found = new Map(board.map((item) => [item.castIn.key, findAt(item)]));
    expect(recognise(plan, found)).toMatchObject({
      kind: 'cannot be told',
      words: expect.stringMatching(/Tape no\. \d+/) as string,
    });
  });
});

describe('a part of a set', () => {
  const plan = planOf('P13');
  const byId = (id: string) => plan.setOut.items.find(({ castIn }) => castIn.id === id)!;

  it("two inserts in each other's places are named, with a stick where they are not alike", () => {
    const [a, b] = [byId('11'), byId('19')];
    const found = findAll(plan, (item) => (item === a ? b.taped : item === b ? a.taped : item.taped));
    const told = recognise(plan, found);
    expect(told).toMatchObject({ kind: 'swapped', words: expect.stringContaining('with a stick') as string });
    expect(told.kind === 'swapped' && [...told.numbers].sort((x, y) => x - y)).toEqual(
      [a.number, b.number].sort((x, y) => x - y),
    );
    const [c, d] = [byId('1'), byId('5')];
    const alike = recognise(
      plan,
      findAll(plan, (item) => (item === c ? d.taped : item === d ? c.taped : item.taped)),
    );
    expect(alike).toMatchObject({
      kind: 'swapped',
      words: expect.stringContaining('typed at the number of the other') as string,
    });
  });

  it('the wrong one of a group of alike inserts taped is that, and no set or group that lies mirrored', () => {
    for (const mark of demoMarks) {
      const piece = planOf(mark);
      for (const one of piece.setOut.items)
        for (const other of piece.setOut.items) {
          if (one === other || one.connection === null || one.connection !== other.connection) continue;
          if (one.assembly !== other.assembly || one.side !== other.side) continue;
          const away = Math.hypot(one.taped[0] - other.taped[0], one.taped[1] - other.taped[1]);
          if (away < 3 * one.tolerance) continue;
          const told = recognise(piece, new Map([[one.castIn.key, findAt(other)]]));
          expect(told, `${mark} ${one.number} at ${other.number}`).toMatchObject({
            kind: 'swapped',
            words: expect.stringContaining(`No. ${one.number} was taped where no. ${other.number} belongs`) as string,
          });
        }
    }
  });

  it('a group mirrored about its own middle is named, not the whole set', () => {
    const p = planOf('P13', {
      ...demo,
      job: {
        ...demo.job,
        castIns: demo.job.castIns.map((one) =>
          one.panel === 'P13' && one.id === '1' ? { ...one, x_mm: one.x_mm + 60 } : one,
        ),
      },
    });
    const group = p.setOut.items.filter(({ connection }) => connection === 'C41');
    const xs = group.map(({ taped }) => taped[0]);
    const sum = Math.min(...xs) + Math.max(...xs);
    const found = findAll(p, (item) => (group.includes(item) ? [sum - item.taped[0], item.taped[1]] : item.taped));
    expect(recognise(p, found)).toMatchObject({
      kind: 'mirrored',
      words: expect.stringContaining('group C41') as string,
    });
  });

  it('out of place without a pattern is off, with its numbers', () => {
    const item = byId('14');
    const found = findAll(plan, (one) => (one === item ? [one.taped[0] + 37, one.taped[1]] : one.taped));
    expect(recognise(plan, found)).toEqual({
      kind: 'off',
      words: `Out of place: no. ${item.number}. No mirror image and no turn of the set explains it.`,
    });
  });

  it('a mirrored set in which one insert is out of place as well is not named: it does not explain all', () => {
    const mirror = mirrorOf(plan, 'other end');
    const item = byId('14');
    const found = findAll(plan, (one) => {
      const [x, y] = mirrorTaped(plan.setOut, mirror, one);
      return one === item ? [x + 37, y] : [x, y];
    });
    expect(recognise(plan, found).kind).toBe('off');
  });
});
