import { findRise, findStart } from '../../drawing/boxes.ts';
import type { Fill, Mark, SymbolMark, TextMark } from '../../drawing/drawing.ts';
import type { LayerName, LayerNames } from '../../drawing/layers.ts';
import { HATCH_SPACING, PENS, type PenName } from '../../drawing/pens.ts';
import { circleRing, findSweep } from '../../drawing/place.ts';
import { CAP_HEIGHT, measureText } from '../../drawing/text-size.ts';
import { type DxfGroups, escapeDxfText } from './dxf-groups.ts';
import { LINE_TYPES, TEXT_STYLES } from './dxf-tables.ts';

/** What entities are written with. */
export interface EntityContext {
  readonly file: DxfGroups;
  /** Handle of the block record of the space or block that they lie in. */
  readonly owner: string;
  readonly layers: LayerNames;
  /** mm of the drawing to one mm of paper. */
  readonly scale: number;
}

type Pair = readonly [number, number];

/** An angle in degrees, 0 to 360. */
function degrees(angle: number): number {
  const turned = ((angle * 180) / Math.PI) % 360;
  return turned < 0 ? turned + 360 : turned;
}

/** Colours of the numbered palette: black where the ground is white, and greys. */
const COLOURS = { black: 7, grey: 9, light: 254 } as const;
const GREY_PEN = 8;

function beginEntity({ file, owner, layers }: EntityContext, type: string, layer: LayerName): void {
  file.add(0, type, 5, file.takeHandle(), 330, owner, 100, 'AcDbEntity', 8, layers[layer]);
}

/** Line type, colour and width of a pen. Widths are in hundredths of a mm. */
function addPen({ file }: EntityContext, name: PenName): void {
  const type = LINE_TYPES[name];
  if (type !== undefined) file.add(6, type);
  if (PENS[name].tone === 'grey') file.add(62, GREY_PEN);
  file.add(370, Math.round(PENS[name].width * 100));
}

function addPolyline(
  context: EntityContext,
  layer: LayerName,
  points: readonly Pair[],
  isClosed: boolean,
  pen: PenName,
) {
  const { file } = context;
  beginEntity(context, 'LWPOLYLINE', layer);
  addPen(context, pen);
  file.add(100, 'AcDbPolyline', 90, points.length, 70, isClosed ? 1 : 0, 43, 0);
  for (const [x, y] of points) file.add(10, x, 20, y);
}

/** A filled or hatched area; white hides nothing in DXF, where what lies on what is not certain. */
function addHatch(context: EntityContext, layer: LayerName, rings: readonly (readonly Pair[])[], fill: Fill): void {
  if (fill === 'none' || fill === 'white') return;
  const { file, scale } = context;
  const isSolid = fill !== 'hatch';
  beginEntity(context, 'HATCH', layer);
  if (isSolid) file.add(62, COLOURS[fill]);
  else file.add(370, Math.round(PENS.hair.width * 100));
  file.add(100, 'AcDbHatch', 10, 0, 20, 0, 30, 0, 210, 0, 220, 0, 230, 1);
  file.add(2, isSolid ? 'SOLID' : 'ONEPOUR-45', 70, isSolid ? 1 : 0, 71, 0, 91, rings.length);
  for (const ring of rings) {
    // A polyline without bulges, closed; no entity behind it.
    file.add(92, 2, 72, 0, 73, 1, 93, ring.length);
    for (const [x, y] of ring) file.add(10, x, 20, y);
    file.add(97, 0);
  }
  // Odd parity: a ring inside a ring is a hole.
  file.add(75, 0, 76, isSolid ? 1 : 2);
  if (!isSolid) {
    const spacing = HATCH_SPACING * scale;
    const off = spacing * Math.SQRT1_2;
    file.add(52, 45, 41, spacing, 77, 0, 78, 1, 53, 45, 43, 0, 44, 0, 45, -off, 46, off, 79, 0);
  }
  file.add(98, 0);
}

function addCircle(context: EntityContext, layer: LayerName, at: Pair, radius: number, pen: PenName): void {
  beginEntity(context, 'CIRCLE', layer);
  addPen(context, pen);
  context.file.add(100, 'AcDbCircle');
  context.file.addPoint(10, at);
  context.file.add(40, radius);
}

const ALIGNS = { start: 0, middle: 1, end: 2 } as const;
const BASELINES = { bottom: 0, middle: 2, top: 3 } as const;

