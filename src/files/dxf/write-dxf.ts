import { boxOfMarks } from '../../drawing/boxes.ts';
import type { Drawing, Mark, SymbolMark } from '../../drawing/drawing.ts';
import { DrawingError } from '../../drawing/drawing-error.ts';
import type { LayerNames } from '../../drawing/layers.ts';
import { addAttributeDefinition, addMark, type EntityContext } from './dxf-entities.ts';
import { checkDxfName, DxfGroups } from './dxf-groups.ts';
import { addHeader, addObjects, addTables } from './dxf-tables.ts';

export interface DxfOptions {
  /** mm of the drawing to one mm of paper: 20 where it is to be plotted at 1:20. Texts, dashes and hatching grow by it. */
  readonly scale: number;
  readonly layers: LayerNames;
}

/** Handle 0 means none. */
const FIRST_HANDLE = 1;

/**
 * A drawing as an ASCII DXF file of version AC1015, in mm at 1:1. Symbols are blocks with attributes, inserted where they lie. Same drawing, same
 * text.
 * Throws DrawingError when symbols of one name differ, or a name or text cannot stand in such a file; RangeError when a coordinate is not finite.
 */
export function writeDxf(drawing: Drawing, { scale, layers }: DxfOptions): string {
  const symbols = findSymbols(drawing.marks);
  const box = boxOfMarks(drawing.marks) ?? { x: 0, y: 0, width: drawing.width, height: drawing.height };
  const extents = {
    least: [box.x, box.y],
    most: [box.x + box.width, box.y + box.height],
  } as const;
  const body = new DxfGroups(FIRST_HANDLE);
  const spaces = addTables(body, { scale, layers, extents, blocks: symbols.map(({ name }) => name) });
  body.add(0, 'SECTION', 2, 'BLOCKS');
  const inBlock = (owner: string): EntityContext => ({ file: body, owner, layers, scale });
  addBlock(inBlock(spaces.modelSpace), '*Model_Space', '0', () => {});
  addBlock(inBlock(spaces.paperSpace), '*Paper_Space', '0', () => {});
  for (const symbol of symbols) {
    const context = inBlock(spaces.blockRecords.get(symbol.name)!);
    addBlock(context, symbol.name, layers[symbol.layer], () => {
      for (const mark of symbol.shape) addMark(context, mark);
      for (const { tag } of symbol.attributes) addAttributeDefinition(context, symbol.layer, tag);
    });
  }
  body.add(0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES');
  const inModel = inBlock(spaces.modelSpace);
  for (const mark of drawing.marks) addMark(inModel, mark);
  body.add(0, 'ENDSEC');
  addObjects(body);
  const file = new DxfGroups(0);
  file.add(999, 'Onepour, mm, 1:1');
  addHeader(file, body.nextHandle, extents);
  file.append(body);
  return file.toText();
}

function addBlock({ file, owner }: EntityContext, name: string, layer: string, addContent: () => void): void {
  const begin = file.takeHandle();
  file.add(0, 'BLOCK', 5, begin, 330, owner, 100, 'AcDbEntity', 8, layer, 100, 'AcDbBlockBegin', 2, name, 70, 0);
  file.add(10, 0, 20, 0, 30, 0, 3, name, 1, '');
  addContent();
  file.add(0, 'ENDBLK', 5, file.takeHandle(), 330, owner, 100, 'AcDbEntity', 8, layer, 100, 'AcDbBlockEnd');
}

/** One symbol of each name, those inside others first; throws where two of a name are not the same. */
function findSymbols(marks: readonly Mark[]): readonly SymbolMark[] {
  const found = new Map<string, { readonly symbol: SymbolMark; readonly key: string }>();
  const visit = (list: readonly Mark[]): void => {
    for (const mark of list) {
      if (mark.kind !== 'symbol') continue;
      visit(mark.shape);
      const key = JSON.stringify([mark.shape, mark.attributes.map(({ tag }) => tag)]);
      const known = found.get(mark.name);
      if (known !== undefined && known.key !== key)
        throw new DrawingError(
          `two symbols are named "${mark.name}" but differ in shape or attributes; expected a name for each`,
        );
      if (known !== undefined) continue;
      checkDxfName('the symbol', mark.name);
      for (const { tag } of mark.attributes) checkTag(mark.name, tag);
      found.set(mark.name, { symbol: mark, key });
    }
  };
  visit(marks);
  return [...found.values()].map(({ symbol }) => symbol);
}

function checkTag(symbol: string, tag: string): void {
  if (!/^[A-Z0-9_-]+$/.test(tag))
    throw new DrawingError(
      `the symbol "${symbol}" has an attribute "${tag}"; expected capital letters A to Z, digits, "-" and "_"`,
    );
}
