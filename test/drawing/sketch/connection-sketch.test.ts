import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lookAtConnection } from '../../../src/assess/look-at-connection.ts';
import { boxOfMarks } from '../../../src/drawing/boxes.ts';
import { type ConnectionSketch, sketchConnection } from '../../../src/drawing/sketch/connection-sketch.ts';
import { drawInsertInSlab } from '../../../src/drawing/sketch/insert-in-slab.ts';
import { drawPlateSketch } from '../../../src/drawing/sketch/plate-sketch.ts';
import { mustRead } from '../../job/read.ts';

const demo = mustRead(JSON.parse(readFileSync('demo/job.json', 'utf8')));

function sketch(mark: string, combination: string | null): ConnectionSketch {
  const looked = lookAtConnection(demo, mark)!;
  const { worked, explanation, panel, fixture, index } = looked;
  const castIns = index
    .castInsOf(panel.mark)
    .map((castIn) => ({ castIn, item: castIn.item === null ? null : (index.items.get(castIn.item) ?? null) }));
  return sketchConnection({ worked: worked!, explanation, panel, fixture, castIns, combination });
}

describe('the picture of a connection', () => {
  it('has the concrete that counts with the area of the check, and the distance that cuts it', () => {
    const { areas, distances, inserts } = sketch('C02', 'wind out');
    // 488 x 444 mm: squares of 288 mm at 200 mm centres, cut 100 mm from the inserts.
    expect(areas.find(({ kind }) => kind === 'cone')?.area).toBeCloseTo(488 * 444, 6);
    expect(distances[0]?.length).toBeCloseTo(100, 9);
    expect(inserts.map(({ load }) => Math.round(load!.N))).toEqual([22500, 22500, 22500, 22500]);
  });

  it('has every hole where its insert is, on every face', () => {
    for (const { mark } of demo.job.connections) {
      const { holes, inserts } = sketch(mark, null);
      for (const { at } of inserts)
        expect(Math.min(...holes.map((hole) => Math.hypot(hole.at[0] - at[0], hole.at[1] - at[1])))).toBeLessThan(3);
    }
  });

  it('keeps a plate large enough to be read, however far its edge is', () => {
    for (const { mark } of demo.job.connections) {
      const { extent, plate, areas } = sketch(mark, null);
      const near = boxOfMarks([
        {
          kind: 'area',
          layer: 'text',
          pen: null,
          fill: 'none',
          rings: [
            ...(plate === null ? [] : [plate]),
            ...areas.flatMap(({ kind, rings }) => (kind === 'edge' ? [] : rings)),
          ],
        },
      ])!;
      expect(Math.max(extent.width, extent.height)).toBeLessThan(2.4 * Math.max(near.width, near.height) + 81);
    }
  });

  it('shows no load where no combination is asked for', () => {
    const { action, inserts } = sketch('C02', null);
    expect(action).toBeNull();
    expect(inserts.every(({ load }) => load === null)).toBe(true);
  });
});

describe('small drawings', () => {
  it('draw inserts to one scale, so that a longer one is longer', () => {
    const [short, long] = ['F16-75', 'F16-140'].map((id) => {
      const item = demo.library.catalogue.items.find((one) => one.id === id)!;
      const { marks } = drawInsertInSlab(item, 200, true);
      return boxOfMarks(marks.filter(({ layer, kind }) => layer === 'insert' && kind === 'area'))!.height;
    });
    expect(long! - short!).toBeCloseTo((140 - 75) / 5, 9);
  });

  it('draw a plate inside its room, its slots as long as they are', () => {
    const { fixture } = demo.library.details.details[0]!;
    const slotted = {
      ...fixture,
      holes: fixture.holes.map((hole) => ({ ...hole, slot_mm: 20, slotAngle_deg: 90 })),
    };
    const { marks, width, height } = drawPlateSketch(slotted, { width: 60, height: 40 }, false);
    const box = boxOfMarks(marks)!;
    expect(box.x).toBeGreaterThan(0);
    expect(box.x + box.width).toBeLessThan(width);
    expect(box.height).toBeCloseTo(34, 6);
    expect(height).toBe(40);
    const hole = boxOfMarks(marks.filter(({ layer }) => layer === 'insert').slice(0, 1))!;
    // 18 wide and 18 + 20 long, at 34/300.
    expect(hole.width).toBeCloseTo((18 * 34) / 300, 2);
    expect(hole.height).toBeCloseTo((38 * 34) / 300, 2);
  });
});