function addText(context: EntityContext, mark: TextMark): void {
  if (mark.text === '') return;
  const { file, scale } = context;
  const size = mark.size * scale;
  const start = findStart(mark, measureText(mark.text, size, mark.weight));
  const rise = findRise({ ...mark, size });
  const [c, s] = [Math.cos(mark.turn), Math.sin(mark.turn)];
  beginEntity(context, 'TEXT', mark.layer);
  if (mark.tone === 'grey') file.add(62, GREY_PEN);
  file.add(100, 'AcDbText');
  file.addPoint(10, [mark.at[0] + c * start - s * rise, mark.at[1] + s * start + c * rise]);
  file.add(40, size * CAP_HEIGHT, 1, escapeDxfText(mark.text), 50, degrees(mark.turn), 7, TEXT_STYLES[mark.weight]);
  const isPlain = mark.align === 'start' && mark.baseline === 'bottom';
  if (!isPlain) {
    file.add(72, ALIGNS[mark.align]);
    file.addPoint(11, mark.at);
  }
  file.add(100, 'AcDbText');
  if (!isPlain) file.add(73, BASELINES[mark.baseline]);
}

/** Height of the texts of attributes, which are data and not shown [mm of paper]. */
const ATTRIBUTE_HEIGHT = 2.5;

function addInsert(context: EntityContext, mark: SymbolMark): void {
  const { file, layers, scale } = context;
  const handle = file.takeHandle();
  const layer = layers[mark.layer];
  file.add(0, 'INSERT', 5, handle, 330, context.owner, 100, 'AcDbEntity', 8, layer, 100, 'AcDbBlockReference');
  if (mark.attributes.length > 0) file.add(66, 1);
  file.add(2, mark.name);
  file.addPoint(10, mark.at);
  file.add(41, mark.scale, 42, mark.scale, 43, mark.scale, 50, degrees(mark.turn));
  for (const { tag, text } of mark.attributes) {
    file.add(0, 'ATTRIB', 5, file.takeHandle(), 330, handle, 100, 'AcDbEntity', 8, layer, 100, 'AcDbText');
    file.addPoint(10, mark.at);
    file.add(40, ATTRIBUTE_HEIGHT * scale, 1, escapeDxfText(text), 7, TEXT_STYLES.plain);
    // Not shown.
    file.add(100, 'AcDbAttribute', 2, tag, 70, 1);
  }
  if (mark.attributes.length > 0) file.add(0, 'SEQEND', 5, file.takeHandle(), 330, handle, 100, 'AcDbEntity', 8, layer);
}

/** The definition of an attribute inside a block. */
export function addAttributeDefinition(context: EntityContext, layer: LayerName, tag: string): void {
  beginEntity(context, 'ATTDEF', layer);
  const { file, scale } = context;
  file.add(100, 'AcDbText', 10, 0, 20, 0, 30, 0, 40, ATTRIBUTE_HEIGHT * scale, 1, '', 7, TEXT_STYLES.plain);
  file.add(100, 'AcDbAttributeDefinition', 3, tag, 2, tag, 70, 1);
}

/** One mark as entities. */
export function addMark(context: EntityContext, mark: Mark): void {
  const { file } = context;
  switch (mark.kind) {
    case 'line':
      beginEntity(context, 'LINE', mark.layer);
      addPen(context, mark.pen);
      file.add(100, 'AcDbLine');
      file.addPoint(10, mark.from);
      file.addPoint(11, mark.to);
      return;
    case 'polyline':
      addPolyline(context, mark.layer, mark.points, mark.isClosed, mark.pen);
      return;
    case 'area':
      addHatch(context, mark.layer, mark.rings, mark.fill);
      if (mark.pen !== null) for (const ring of mark.rings) addPolyline(context, mark.layer, ring, true, mark.pen);
      return;
    case 'circle':
      addHatch(context, mark.layer, [circleRing(mark.at, mark.radius)], mark.fill);
      if (mark.pen !== null) addCircle(context, mark.layer, mark.at, mark.radius, mark.pen);
      return;
    case 'arc':
      beginEntity(context, 'ARC', mark.layer);
      addPen(context, mark.pen);
      file.add(100, 'AcDbCircle');
      file.addPoint(10, mark.at);
      file.add(40, mark.radius, 100, 'AcDbArc', 50, degrees(mark.from), 51, degrees(mark.from + findSweep(mark)));
      return;
    case 'text':
      addText(context, mark);
      return;
    case 'symbol':
      addInsert(context, mark);
  }
}
