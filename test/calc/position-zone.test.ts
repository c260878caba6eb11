import { describe, expect, it } from 'vitest';
import { CalcError } from '../../src/calc/calc-error.ts';
import { calculate } from '../../src/calc/calculation.ts';
import { positionZoneCalc } from '../../src/calc/position-zone.ts';
import { makeRandom } from '../../src/engine/tolerance/seeded-random.ts';
import { EXAMPLE_GROUP } from './example-group.ts';

/** Two inserts near the lower edge, pulled and pushed toward it. */
const example = {
  calc: 'position-zone',
  ...EXAMPLE_GROUP,
  insert: { ...EXAMPLE_GROUP.insert, qualification: { document: 'an invented document', standard: 'EN 1992-4' } },
  positions: [
    { id: 'A', x_mm: 1150, y_mm: 160 },
    { id: 'B', x_mm: 1350, y_mm: 160 },
  ],
  actions: [
    { id: 'A', N_kN: 8, Vx_kN: 0, Vy_kN: -10 },
    { id: 'B', N_kN: 8, Vx_kN: 0, Vy_kN: -10 },
  ],
  insertId: 'A',
};

function ask(changes: object = {}) {
  const { contract: _, engine: __, ...answer } = calculate({ ...example, ...changes }) as Record<string, unknown>;
  return positionZoneCalc.output.parse(answer);
}

/** What `anchorage` says with insert A elsewhere. */
function verdictAt([x_mm, y_mm]: readonly [number, number]): unknown {
  const { calc: _, insertId: __, ...rest } = example;
  const positions = [{ id: 'A', x_mm, y_mm }, example.positions[1]];
  return (calculate({ calc: 'anchorage', ...rest, positions }) as { verdict: unknown }).verdict;
}

const spread = (values: readonly number[]) => [Math.min(...values), Math.max(...values)] as const;

describe('position-zone', () => {
  it('every corner passes in anchorage, and the design lies in the zone', () => {
    const { boundary_mm, checks, holes_mm, box_mm } = ask();
    expect(boundary_mm.length).toBeGreaterThan(8);
    expect(boundary_mm.filter((at) => verdictAt(at) !== 'pass')).toEqual([]);
    const [low, high] = spread(boundary_mm.map(([, y]) => y));
    expect(low).toBeLessThan(160);
    expect(high).toBeGreaterThan(165);
    expect([holes_mm, checks <= 2000]).toEqual([[], true]);
    // The lower edge ends it: just below the lowest corner it fails.
    const lowest = boundary_mm.find(([, y]) => y === low)!;
    expect(verdictAt([lowest[0], low - 0.5])).not.toBe('pass');
    expect(box_mm.across).toBeLessThanOrEqual(Math.floor(160 - low));
  });

  it('all of the box passes', () => {
    const { box_mm } = ask();
    const random = makeRandom(3);
    const places = Array.from({ length: 100 }, (): [number, number] => [
      1150 + box_mm.along * (2 * random() - 1),
      160 + box_mm.across * (2 * random() - 1),
    ]);
    expect(box_mm.along).toBeGreaterThan(0);
    expect(places.filter((at) => verdictAt(at) !== 'pass')).toEqual([]);
  });

  it('of the group it holds shifts, mirrored where the group is its own mirror image', () => {
    const { boundary_mm, isCut } = ask({ insertId: 'group' });
    const [left, right] = spread(boundary_mm.map(([x]) => x));
    expect([left, right]).toEqual([-50, 50]);
    expect(isCut).toMatchObject({ left: true, right: true, up: true, down: false });
  });

  it('more concrete at the edge never makes it smaller', () => {
    const lowest = (shift: number) => {
      const positions = example.positions.map((at) => ({ ...at, y_mm: at.y_mm + shift }));
      return Math.min(...ask({ positions }).boundary_mm.map(([, y]) => y - 160 - shift));
    };
    expect(lowest(20)).toBeLessThanOrEqual(lowest(0) + 0.3);
  });

  it('is empty, with the reason, where the positions as given do not pass', () => {
    const { boundary_mm, box_mm, notes } = ask({ actions: example.actions.map((one) => ({ ...one, N_kN: 80 })) });
    expect([boundary_mm, box_mm]).toEqual([[], { along: 0, across: 0 }]);
    expect(notes).toContain('the positions as given do not pass, or are not covered: there is no zone around them');
  });

  it('names the key that is wrong', () => {
    expect(() => ask({ insertId: 'Z' })).toThrow(CalcError);
    expect(() => ask({ insertId: 'Z' })).toThrow('insertId: "Z" is none of the positions');
    expect(() => ask({ actions: undefined })).toThrow('actions');
  });
});
