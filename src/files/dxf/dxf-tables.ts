import type { LayerName, LayerNames } from '../../drawing/layers.ts';
import { PENS, type PenName } from '../../drawing/pens.ts';
import { checkDxfName, type DxfGroups } from './dxf-groups.ts';

/** Handles of what other parts of a file point to. */
export interface DxfHandles {
  readonly modelSpace: string;
  readonly paperSpace: string;
}

/** Names of dashed lines in the file; a full line is "Continuous". */
export const LINE_TYPES: Readonly<Partial<Record<PenName, string>>> = {
  dashed: 'ONEPOUR-DASHED',
  'dash-dot': 'ONEPOUR-DASH-DOT',
};

/** Names of text styles. */
export const TEXT_STYLES = { plain: 'ONEPOUR-PLAIN', bold: 'ONEPOUR-BOLD' } as const;

/** Extents of what is drawn. */
export interface Extents {
  readonly least: readonly [number, number];
  readonly most: readonly [number, number];
}

export function addHeader(file: DxfGroups, handSeed: string, { least, most }: Extents): void {
  file.add(0, 'SECTION', 2, 'HEADER');
  file.add(9, '$ACADVER', 1, 'AC1015', 9, '$DWGCODEPAGE', 3, 'ANSI_1252');
  file.add(9, '$INSBASE', 10, 0, 20, 0, 30, 0);
  file.add(9, '$EXTMIN', 10, least[0], 20, least[1], 30, 0);
  file.add(9, '$EXTMAX', 10, most[0], 20, most[1], 30, 0);
  file.add(9, '$LIMMIN', 10, least[0], 20, least[1], 9, '$LIMMAX', 10, most[0], 20, most[1]);
  file.add(9, '$LTSCALE', 40, 1, 9, '$LUNITS', 70, 2, 9, '$LUPREC', 70, 1);
  // Metric, millimetres, widths of lines shown.
  file.add(9, '$MEASUREMENT', 70, 1, 9, '$INSUNITS', 70, 4, 9, '$LWDISPLAY', 290, 1);
  file.add(9, '$HANDSEED', 5, handSeed);
  file.add(0, 'ENDSEC', 0, 'SECTION', 2, 'CLASSES', 0, 'ENDSEC');
}

/** Begins a table of `count` records; gives its handle, which its records name as their owner. */
function beginTable(file: DxfGroups, name: string, count: number): string {
  const handle = file.takeHandle();
  file.add(0, 'TABLE', 2, name, 5, handle, 330, '0', 100, 'AcDbSymbolTable', 70, count);
  if (name === 'DIMSTYLE') file.add(100, 'AcDbDimStyleTable', 71, 0);
  return handle;
}

/** Begins a record of a table; gives its handle. */
function beginRecord(file: DxfGroups, type: string, table: string, subclass: string, name: string, flags = 0): string {
  const handle = file.takeHandle();
  file.add(0, type, type === 'DIMSTYLE' ? 105 : 5, handle, 330, table);
  file.add(100, 'AcDbSymbolTableRecord', 100, subclass, 2, name, 70, flags);
  return handle;
}

function addViewport(file: DxfGroups, { least, most }: Extents): void {
  const table = beginTable(file, 'VPORT', 1);
  const handle = file.takeHandle();
  const [width, height] = [most[0] - least[0], most[1] - least[1]];
  file.add(0, 'VPORT', 5, handle, 330, table, 100, 'AcDbSymbolTableRecord', 100, 'AcDbViewportTableRecord');
  file.add(2, '*ACTIVE', 70, 0, 10, 0, 20, 0, 11, 1, 21, 1, 12, (least[0] + most[0]) / 2, 22, (least[1] + most[1]) / 2);
  file.add(13, 0, 23, 0, 14, 10, 24, 10, 15, 10, 25, 10, 16, 0, 26, 0, 36, 1, 17, 0, 27, 0, 37, 0);
  file.add(
    40,
    Math.max(height, 1) * 1.05,
    41,
    Math.max(width, 1) / Math.max(height, 1),
    42,
    50,
    43,
    0,
    44,
    0,
    50,
    0,
    51,
    0,
  );
  file.add(71, 0, 72, 1000, 73, 1, 74, 3, 75, 0, 76, 0, 77, 0, 78, 0, 0, 'ENDTAB');
}

