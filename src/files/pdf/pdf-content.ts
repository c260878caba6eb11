import { findRise, findStart } from '../../drawing/boxes.ts';
import type { Drawing, Fill, Mark, TextMark, Weight } from '../../drawing/drawing.ts';
import { hatchArea } from '../../drawing/hatch.ts';
import { FILL_GREYS, HATCH_SPACING, PENS, type PenName, TONES } from '../../drawing/pens.ts';
import { circleRing, expandSymbols, findSweep } from '../../drawing/place.ts';
import { composeText, measureText } from '../../drawing/text-size.ts';
import { writeCoordinate } from '../../drawing/write-number.ts';

type Pair = readonly [number, number];

/** How a sign of a weight is written in the file: the number of its glyph, four hexadecimal digits. */
export type GlyphCode = (sign: string, weight: Weight) => string;

/** Names of the two fonts within a page. */
export type FontNames = Readonly<Record<Weight, string>>;

const number = (value: number) => writeCoordinate(value, 3);
const pair = ([x, y]: Pair) => `${number(x)} ${number(y)}`;

/** Distance of a Bézier curve's inner points from its ends, for an arc of `sweep` of radius 1. */
function findHandle(sweep: number): number {
  return (4 / 3) * Math.tan(sweep / 4);
}

function writePath(points: readonly Pair[], isClosed: boolean): string {
  return `${points.map((point, k) => `${pair(point)} ${k === 0 ? 'm' : 'l'}`).join(' ')}${isClosed ? ' h' : ''}`;
}

/** An arc as Bézier curves of a quarter turn at most: less than 0.03 % of the radius off. */
function writeArc([x, y]: Pair, radius: number, from: number, sweep: number): string {
  const pieces = Math.max(1, Math.ceil(sweep / (Math.PI / 2) - 1e-9));
  const step = sweep / pieces;
  const handle = findHandle(step) * radius;
  const end = (angle: number): Pair => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  const text = [`${pair(end(from))} m`];
  for (let k = 0; k < pieces; k++) {
    const [a, b] = [from + k * step, from + (k + 1) * step];
    const [p, q] = [end(a), end(b)];
    const first: Pair = [p[0] - handle * Math.sin(a), p[1] + handle * Math.cos(a)];
    const second: Pair = [q[0] + handle * Math.sin(b), q[1] - handle * Math.cos(b)];
    text.push(`${pair(first)} ${pair(second)} ${pair(q)} c`);
  }
  return text.join(' ');
}

/**
 * The marks of a drawing as operators of a PDF page whose unit is a mm, y up (ISO 32000-1, 8.4, 8.5 and 9.4; recalled).
 * Throws DrawingError when a text cannot be drawn, RangeError when a coordinate is not finite.
 */
export function writePdfContent(drawing: Drawing, fonts: FontNames, glyphCode: GlyphCode): string {
  const lines: string[] = [];
  let pen: PenName | null = null;
  let grey: number | null = null;

  /** Sets what differs from what is set. */
  const takePen = (name: PenName) => {
    if (name === pen) return;
    pen = name;
    const { width, dash, tone } = PENS[name];
    lines.push(`${number(width)} w [${dash.map(number).join(' ')}] 0 d ${number(TONES[tone])} G`);
  };
  const takeGrey = (value: number) => {
    if (value === grey) return;
    grey = value;
    lines.push(`${number(value)} g`);
  };
  const hatch = (rings: readonly (readonly Pair[])[]) => {
    const pieces = hatchArea(rings, HATCH_SPACING);
    if (pieces.length === 0) return;
    takePen('hair');
    lines.push(`${pieces.map((piece) => writePath(piece, false)).join(' ')} S`);
  };
  /** Fills and draws a closed path. */
  const paint = (path: string, outline: PenName | null, fill: Fill) => {
    const isFilled = fill !== 'none' && fill !== 'hatch';
    if (isFilled) takeGrey(FILL_GREYS[fill]);
    if (outline !== null) takePen(outline);
    if (isFilled || outline !== null) lines.push(`${path} ${isFilled ? (outline === null ? 'f*' : 'B*') : 'S'}`);
  };
  const write = (mark: Mark): void => {
    switch (mark.kind) {
      case 'line':
        takePen(mark.pen);
        lines.push(`${writePath([mark.from, mark.to], false)} S`);
        return;
      case 'polyline':
        takePen(mark.pen);
        lines.push(`${writePath(mark.points, mark.isClosed)} S`);
        return;
      case 'area':
        if (mark.fill === 'hatch') hatch(mark.rings);
        paint(mark.rings.map((ring) => writePath(ring, true)).join(' '), mark.pen, mark.fill);
        return;
      case 'circle':
        if (mark.fill === 'hatch') hatch([circleRing(mark.at, mark.radius)]);
        paint(`${writeArc(mark.at, mark.radius, 0, 2 * Math.PI)} h`, mark.pen, mark.fill);
        return;
      case 'arc':
        takePen(mark.pen);
        lines.push(`${writeArc(mark.at, mark.radius, mark.from, findSweep(mark))} S`);
        return;
      case 'text':
        if (mark.text === '') return;
        takeGrey(TONES[mark.tone]);
        lines.push(writeText(mark, fonts, glyphCode));
        return;
      case 'symbol':
        expandSymbols([mark]).forEach(write);
    }
  };
  drawing.marks.forEach(write);
  return lines.join('\n');
}

function writeText(mark: TextMark, fonts: FontNames, glyphCode: GlyphCode): string {
  const start = findStart(mark, measureText(mark.text, mark.size, mark.weight));
  const rise = findRise(mark);
  const [c, s] = [Math.cos(mark.turn), Math.sin(mark.turn)];
  const x = mark.at[0] + c * start - s * rise;
  const y = mark.at[1] + s * start + c * rise;
  const turn = [c, s, -s, c].map((value) => writeCoordinate(value, 6)).join(' ');
  const codes = Array.from(composeText(mark.text), (sign) => glyphCode(sign, mark.weight)).join('');
  return `BT /${fonts[mark.weight]} ${number(mark.size)} Tf ${turn} ${pair([x, y])} Tm <${codes}> Tj ET`;
}
