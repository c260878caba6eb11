import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessConnection } from '../../../src/assess/assess-connection.ts';
import { viewPanel } from '../../../src/assess/set-out/panel-view.ts';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { answerAsPlaced } from '../../../src/assess/yard/as-placed.ts';
import { judgePlacing, type PlacingContext } from '../../../src/assess/yard/judge-placing.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { placeCastIn } from '../../../src/assess/yard/placed-cast-in.ts';
import type { FoundPlace, PlacingAnswer } from '../../../src/assess/yard/placing-answer.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { demo } from '../../job/edit/demo.ts';
import { demoIndex, demoMarks, findAt, planOf, withCastIn, withPanel } from './pieces.ts';

const NONE: ReadonlyMap<string, FoundPlace> = new Map();

function contextOf(plan: PiecePlan, file: JobFile = demo): PlacingContext {
  return { index: file === demo ? demoIndex : indexJob(file), bed: plan.setOut.bed };
}

/** An insert by its number in the panel. */
function itemOf({ setOut }: PiecePlan, id: string): SetOutItem {
  return setOut.items.find(({ castIn }) => castIn.id === id)!;
}

function judge(plan: PiecePlan, item: SetOutItem, found: FoundPlace, others = NONE, file = demo): PlacingAnswer {
  return judgePlacing(contextOf(plan, file), plan, item, found, others);
}

const p13 = planOf('P13');
/** On the mould face, single: 2100, 2500. */
const single = itemOf(p13, '14');
/** In the gate stop end, 1100 from the slipway rail, 100 above the bed. */
const inEdge = itemOf(p13, '17');
/** On a chair under the trowelled face. */
const onChair = itemOf(p13, '9');

describe('within its tolerance', () => {
  it('an insert is good to the very limit, either way, and off beyond it', () => {
    for (const sign of [1, -1]) {
      for (const [dx, dy] of [
        [5, 0],
        [0, 5],
        [5, 5],
      ] as const)
        expect(judge(p13, single, findAt(single, sign * dx, sign * dy)).advice).toBe('good');
      expect(judge(p13, single, findAt(single, sign * 5.01)).advice).toBe('move');
      expect(judge(p13, single, findAt(single, 0, sign * 5.01)).advice).toBe('move');
    }
  });

  it.each(demoMarks)('%s: what is found where it should be is good, nothing to move, nobody asked', (mark) => {
    const plan = planOf(mark);
    for (const item of plan.setOut.items) {
      const answer = judge(plan, item, findAt(item));
      expect(answer).toMatchObject({ advice: 'good', moves: [], asPlaced: null, findings: [], decides: 'nobody asks' });
      expect(answer.deviation).toEqual({ x: 0, y: 0, level: null });
    }
  });

  it('one length alone is enough to judge by, none is not', () => {
    expect(judge(p13, single, { x: single.taped[0], y: null, level: null }).advice).toBe('good');
    expect(judge(p13, single, { x: null, y: single.taped[1] + 9, level: null }).moves).toEqual([
      { by: 9, toward: 'toward slipway rail' },
    ]);
    expect(judge(p13, single, { x: null, y: null, level: null })).toMatchObject({
      advice: 'nothing measured',
      verdict: 'not known',
      deviation: { x: null, y: null, level: null },
    });
  });

  it('an insert has its own tolerance before that of the rules', () => {
    const file = withCastIn('P13', '14', { tolerance_mm: 2 });
    const plan = planOf('P13', file);
    const item = itemOf(plan, '14');
    expect(judge(plan, item, findAt(item, 2), NONE, file).advice).toBe('good');
    expect(judge(plan, item, findAt(item, 3), NONE, file).advice).toBe('move');
  });
});

