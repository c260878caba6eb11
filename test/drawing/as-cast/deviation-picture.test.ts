import { describe, expect, it } from 'vitest';
import { type SeenPanel, seeDeviations } from '../../../src/drawing/as-cast/deviation-marks.ts';
import { drawDeviationPicture } from '../../../src/drawing/as-cast/deviation-picture.ts';
import { boxOfMarks } from '../../../src/drawing/boxes.ts';
import type { Mark } from '../../../src/drawing/drawing.ts';
import { castOf, reportOff } from '../../assess/as-cast/casts.ts';

const { panel } = castOf('P01').sample.plan.setOut;
const ROOM = { width: 240, height: 130, text: 2.7 };
const write = (mm: number) => `${Number(mm.toFixed(1))} mm`;

function textsOf(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('what is off, as one sees it', () => {
  const { inserts } = reportOff('P01', { 3: { dx: 9, dy: -3 }, 8: { dx: 1, dy: 0 } });

  it('runs as drawn on the drawn face, and left for right on the other', () => {
    const [drawn, other] = (['outside', 'inside'] as const).map(
      (side) => seeDeviations(panel, inserts, side).marks.find(({ number }) => number === 3)!,
    );
    expect(panel.drawnFace).toBe('outside');
    expect(drawn!.by).toEqual([9, -3]);
    expect(other!.by).toEqual([-9, -3]);
    const [left, right] = [0, Math.max(...panel.outline_mm.map(([x]) => x))];
    expect(drawn!.at[0] + other!.at[0]).toBeCloseTo(left + right, 9);
  });

  it('of an insert in an edge shows what runs along it', () => {
    const { plan } = castOf('P07').sample;
    const items = reportOff('P07', {}).inserts;
    const found = items.find(({ item }) => item.castIn.face === 'edge')!;
    const place = { x: 0, y: 0, dx: 4, dy: 7 } as NonNullable<typeof found.place>;
    const [mark] = seeDeviations(plan.setOut.panel, [{ ...found, place }], plan.setOut.panel.drawnFace).marks;
    expect(Math.hypot(...mark!.by!)).toBeCloseTo(4, 9);
    expect(mark!.by![0] * mark!.along![1] - mark!.by![1] * mark!.along![0]).toBeCloseTo(0, 9);
  });

  it('says how many times larger it draws, and draws it so', () => {
    const seen = seeDeviations(panel, inserts, 'outside');
    const { drawing, magnification } = drawDeviationPicture(seen, ROOM, write);
    expect(magnification).toBe(20);
    const scale =
      boxOfMarks([drawing.marks[0]!])!.width /
      boxOfMarks([{ ...drawing.marks[0]!, kind: 'area', rings: [panel.outline_mm] } as Mark])!.width;
    const dots = drawing.marks.filter((mark) => mark.kind === 'circle' && mark.fill === 'black');
    expect(dots).toHaveLength(1);
    const hollow = drawing.marks.filter((mark) => mark.kind === 'circle' && mark.fill === 'white');
    expect(hollow).toHaveLength(inserts.length);
    const index = seen.marks.findIndex(({ number }) => number === 3);
    const [from, to] = [hollow[index]!, dots[0]!] as readonly { readonly at: readonly [number, number] }[];
    expect((to!.at[0] - from!.at[0]) / scale / magnification).toBeCloseTo(9, 6);
    expect((to!.at[1] - from!.at[1]) / scale / magnification).toBeCloseTo(-3, 6);
    expect(textsOf(drawing.marks)).toContain('3: 9.5 mm');
    expect(textsOf(drawing.marks)).toContain('8');
  });

  it('keeps arrows within what a picture has room for, however far off one is', () => {
    const far: SeenPanel = {
      ...seeDeviations(panel, inserts, 'outside'),
      marks: [{ number: 1, at: [3000, 1500], by: [300, 0], tolerance: 5, state: 'off', along: null }],
    };
    expect(drawDeviationPicture(far, ROOM, write).magnification).toBe(1);
  });
});