/** Lengths of dashes are of paper: `scale` mm of the drawing to one of paper. */
function addLineTypes(file: DxfGroups, scale: number): void {
  const dashed = (Object.keys(LINE_TYPES) as PenName[]).map((pen) => ({ pen, name: LINE_TYPES[pen]! }));
  const table = beginTable(file, 'LTYPE', 3 + dashed.length);
  const add = (name: string, text: string, dash: readonly number[]) => {
    beginRecord(file, 'LTYPE', table, 'AcDbLinetypeTableRecord', name);
    file.add(3, text, 72, 65, 73, dash.length, 40, dash.reduce((sum, length) => sum + length, 0) * scale);
    for (const [k, length] of dash.entries()) file.add(49, (k % 2 === 0 ? length : -length) * scale, 74, 0);
  };
  add('ByBlock', '', []);
  add('ByLayer', '', []);
  add('Continuous', 'Full line', []);
  for (const { pen, name } of dashed) add(name, pen, PENS[pen].dash);
  file.add(0, 'ENDTAB');
}

function addLayers(file: DxfGroups, names: LayerNames): void {
  const keys = Object.keys(names) as LayerName[];
  const table = beginTable(file, 'LAYER', keys.length + 1);
  // Colour 7 is black on white and white on black.
  for (const name of ['0', ...keys.map((key) => checkDxfName('the layer', names[key]))]) {
    beginRecord(file, 'LAYER', table, 'AcDbLayerTableRecord', name);
    file.add(62, 7, 6, 'Continuous', 370, -3);
  }
  file.add(0, 'ENDTAB');
}

function addStyles(file: DxfGroups): void {
  const table = beginTable(file, 'STYLE', 3);
  const add = (name: string, font: string) => {
    beginRecord(file, 'STYLE', table, 'AcDbTextStyleTableRecord', name);
    file.add(40, 0, 41, 1, 50, 0, 71, 0, 42, 2.5, 3, font, 4, '');
  };
  add('Standard', 'DejaVuSansCondensed.ttf');
  add(TEXT_STYLES.plain, 'DejaVuSansCondensed.ttf');
  add(TEXT_STYLES.bold, 'DejaVuSansCondensed-Bold.ttf');
  file.add(0, 'ENDTAB');
}

/** The tables that a reader of AC1015 expects; gives what blocks and entities point to. `blocks` are the names of own blocks. */
export function addTables(
  file: DxfGroups,
  {
    scale,
    layers,
    extents,
    blocks,
  }: {
    readonly scale: number;
    readonly layers: LayerNames;
    readonly extents: Extents;
    readonly blocks: readonly string[];
  },
): DxfHandles & { readonly blockRecords: ReadonlyMap<string, string> } {
  file.add(0, 'SECTION', 2, 'TABLES');
  addViewport(file, extents);
  addLineTypes(file, scale);
  addLayers(file, layers);
  addStyles(file);
  for (const name of ['VIEW', 'UCS']) {
    beginTable(file, name, 0);
    file.add(0, 'ENDTAB');
  }
  const applications = beginTable(file, 'APPID', 1);
  beginRecord(file, 'APPID', applications, 'AcDbRegAppTableRecord', 'ACAD');
  file.add(0, 'ENDTAB');
  const dimensions = beginTable(file, 'DIMSTYLE', 1);
  beginRecord(file, 'DIMSTYLE', dimensions, 'AcDbDimStyleTableRecord', 'Standard');
  file.add(0, 'ENDTAB');
  const records = beginTable(file, 'BLOCK_RECORD', 2 + blocks.length);
  const add = (name: string) => {
    const handle = file.takeHandle();
    file.add(0, 'BLOCK_RECORD', 5, handle, 330, records);
    file.add(100, 'AcDbSymbolTableRecord', 100, 'AcDbBlockTableRecord', 2, name);
    return handle;
  };
  const modelSpace = add('*Model_Space');
  const paperSpace = add('*Paper_Space');
  const blockRecords = new Map(blocks.map((name) => [name, add(name)]));
  file.add(0, 'ENDTAB', 0, 'ENDSEC');
  return { modelSpace, paperSpace, blockRecords };
}

/** The least dictionary of objects that a file of this version has. */
export function addObjects(file: DxfGroups): void {
  const [root, groups] = [file.takeHandle(), file.takeHandle()];
  file.add(0, 'SECTION', 2, 'OBJECTS');
  file.add(0, 'DICTIONARY', 5, root, 330, '0', 100, 'AcDbDictionary', 281, 1, 3, 'ACAD_GROUP', 350, groups);
  file.add(0, 'DICTIONARY', 5, groups, 330, root, 100, 'AcDbDictionary', 281, 1);
  file.add(0, 'ENDSEC', 0, 'EOF');
}
