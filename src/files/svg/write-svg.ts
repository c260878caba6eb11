import { findRise } from '../../drawing/boxes.ts';
import type { Drawing, Fill, Mark, TextMark } from '../../drawing/drawing.ts';
import { hatchArea } from '../../drawing/hatch.ts';
import { FILL_GREYS, HATCH_SPACING, PENS, type PenName, TONES } from '../../drawing/pens.ts';
import { circleRing, expandSymbols, findSweep } from '../../drawing/place.ts';
import { composeText, measureText } from '../../drawing/text-size.ts';
import { writeCoordinate } from '../../drawing/write-number.ts';

const FONT = "'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif";

/** Coordinates have a micrometre of paper. */
const number = (value: number) => writeCoordinate(value, 3);

/**
 * A drawing as an SVG file, in mm of paper. Same drawing, same text.
 * Throws DrawingError when a text cannot be drawn, RangeError when a coordinate is not finite.
 *
 * @param title what it shows, for readers aloud
 */
export function writeSvg(drawing: Drawing, title: string): string {
  const size = `width="${number(drawing.width)}mm" height="${number(drawing.height)}mm"`;
  const view = `viewBox="0 0 ${number(drawing.width)} ${number(drawing.height)}"`;
  const lines = expandSymbols(drawing.marks).flatMap((mark) => writeMark(mark, drawing.height));
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view} role="img">`,
    `<title>${escapeText(title)}</title>`,
    `<rect width="100%" height="100%" fill="white"/>`,
    `<g fill="none" stroke-linecap="butt" stroke-linejoin="miter" font-family="${FONT}" xml:space="preserve">`,
    ...lines,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

/** Text as XML holds it; signs that XML does not allow at all never get here, since the font has none of them. */
function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** A grey from 0 black to 1 white. */
function writeGrey(grey: number): string {
  const hex = Math.round(grey * 255)
    .toString(16)
    .padStart(2, '0');
  return `#${hex}${hex}${hex}`;
}

function writePen(name: PenName | null): string {
  if (name === null) return '';
  const { width, dash, tone } = PENS[name];
  const dashes = dash.length === 0 ? '' : ` stroke-dasharray="${dash.map(number).join(' ')}"`;
  return ` stroke="${writeGrey(TONES[tone])}" stroke-width="${number(width)}"${dashes}`;
}

function writeFill(fill: Fill): string {
  return fill === 'none' || fill === 'hatch' ? '' : ` fill="${writeGrey(FILL_GREYS[fill])}"`;
}

type Pair = readonly [number, number];

/** SVG has y downward: heights are measured from the top of the sheet. */
function writeMark(mark: Mark, top: number): string[] {
  const point = ([x, y]: Pair) => `${number(x)} ${number(top - y)}`;
  const path = (points: readonly Pair[], isClosed: boolean) => `M${points.map(point).join('L')}${isClosed ? 'Z' : ''}`;
  const hatching = (rings: readonly (readonly Pair[])[], layer: string) => {
    const pieces = hatchArea(rings, HATCH_SPACING).map((piece) => path(piece, false));
    return pieces.length === 0 ? [] : [`<path class="${layer}" d="${pieces.join('')}"${writePen('hair')}/>`];
  };
  switch (mark.kind) {
    case 'line':
      return [`<path class="${mark.layer}" d="${path([mark.from, mark.to], false)}"${writePen(mark.pen)}/>`];
    case 'polyline':
      return [`<path class="${mark.layer}" d="${path(mark.points, mark.isClosed)}"${writePen(mark.pen)}/>`];
    case 'area': {
      const d = mark.rings.map((ring) => path(ring, true)).join('');
      const own = `<path class="${mark.layer}" d="${d}" fill-rule="evenodd"${writeFill(mark.fill)}${writePen(mark.pen)}/>`;
      return mark.fill === 'hatch' ? [...hatching(mark.rings, mark.layer), own] : [own];
    }
    case 'circle': {
      const [x, y] = mark.at;
      const place = `cx="${number(x)}" cy="${number(top - y)}" r="${number(mark.radius)}"`;
      const own = `<circle class="${mark.layer}" ${place}${writeFill(mark.fill)}${writePen(mark.pen)}/>`;
      return mark.fill === 'hatch' ? [...hatching([circleRing(mark.at, mark.radius)], mark.layer), own] : [own];
    }
    case 'arc': {
      const end = (angle: number): Pair => [
        mark.at[0] + mark.radius * Math.cos(angle),
        mark.at[1] + mark.radius * Math.sin(angle),
      ];
      const isLong = findSweep(mark) > Math.PI ? 1 : 0;
      const radius = number(mark.radius);
      const d = `M${point(end(mark.from))}A${radius} ${radius} 0 ${isLong} 0 ${point(end(mark.to))}`;
      return [`<path class="${mark.layer}" d="${d}"${writePen(mark.pen)}/>`];
    }
    case 'text':
      return [writeText(mark, point)];
    case 'symbol':
      return expandSymbols([mark]).flatMap((inner) => writeMark(inner, top));
  }
}

function writeText(mark: TextMark, point: (pair: Pair) => string): string {
  const rise = findRise(mark);
  const place: Pair = [mark.at[0] - rise * Math.sin(mark.turn), mark.at[1] + rise * Math.cos(mark.turn)];
  const [x, y] = point(place).split(' ');
  const turn = mark.turn === 0 ? '' : ` transform="rotate(${number((-mark.turn * 180) / Math.PI)} ${x} ${y})"`;
  const align = mark.align === 'start' ? '' : ` text-anchor="${mark.align}"`;
  const weight = mark.weight === 'bold' ? ' font-weight="bold"' : '';
  // The length holds the text to its place where a viewer has another font.
  const length = ` textLength="${number(measureText(mark.text, mark.size, mark.weight))}" lengthAdjust="spacingAndGlyphs"`;
  const style = ` font-size="${number(mark.size)}"${weight}${align}${length} fill="${writeGrey(TONES[mark.tone])}"`;
  return `<text class="${mark.layer}" x="${x}" y="${y}"${turn}${style}>${escapeText(composeText(mark.text))}</text>`;
}
