import { beforeAll, describe, expect, it, vi } from 'vitest';
import { lookAtConnection } from '../../src/assess/look-at-connection.ts';
import { sketchConnection } from '../../src/drawing/sketch/connection-sketch.ts';
import { demo } from '../job/edit/demo.ts';

type Labels = typeof import('../../src/web/office/screens/connection/plate-labels.ts');
type Marks = typeof import('../../src/web/office/screens/connection/plate-marks.ts');

/** What this person chose before is read as the module is loaded; Node has no such store. */
let labels: Labels;
let marks: Marks;
beforeAll(async () => {
  vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => undefined });
  labels = await import('../../src/web/office/screens/connection/plate-labels.ts');
  marks = await import('../../src/web/office/screens/connection/plate-marks.ts');
});

const square = (left: number, top: number, size: number) => ({ left, top, right: left + size, bottom: top + size });

describe('a text of the picture', () => {
  const places = [
    { at: [0, 0], anchor: 'start' },
    { at: [100, 0], anchor: 'start' },
  ] as const;

  it('stands in its first free place', () => {
    const label = { text: 'N 6', kind: 'load', places, isNeeded: true } as const;
    expect(labels.placeLabels([label], [])).toMatchObject([{ text: 'N 6', at: [0, 0] }]);
    expect(labels.placeLabels([label], [square(0, -10, 10)])).toMatchObject([{ at: [100, 0] }]);
    expect(labels.placeLabels([label, label], [])).toMatchObject([{ at: [0, 0] }, { at: [100, 0] }]);
  });

  it('is left out where none is free, unless it is needed', () => {
    const everywhere = [square(-500, -500, 1000)];
    const label = { text: 'N 6', kind: 'load', places, isNeeded: false } as const;
    expect(labels.placeLabels([label], everywhere)).toEqual([]);
    expect(labels.placeLabels([{ ...label, isNeeded: true }], everywhere)).toHaveLength(1);
  });
});

it.each([
  [560, 515],
  [366, 415],
])('no text covers another, nor an insert, on a picture of %i × %i px', (width, height) => {
  let count = 0;
  for (const { mark } of demo.job.connections) {
    const looked = lookAtConnection(demo, mark);
    if (looked === null || looked.worked === null) continue;
    const { worked, explanation, panel, fixture } = looked;
    const combination = explanation.loads[0]?.name ?? null;
    const sketch = sketchConnection({ worked, explanation, panel, fixture, castIns: [], combination });
    const view = marks.viewExtent(sketch.extent, { width, height });
    const boxes = labels.labelPlate(view, sketch).map((one) => labels.boxOf(one.text, one));
    count += boxes.length;
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1))
        expect(
          a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top,
          `${mark}: ${JSON.stringify([a, b])}`,
        ).toBe(true);
    });
  }
  expect(count).toBeGreaterThan(200);
});