describe('a level', () => {
  const at = (level: number) => judge(p13, onChair, { x: null, y: null, level });

  it('is judged around what the chair gives, 4 mm below the face ± 5 mm, and never above the face', () => {
    expect(at(4).deviation.level).toBeCloseTo(0, 6);
    expect(at(9).advice).toBe('good');
    expect(at(9.1)).toMatchObject({ advice: 'move', moves: [{ by: 5, toward: 'up' }] });
    expect(at(0).advice).toBe('good');
    // Within ± 5 mm of the aim, but proud: the screed hits it.
    expect(at(-1)).toMatchObject({ advice: 'move', moves: [{ by: 5, toward: 'down' }], verdict: 'does not work' });
    expect(at(-1).findings).toEqual(['its top stands 1 mm above the face, where the screed hits it']);
  });

  it('too deep is computed with a deeper recess, within its tolerance with that of the design', () => {
    const seat = { index: demoIndex, bed: p13.setOut.bed, setOut: p13.setOut, item: onChair };
    const { recess_mm } = onChair.castIn;
    const recessAt = (level: number) => placeCastIn({ ...seat, found: { x: null, y: null, level } }).recess_mm;
    expect(recessAt(4)).toBe(recess_mm);
    expect(recessAt(9)).toBe(recess_mm);
    expect(recessAt(13)).toBeCloseTo(recess_mm + 9, 6);
    expect(recessAt(-20)).toBe(0);
  });
});

describe('the way back', () => {
  it('is told toward ends and rails, and up or down in a side form', () => {
    const moves = (item: SetOutItem, dx: number, dy: number) =>
      judge(p13, item, findAt(item, dx, dy)).moves.map(({ by, toward }) => `${by} ${toward}`);
    expect(moves(single, 9, -4)).toEqual(['9 toward gate stop end', '4 toward store rail']);
    expect(moves(single, -9, 4)).toEqual(['9 toward crane stop end', '4 toward slipway rail']);
    expect(moves(inEdge, 9, -6)).toEqual(['9 toward slipway rail', '6 up']);
    expect(moves(inEdge, -9, 6)).toEqual(['9 toward store rail', '6 down']);
    expect(moves(itemOf(p13, '15'), 7, 0)).toEqual(['7 toward gate stop end']);
  });

  it('from a datum at the other end runs the other way', () => {
    const plan = planOf('P13-H');
    const item = itemOf(plan, '14');
    expect(judge(plan, item, findAt(item, 9, 0)).moves).toEqual([{ by: 9, toward: 'toward crane stop end' }]);
  });

  it('in a side form of its own runs toward its corners', () => {
    const skew = demoMarks.flatMap((mark) => {
      const plan = planOf(mark);
      return plan.setOut.items
        .filter(({ side }) => side?.startsWith('the side from') === true)
        .map((item) => ({ plan, item }));
    });
    for (const { plan, item } of skew) {
      const [there, back] = [9, -9].map((off) => judge(plan, item, findAt(item, off)).moves[0]!.toward);
      expect(item.printed.kind === 'edge' && `toward ${item.printed.from}`).toBe(there);
      expect(back).toMatch(/^toward corner \d+$/);
      expect(back).not.toBe(there);
    }
  });

  it('brings it to its place: found less the moves is designed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...p13.setOut.items),
        fc.integer({ min: -40, max: 40 }),
        fc.integer({ min: -40, max: 40 }),
        (item, dx, dy) => {
          const { moves } = judge(p13, item, findAt(item, dx, dy));
          if (Math.max(Math.abs(dx), Math.abs(dy)) <= 5) expect(moves).toEqual([]);
          else expect(moves.map(({ by }) => by)).toEqual([dx, dy].map(Math.abs).filter((by) => by > 0));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is open while the stage lasts, after screeding for the trowelled face, and never once it is hard', () => {
    const advise = (item: SetOutItem, now: NonNullable<PlacingContext['now']>) =>
      judgePlacing({ ...contextOf(p13), now }, p13, item, findAt(item, 9), NONE).advice;
    const moments = [1, 2, 'after screed', 'hard'] as const;
    expect(moments.map((now) => advise(single, now))).toEqual(['move', 'leave', 'leave', 'leave']);
    expect(moments.map((now) => advise(inEdge, now))).toEqual(['move', 'leave', 'leave', 'leave']);
    expect(moments.map((now) => advise(onChair, now))).toEqual(['move', 'move', 'move', 'leave']);
  });
});

