import { findDatumSides } from '../../assess/set-out/form-words.ts';
import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import { writeNumbers } from '../../assess/set-out/write-numbers.ts';
import type { RunningDimension } from '../running-dimensions.ts';

/** Figures of one row along an axis of the form: distances from the datum corner [mm of the panel]. */
export interface PlanRow {
  readonly axis: 0 | 1;
  readonly words: string;
  /** `at` is the exact distance from the datum corner, the text the printed one. */
  readonly dimensions: readonly RunningDimension[];
}

/** The distance along an axis that an item's row shows; null where its list alone says it (a skew side, or across its own side). */
function findFigure(item: SetOutItem, axis: 0 | 1, setOut: PanelSetOut): { at: number; printed: number } | null {
  if (item.printed.kind === 'plan') return { at: item.at[axis], printed: axis === 0 ? item.printed.x : item.printed.y };
  const sides = findDatumSides(setOut.words, setOut.datum);
  const from = axis === 0 ? sides.end : sides.rail;
  return item.printed.from === from ? { at: item.at[axis], printed: item.printed.along } : null;
}

/** Figures of items, those at one distance together, each with the numbers that it is for. */
function gather(items: readonly SetOutItem[], axis: 0 | 1, setOut: PanelSetOut): readonly RunningDimension[] {
  const places = new Map<number, { at: number; numbers: number[] }>();
  for (const item of items) {
    const figure = findFigure(item, axis, setOut);
    if (figure === null) continue;
    const place = places.get(figure.printed) ?? { at: figure.at, numbers: [] };
    places.set(figure.printed, place);
    place.numbers.push(item.number);
  }
  return [...places].map(([printed, { at, numbers }]) => ({ at, text: `${printed} (${writeNumbers(numbers)})` }));
}

/** Figures of the form and the openings: corners of the outline and of each opening. */
function gatherForm(setOut: PanelSetOut, axis: 0 | 1): readonly RunningDimension[] {
  const datum = setOut.datumAt[axis];
  const distances = new Set<number>();
  for (const ring of [setOut.outline, ...setOut.openings])
    for (const corner of ring) {
      const distance = Math.abs(corner[axis] - datum);
      if (distance > 0.5) distances.add(distance);
    }
  return [...distances].map((at) => ({ at, text: String(Math.round(at)) }));
}

/**
 * Rows of running dimensions along one axis of the form, nearest to the panel first: the inserts of each stage, then form and openings.
 * Figures are whole mm from the datum corner, each rounded for itself, so that no error adds up.
 */
export function listPlanRows(setOut: PanelSetOut, axis: 0 | 1): readonly PlanRow[] {
  const rows: PlanRow[] = [1, 2].map((stage) => ({
    axis,
    words: `stage ${stage}`,
    dimensions: gather(
      setOut.items.filter((item) => item.stage === stage),
      axis,
      setOut,
    ),
  }));
  return [...rows, { axis, words: 'form', dimensions: gatherForm(setOut, axis) }].filter(
    ({ dimensions }) => dimensions.length > 0,
  );
}
