import type { FormPlace, SetOutItem } from '../assess/set-out/set-out.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { Mark, SymbolMark } from './drawing.ts';
import { drawTextLines } from './marks.ts';
import { describeFace } from './sheets/words.ts';
import { PLACES, ROLES, type Role, shapeOf } from './symbol-shapes.ts';
import { CAP_HEIGHT, LINE_STEP, wrapText } from './text-size.ts';

/** How a symbol is called in a DXF file: role and face. */
function nameSymbol(role: Role, place: FormPlace): string {
  return `INSERT-${role}-${place.replace(' ', '-')}`.toUpperCase();
}

function listAttributes(item: SetOutItem): SymbolMark['attributes'] {
  return [
    { tag: 'NUMBER', text: String(item.number) },
    { tag: 'TYPE', text: item.item?.id ?? item.castIn.description ?? item.castIn.role },
    { tag: 'FACE', text: describeFace(item) },
    { tag: 'CONNECTION', text: item.connection ?? '-' },
    { tag: 'ROLE', text: item.castIn.role },
  ];
}

/**
 * The symbol of an insert, seen from above. Its shape is that of the role, its fill that of the face; on an edge the solid half looks into the concrete.
 *
 * @param radius of the symbol, in the units of the drawing that it lies in [mm]
 */
export function insertSymbol(item: SetOutItem, at: Point, radius: number): SymbolMark {
  return {
    kind: 'symbol',
    layer: 'insert',
    name: nameSymbol(item.castIn.role, item.place),
    at,
    turn: item.inward === null ? 0 : Math.atan2(item.inward[1], item.inward[0]),
    scale: radius,
    shape: shapeOf(item.castIn.role, item.place),
    attributes: listAttributes(item),
  };
}

/** Who answers for what is not a fixing. */
const ROLE_WORDS: Readonly<Record<Role, string>> = {
  fixing: 'fixing insert',
  brace: 'brace insert – not a fixing, not computed here',
  lifting: 'LIFTING – by others, never computed here, nothing else hangs on it',
  tie: 'tie – by others',
  duct: 'duct – by others',
  plate: 'plate – by others',
  other: 'other cast-in item – by others',
};

const PLACE_WORDS: Readonly<Record<FormPlace, string>> = {
  'mould face': 'mould face (on the form)',
  'trowelled face': 'trowelled face (open side)',
  edge: 'edge (solid half into the concrete)',
};

/** Radius of the symbols of a legend, and the column that they stand in [mm]. */
const LEGEND_RADIUS = 1.7;
const LEGEND_COLUMN = 8;

/** From one row of a legend to the next, beside its text [mm]. */
const LEGEND_GAP = 2;

/**
 * The symbols that occur among items, in words; marks hang below y = 0.
 *
 * @param width of symbols and words [mm]
 * @param size of the words [mm]
 */
export function drawLegend(
  items: readonly Pick<SetOutItem, 'castIn' | 'place'>[],
  width: number,
  size: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const marks: Mark[] = [];
  let down = LEGEND_GAP;
  for (const role of ROLES)
    for (const place of PLACES) {
      if (!items.some((item) => item.castIn.role === role && item.place === place)) continue;
      const lines = wrapText(`${ROLE_WORDS[role]}: ${PLACE_WORDS[place]}`, size, 'plain', width - LEGEND_COLUMN);
      const at: Point = [LEGEND_COLUMN / 2, -down - (CAP_HEIGHT * size) / 2];
      marks.push({
        kind: 'symbol',
        layer: 'text',
        name: nameSymbol(role, place),
        at,
        turn: 0,
        scale: LEGEND_RADIUS,
        shape: shapeOf(role, place),
        attributes: [],
      });
      marks.push(...drawTextLines([LEGEND_COLUMN, -down], lines, size, { baseline: 'top' }));
      down += lines.length * size * LINE_STEP + LEGEND_GAP;
    }
  return { marks, height: down };
}