describe('computed as placed', () => {
  it('has the numbers of the design where nothing is off', () => {
    for (const mark of demoMarks) {
      const { setOut } = planOf(mark);
      for (const item of setOut.items) {
        const { asPlaced, findings } = answerAsPlaced({
          index: demoIndex,
          bed: setOut.bed,
          setOut,
          item,
          found: findAt(item),
          others: NONE,
        });
        expect(findings, `${mark} ${item.number}`).toEqual([]);
        if (asPlaced === null) continue;
        const connection = demoIndex.connectionsOf(mark).find((one) => one.mark === asPlaced.connection)!;
        const { state, ratio } = assessConnection(resolveConnection(demoIndex, connection));
        expect(asPlaced.before).toEqual({ state, ratio });
        expect(asPlaced.after).toMatchObject({ state, ratio });
        expect(asPlaced.plate.kind).toBe(demoIndex.fixtureOf(connection) === null ? 'no plate' : 'as designed');
      }
    }
  });

  it('has the numbers of a job that was drawn so', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...p13.setOut.items.filter(({ connection }) => connection !== null)),
        fc.integer({ min: -30, max: 30 }),
        fc.integer({ min: -30, max: 30 }),
        (item, dx, dy) => {
          const moved = placeCastIn({
            index: demoIndex,
            bed: p13.setOut.bed,
            setOut: p13.setOut,
            item,
            found: findAt(item, dx, dy),
          });
          const drawn = planOf('P13', withCastIn('P13', item.castIn.id, { x_mm: moved.x_mm, y_mm: moved.y_mm }));
          const [x, y] = itemOf(drawn, item.castIn.id).taped;
          expect(x).toBeCloseTo(item.taped[0] + dx, 6);
          expect(y).toBeCloseTo(item.taped[1] + dy, 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('takes the other inserts where they were found, and says which were not taped', () => {
    const one = itemOf(p13, '13');
    const two = itemOf(p13, '12');
    const alone = judge(p13, one, findAt(one, 9));
    expect(alone.asPlaced).toMatchObject({
      connection: 'C45',
      unmeasured: [two.number],
      plate: { kind: 'does not go on' },
    });
    expect(alone.verdict).toBe('does not work');
    const together = judge(p13, one, findAt(one, 9), new Map([[two.castIn.key, findAt(two, 9)]]));
    expect(together.asPlaced).toMatchObject({
      unmeasured: [],
      plate: { kind: 'shifted', by: expect.closeTo(8, 2) as number },
    });
    expect(together.verdict).toBe('works');
  });

  it('lets the whole board follow what was taped of it', () => {
    const ends = [itemOf(p13, '4'), itemOf(p13, '1')];
    const [near, far] = ends as [SetOutItem, SetOutItem];
    const answer = judge(
      p13,
      near,
      { x: near.taped[0] + 9, y: null, level: null },
      new Map([[far.castIn.key, { x: null, y: far.taped[1], level: null }]]),
    );
    expect(answer.asPlaced?.plate).toEqual({ kind: 'shifted', by: expect.closeTo(8, 2) as number });
    expect(answer.asPlaced?.unmeasured).toHaveLength(4);
  });

  it('is not stopped by a length of another that was typed far beyond the form', () => {
    const plan = planOf('P03');
    const [first, second] = plan.setOut.items as readonly [SetOutItem, SetOutItem];
    const far = new Map([[first.castIn.key, { x: 90_000, y: 900, level: null }]]);
    const context = { index: demoIndex, bed: plan.setOut.bed };
    const { findings } = judgePlacing(context, plan, second, findAt(second, 12, 0), far);
    expect(findings).toEqual(judgePlacing(context, plan, second, findAt(second, 12, 0), new Map()).findings);
    expect(judgePlacing(context, plan, first, { x: 90_000, y: 900, level: null }, new Map())).toMatchObject({
      verdict: 'does not work',
      findings: ['there is no concrete there'],
    });
  });

  it('does not blame the place for what failed as designed', () => {
    const plan = planOf('P03');
    const item = plan.setOut.items.find(({ connection }) => connection === 'C09')!;
    const answer = judge(plan, item, findAt(item, 6));
    expect(answer.asPlaced).toMatchObject({ before: { state: 'fails' }, after: { state: 'fails' } });
    expect(answer).toMatchObject({ verdict: 'does not work', decides: 'design engineer' });
  });

  it('never calls what is not checked, not covered or in no connection a pass', () => {
    for (const mark of demoMarks) {
      const plan = planOf(mark);
      for (const item of plan.setOut.items) {
        const { advice, asPlaced, verdict, decides } = judge(plan, item, findAt(item, item.tolerance + 1, -6));
        expect(advice).toBe('move');
        if (verdict === 'works') expect(asPlaced?.after.state).toBe('passes');
        if (asPlaced?.after.state !== 'passes') expect(decides).toBe('design engineer');
        if (asPlaced === null) expect(verdict).not.toBe('works');
      }
    }
    const actions = { kind: 'none' } as const;
    const unloaded = {
      ...demo,
      job: { ...demo.job, connections: demo.job.connections.map((one) => ({ ...one, actions })) },
    };
    const plan = planOf('P13', unloaded);
    const item = itemOf(plan, '14');
    const answer = judge(plan, item, findAt(item, 6), NONE, unloaded);
    expect(answer.asPlaced?.after.state).toBe('strength not checked');
    expect(answer).toMatchObject({ verdict: 'not known', decides: 'design engineer' });
  });

  it('finds what comes out of the concrete, stands in another, or meets what it did not', () => {
    const out = judge(p13, single, { x: -50, y: 2500, level: null });
    expect(out.findings).toEqual(['there is no concrete there']);
    expect(out.asPlaced?.after).toEqual({
      state: 'cannot be computed',
      ratio: null,
      why: 'there is no concrete there',
    });
    expect(out.verdict).toBe('does not work');
    const aside = judge(p13, single, { x: 30, y: 2500, level: null });
    expect(aside.findings.join()).toMatch(/concrete toward the nearest side/);
    const other = itemOf(p13, '13');
    expect(judge(p13, single, findAt(other)).findings).toContain(`it stands in no. ${other.number}`);
    expect(judge(p13, inEdge, findAt(inEdge, 0, 150)).findings).toEqual(['it is beyond the side that it belongs in']);
    const p11 = planOf('P11');
    const meets = p11.setOut.items
      .filter(({ connection }) => connection !== null)
      .flatMap((item) => judge(p11, item, findAt(item, 30, 14)).findings);
    expect(meets.join()).toMatch(/the body of no\. \d+ (meets|is \d mm from) bar \d+ of layer \d/);
  });
});

describe('who decides', () => {
  const limits = (acceptance: object | null): JobFile =>
    ({ ...demo, library: { ...demo.library, rules: { ...demo.library.rules, acceptance } } }) as JobFile;

  it('is QA within the limits that the design engineer set, where it works; else the design engineer', () => {
    const file = limits({ position_mm: 8, level_mm: 8, setBy: 'B. Nobody' });
    const decide = (dx: number, dy: number) => judge(p13, single, findAt(single, dx, dy), NONE, file).decides;
    expect(decide(8, 0)).toBe('qa');
    expect(decide(-8, 8)).toBe('qa');
    expect(decide(8.1, 0)).toBe('design engineer');
    expect(decide(6, -8.1)).toBe('design engineer');
    const level = (at: number) => judge(p13, onChair, { x: null, y: null, level: at }, NONE, file).decides;
    expect(level(12)).toBe('qa');
    expect(level(12.1)).toBe('design engineer');
  });

  it('is the design engineer where none set limits, and where it does not work', () => {
    const none = limits(null);
    expect(judge(p13, single, findAt(single, 6), NONE, none).decides).toBe('design engineer');
    const one = itemOf(p13, '13');
    const wide = limits({ position_mm: 50, level_mm: 50, setBy: 'B. Nobody' });
    expect(judge(p13, one, findAt(one, 20), NONE, wide).decides).toBe('design engineer');
  });
});

describe('the frame of the form', () => {
  it('changes no answer: however the panel is laid and wherever its datum is', () => {
    const lays = fc.record({
      turn_deg: fc.constantFrom(0, 90, 180, 270),
      datum: fc.constantFrom('bottom-left', 'bottom-right', 'top-left', 'top-right'),
    });
    const step = fc.integer({ min: -25, max: 25 });
    fc.assert(
      fc.property(lays, fc.constantFrom(...p13.setOut.items), step, step, (inForm, item, dx, dy) => {
        const file = withPanel('P13', () => ({ inForm }));
        const plan = planOf('P13', file);
        const turned = itemOf(plan, item.castIn.id);
        const found = findAt(item, dx, dy);
        const seat = { index: demoIndex, bed: p13.setOut.bed };
        const placed = placeCastIn({ ...seat, setOut: p13.setOut, item, found });
        // Where the tape of the other lay shows the same place of the drawing.
        const drawn = planOf('P13', {
          ...file,
          job: {
            ...file.job,
            castIns: file.job.castIns.map((one) => (one.panel === 'P13' && one.id === placed.id ? placed : one)),
          },
        });
        const there = itemOf(drawn, item.castIn.id).taped;
        const before = judge(p13, item, found);
        const after = judge(plan, turned, { x: there[0], y: there[1], level: null }, NONE, file);
        expect(after.advice).toBe(before.advice);
        expect(after.verdict).toBe(before.verdict);
        expect(after.decides).toBe(before.decides);
        expect(after.findings).toHaveLength(before.findings.length);
        expect(after.asPlaced?.after.state).toBe(before.asPlaced?.after.state);
        expect(after.asPlaced?.after.ratio ?? -1).toBeCloseTo(before.asPlaced?.after.ratio ?? -1, 6);
        expect(after.asPlaced?.plate.kind).toBe(before.asPlaced?.plate.kind);
      }),
      { numRuns: 60 },
    );
  });

  it('goes there and back: an insert placed by its own taped place stands where it was drawn', () => {
    for (const mark of demoMarks) {
      const { setOut } = planOf(mark);
      const { toForm } = viewPanel(setOut.panel);
      for (const item of setOut.items) {
        const seat = { index: demoIndex, bed: setOut.bed, setOut, item };
        expect(placeCastIn({ ...seat, found: findAt(item) })).toEqual(item.castIn);
        const off = placeCastIn({ ...seat, found: findAt(item, 3, -2) });
        expect(Math.hypot(off.x_mm - item.castIn.x_mm, off.y_mm - item.castIn.y_mm)).toBeCloseTo(Math.hypot(3, 2), 6);
        if (item.place !== 'edge') expect(toForm([off.x_mm, off.y_mm])[0]).toBeCloseTo(item.taped[0] + 3, 6);
      }
    }
  });
});

describe('continuity', () => {
  it('a twentieth of a millimetre changes a ratio by little', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...p13.setOut.items),
        fc.double({ min: 6, max: 20, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (item, dx, dy) => {
          const [a, b] = [0, 0.05].map((more) => judge(p13, item, findAt(item, dx + more, dy)).asPlaced);
          if (a?.after.state !== 'passes' || b?.after.state !== 'passes') return;
          expect(Math.abs((a.after.ratio ?? 0) - (b.after.ratio ?? 0))).toBeLessThan(0.01);
        },
      ),
      { numRuns: 60 },
    );
  });
});
