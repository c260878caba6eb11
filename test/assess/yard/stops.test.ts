import { describe, expect, it } from 'vitest';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { demo } from '../../job/edit/demo.ts';
import { countFormTouches, countTouches, demoMarks, planOf } from './pieces.ts';

const ids = Array.from({ length: 12 }, (_, i) => i.toString(16).repeat(24));

function asksOf({ stops }: PiecePlan) {
  return stops.flatMap(({ asks }) => asks);
}

describe('the stops of a piece', () => {
  it.each(demoMarks)('%s: every insert is looked at once, in walking order', (mark) => {
    const { stops, setOut } = planOf(mark);
    expect(stops.flatMap(({ members }) => members)).toEqual(setOut.items);
    for (const { members, stage, assembly } of stops) {
      expect(new Set(members.map((one) => one.stage))).toEqual(new Set([stage]));
      expect(new Set(members.map((one) => one.assembly))).toEqual(new Set([assembly]));
    }
  });

  it('takes the members of a group together, and singles up to six on one side', () => {
    const { stops } = planOf('P13');
    expect(stops.map(({ stage, connection, members }) => [stage, connection, members.length])).toEqual([
      [1, 'C48', 2],
      [1, 'C45', 2],
      [1, 'C46', 1],
      [1, 'C47', 2],
      [2, 'C50', 1],
      [2, 'C43', 2],
      [2, 'C49', 1],
      [2, 'C41', 4],
      [2, 'C44', 1],
      [2, 'C42', 4],
    ]);
    // The same inserts without a connection: nothing but their assembly and side holds them together.
    const loose = planOf('P13', { ...demo, job: { ...demo.job, connections: [] } });
    for (const { members, connection } of loose.stops) {
      expect(connection).toBeNull();
      expect(members.length).toBeLessThanOrEqual(6);
    }
    expect(loose.stops.some(({ members }) => members.length > 2)).toBe(true);
  });

  it('takes no more than six singles at once', () => {
    const [source] = demo.job.castIns.filter(({ panel, id }) => panel === 'P13' && id === '14');
    const row = Array.from({ length: 14 }, (_, i) => ({
      ...source!,
      id: `r${i}`,
      key: `row${i}`,
      x_mm: 500 + 300 * i,
    }));
    const rest = demo.job.castIns.filter(({ panel }) => panel !== 'P13');
    const plan = planOf('P13', { ...demo, job: { ...demo.job, connections: [], castIns: [...rest, ...row] } });
    expect(plan.stops.map(({ members }) => members.length)).toEqual([6, 6, 2]);
  });
});

