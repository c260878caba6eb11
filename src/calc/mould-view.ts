import * as z from 'zod';
import { findOutlineFault, isWithinOutline } from '../engine/fixture/plate-outline.ts';
import { placeOnEdge } from '../engine/form/edge-place.ts';
import { FormError } from '../engine/form/form-error.ts';
import { levelOf, type MouldView, mouldView } from '../engine/form/mould-view.ts';
import { CalcError } from './calc-error.ts';
import { IGNORED_KEYS, numberAbove0, numberIn, polygonField, words } from './fields.ts';
import { describeOutlineFault } from './outline-fault.ts';

/** An insert may stand this far outside the outline [mm]: rounding of coordinates. */
const ON_EDGE = 1e-6;

const quoteAll = (names: readonly string[]) => names.map((name) => `"${name}"`).join(', ');

const FACES = ['outside', 'inside'] as const;
const CORNERS = ['bottom-left', 'bottom-right', 'top-left', 'top-right'] as const;
const face = (what: string) => z.enum(FACES, { error: `expected ${what}, "outside" or "inside"` });

const PLACES =
  'expected a place on a face { "x_mm", "y_mm", "face" } or on an edge { "edge", "along_mm", "fromOutside_mm" }';
const FACE_KEYS = ['x_mm', 'y_mm', 'face'] as const;
const EDGE_KEYS = ['edge', 'along_mm', 'fromOutside_mm'] as const;

const insert = z.strictObject(
  {
    id: words('the name of the insert'),
    x_mm: numberIn(-1e6, 1e6, 'mm', 'x on the drawn face').optional(),
    y_mm: numberIn(-1e6, 1e6, 'mm', 'y on the drawn face').optional(),
    face: face('the face that the insert is in').optional(),
    edge: z
      .int({ error: 'expected the number of a side of the outline, counted from 0' })
      .nonnegative({ error: 'expected the number of a side of the outline, counted from 0' })
      .optional(),
    along_mm: numberIn(0, 1e6, 'mm', 'the distance along the side from its first corner').optional(),
    fromOutside_mm: numberIn(0, 1e6, 'mm', 'the distance of the axis from the outside face').optional(),
  },
  { error: (issue) => (issue.code === 'invalid_type' ? `${PLACES}, with an "id"` : undefined) },
);

const input = z
  .strictObject({
    calc: z.literal('mould-view'),
    ...IGNORED_KEYS,
    outline_mm: polygonField,
    drawnFace: face('the face that the drawing shows'),
    faceDown: face('the face that lies on the form'),
    turn_deg: z.literal([0, 90, 180, 270], {
      error: 'expected 0, 90, 180 or 270, degrees counter-clockwise as seen from above',
    }),
    datum: z.enum(CORNERS, { error: `expected a corner as seen from above, one of ${quoteAll(CORNERS)}` }),
    thickness_mm: numberAbove0(10_000, 'mm', 'the thickness of the panel'),
    inserts: z.array(insert, { error: `expected a list of inserts, each ${PLACES.slice('expected '.length)}` }),
  })
  .superRefine(({ outline_mm, inserts }, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    const fault = findOutlineFault(outline_mm);
    if (fault !== null) {
      refuse(['outline_mm'], describeOutlineFault(fault, 'the panel'));
      return;
    }
    const seen = new Set<string>();
    inserts.forEach((one, i) => {
      if (seen.has(one.id))
        refuse(['inserts', i, 'id'], `"${one.id}" names two inserts, expected a name of its own for each`);
      seen.add(one.id);
      const isOnEdge = EDGE_KEYS.some((key) => one[key] !== undefined);
      const other = (isOnEdge ? FACE_KEYS : EDGE_KEYS).find((key) => one[key] !== undefined);
      if (other !== undefined) {
        refuse(['inserts', i, other], `stands beside keys of a place on an edge, ${PLACES}, not both`);
        return;
      }
      const missing = (isOnEdge ? EDGE_KEYS : FACE_KEYS).find((key) => one[key] === undefined);
      if (missing !== undefined) {
        refuse(['inserts', i, missing], `is missing, ${PLACES}`);
        return;
      }
      if (one.x_mm !== undefined && !isWithinOutline(outline_mm, [one.x_mm, one.y_mm!], ON_EDGE))
        refuse(
          ['inserts', i],
          `insert "${one.id}" at (${one.x_mm}, ${one.y_mm}) mm lies outside the outline, expected a place on the panel`,
        );
    });
  });

const pair = z.tuple([z.number(), z.number()]);
const placed = z.strictObject({
  id: z.string(),
  x_mm: z.number(),
  y_mm: z.number(),
  level: z.enum(['on the form', 'at the top', 'edge']),
  aboveForm_mm: z.number().optional(),
});
const output = z.strictObject({ outline_mm: z.array(pair), inserts: z.array(placed), notes: z.array(z.string()) });

type Input = z.infer<typeof input>;

/** The panel as it lies in the form, as the contract gives it. The schema has seen to it that each insert has one whole place. */
function run(given: Input): z.infer<typeof output> {
  const { outline_mm, drawnFace, faceDown, turn_deg, datum } = given;
  const view = mouldView({ outline: outline_mm, drawnFace, faceDown, turn: turn_deg, datum });
  const notes = [
    view.isMirrored
      ? `the drawn face (${drawnFace}) lies down: seen from above the drawing is mirrored`
      : `the drawn face (${drawnFace}) is up: seen from above the drawing keeps its hand`,
  ];
  if (view.isHandReversed)
    notes.push(
      `from the datum corner ${datum} x and y are left-handed as seen from above: do not draw them as x right, y up`,
    );
  return {
    outline_mm: view.outline.map(([x, y]) => [x, y]),
    inserts: given.inserts.map((one, i) => place(view, one, i, given.thickness_mm)),
    notes,
  };
}

function place(
  view: MouldView,
  one: Input['inserts'][number],
  index: number,
  thickness: number,
): z.infer<typeof placed> {
  const { id } = one;
  if (one.edge === undefined) {
    const [x, y] = view.toForm([one.x_mm!, one.y_mm!]);
    return { id, x_mm: x, y_mm: y, level: levelOf(view, one.face!) };
  }
  try {
    const at = placeOnEdge(view, { edge: one.edge, along: one.along_mm!, fromOutside: one.fromOutside_mm! }, thickness);
    return { id, x_mm: at.form[0], y_mm: at.form[1], level: 'edge', aboveForm_mm: at.aboveForm };
  } catch (error) {
    if (error instanceof FormError)
      throw new CalcError(`inserts[${index}].${error.about === 'edge' ? 'edge' : `${error.about}_mm`}`, error.message);
    throw error;
  }
}

/** The calculation `mould-view` of the contract. */
export const mouldViewCalc = {
  name: 'mould-view',
  gives: 'a panel and its inserts as they lie in the form, seen from above, from a datum corner',
  input,
  output,
  run,
} as const;
