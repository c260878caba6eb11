import { expect, it } from 'vitest';
import { boxOfMarks } from '../../src/drawing/boxes.ts';
import { drawInsertDimensioned, drawInsertSmall } from '../../src/drawing/insert-section.ts';
import { demo } from '../job/edit/demo.ts';

const items = demo.library.catalogue.items;

it('draws every insert of a list at one scale, so that the longer one is longer', () => {
  for (const item of items) {
    const drawing = drawInsertSmall(item);
    const body = drawing.marks.find((mark) => mark.kind === 'area' && mark.fill === 'white')!;
    expect(boxOfMarks([body])!.height).toBeCloseTo(item.length_mm / 5, 6);
  }
});

it('writes the dimensions in the reader’s units and keeps them on the paper', () => {
  for (const item of items) {
    const { drawing, scale } = drawInsertDimensioned(item, (length) => `${length} !`);
    const texts = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toContain(`length ${item.length_mm} !`);
    expect(texts).toContain(`embedment ${item.embedment_mm} !`);
    expect(scale).toBeGreaterThanOrEqual(1);
    const { x, y, width, height } = boxOfMarks(drawing.marks)!;
    expect(Math.min(x, y, drawing.width - x - width, drawing.height - y - height)).toBeGreaterThanOrEqual(0);
  }
});