describe('the digits that are asked for', () => {
  it.each(demoMarks)('%s: of every group of a stage both axes, and both ends where it has two', (mark) => {
    for (const id of ids) {
      const plan = planOf(mark, demo, id);
      const asks = asksOf(plan);
      for (const { connection, members } of plan.setOut.groups) {
        if (members.length < 2) continue;
        const numbers = new Set(members.map(({ number }) => number));
        const ofGroup = asks.filter(({ number, why }) => numbers.has(number) && why === 'group corner');
        expect(new Set(ofGroup.map(({ axis }) => axis)), `${connection}`).toEqual(new Set(['x', 'y']));
        expect(new Set(ofGroup.map(({ number }) => number)).size).toBe(2);
      }
    }
  });

  it('catches a group that is shifted along either axis, or turned about its middle', () => {
    for (const mark of demoMarks) {
      const plan = planOf(mark);
      const asks = asksOf(plan);
      for (const { connection, members } of plan.setOut.groups.filter((group) => group.members.length > 1)) {
        const items = members.map(({ number }) => plan.setOut.items[number - 1]!);
        const middle = [0, 1].map((axis) => items.reduce((sum, { taped }) => sum + taped[axis]!, 0) / items.length);
        const moves: readonly ((at: readonly [number, number]) => readonly [number, number])[] = [
          ([x, y]) => [x + 20, y],
          ([x, y]) => [x, y - 20],
          ([x, y]) => [x - 0.25 * (y - middle[1]!), y + 0.25 * (x - middle[0]!)],
        ];
        for (const move of moves) {
          const isCaught = asks.some(({ number, axis }) => {
            const item = items.find((one) => one.number === number);
            if (item === undefined) return false;
            const of = axis === 'x' ? 0 : 1;
            return Math.abs(move(item.taped)[of] - item.taped[of]) > item.tolerance;
          });
          expect(isCaught, `${mark} ${connection}`).toBe(true);
        }
      }
    }
  });

  it('tapes a small piece in full: three lengths of a board, four of inserts that were taped one by one', () => {
    const { setOut, stops } = planOf('P07');
    const counts = setOut.groups.map(({ hasTemplate, members }) => {
      const numbers = new Set(members.map(({ number }) => number));
      return [hasTemplate, stops.flatMap(({ asks }) => asks).filter(({ number }) => numbers.has(number)).length];
    });
    expect(counts.length).toBeGreaterThan(0);
    for (const [hasTemplate, count] of counts) expect(count).toBe(hasTemplate === true ? 3 : 4);
  });

  it('tapes at the far end of a board the length across the line, which a turn about the near end changes', () => {
    const board = demo.job.castIns.find(({ panel, id }) => panel === 'P13' && id === '1')!.holding;
    const castIns = demo.job.castIns
      .filter(({ panel, id }) => panel !== 'P13' || id === '9' || id === '10')
      .map((one) => (one.panel === 'P13' ? { ...one, holding: board } : one));
    const connections = demo.job.connections.filter(({ panel, mark }) => panel !== 'P13' || mark === 'C43');
    for (const id of ids) {
      const plan = planOf('P13', { ...demo, job: { ...demo.job, castIns, connections } }, id);
      expect(plan.setOut.groups.map(({ hasTemplate }) => hasTemplate)).toEqual([true]);
      const asks = asksOf(plan);
      // They stand in a row along x, so that both of their y are taped and one x.
      expect(asks.map(({ axis }) => axis).sort()).toEqual(['x', 'y', 'y']);
      expect(new Set(asks.filter(({ axis }) => axis === 'y').map(({ number }) => number)).size).toBe(2);
    }
  });

  it('draws one in five of the singles of a stage, another one for another casting', () => {
    const loose = { ...demo, job: { ...demo.job, connections: [] } };
    const drawn = ids.map((id) => {
      const plan = planOf('P13', loose, id);
      for (const stage of [1, 2] as const) {
        const items = plan.setOut.items.filter((item) => item.stage === stage);
        const numbers = new Set(items.map(({ number }) => number));
        const asks = asksOf(plan).filter(({ number }) => numbers.has(number));
        expect(asks).toHaveLength(Math.ceil(items.length / 5));
        expect(asks.every(({ why }) => why === 'sample')).toBe(true);
      }
      return asksOf(plan)
        .map(({ number }) => number)
        .join(' ');
    });
    expect(new Set(drawn).size).toBeGreaterThan(6);
    expect(asksOf(planOf('P13', loose, ids[3]!))).toEqual(asksOf(planOf('P13', structuredClone(loose), ids[3]!)));
  });

  it('always tapes lifting inserts and braces both ways, and nothing else without a type', () => {
    for (const mark of demoMarks) {
      const plan = planOf(mark);
      for (const { castIn, number, item } of plan.setOut.items) {
        const axes = asksOf(plan).flatMap((ask) => (ask.number === number ? [ask.axis] : []));
        if (castIn.role === 'lifting' || castIn.role === 'brace') expect(axes).toEqual(['x', 'y']);
        else if (item === null) expect(axes).toEqual([]);
      }
    }
  });

  it('knows how many digits the longest length along its tape has', () => {
    for (const mark of demoMarks) {
      const plan = planOf(mark);
      for (const { number, axis, mostDigits } of asksOf(plan)) {
        const { taped, place } = plan.setOut.items[number - 1]!;
        expect(String(Math.round(axis === 'x' ? taped[0] : taped[1])).length).toBeLessThanOrEqual(mostDigits);
        if (place === 'edge' && axis === 'y') expect(mostDigits).toBe(String(plan.setOut.depth).length);
      }
    }
  });

  it('keeps the check of twenty inserts, form and both stages, under 90 touches', () => {
    for (const id of ids) {
      const plan = planOf('P13', demo, id);
      expect(countFormTouches(plan)).toBe(23);
      expect(countTouches(plan) + countFormTouches(plan)).toBeLessThan(90);
    }
  });
});

describe('what is looked at after screeding', () => {
  it('is what stands in the trowelled face', () => {
    const { afterScreed, setOut } = planOf('P13');
    expect(afterScreed).toHaveLength(13);
    expect(afterScreed).toEqual(setOut.items.filter(({ place }) => place === 'trowelled face'));
  });
});
