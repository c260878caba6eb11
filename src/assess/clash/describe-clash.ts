import type { Point } from '../../engine/geometry/point.ts';
import type { ClashingOther, ClashingPart, ClashRemedy, ReportedClash, StrengthAfter } from './clash-report.ts';

/** A shift above one bar diameter is told to the design engineer: common practice (ACI 318 on placing tolerances, recalled). */
function isBeyondDiameter({ b }: ReportedClash, remedy: ClashRemedy): boolean {
  return (
    (remedy.kind === 'shift bar' || remedy.kind === 'shift layer') &&
    b.kind === 'bar' &&
    remedy.shift_mm > b.diameter_mm
  );
}

/** A cross bar that is to be turned. */
export type Turn = Extract<ClashRemedy, { kind: 'turn cross bar' }>;

/** How places and directions are called: as the drawing has them, or as the form does. */
export interface ClashWords {
  readonly insert: (id: string) => string;
  /** Something that is no insert. */
  readonly item: (id: string) => string;
  /** A direction on the drawn face, behind "toward". */
  readonly toward: (direction: Point) => string;
  /** A side of the outline, from corner n to the next, from 0. */
  readonly edge: (edge: number) => string;
  /** What a turned cross bar is turned to, behind its name. */
  readonly turned: (turn: Turn) => string;
  /** Steps of a move along the coordinates of a face of the drawing. */
  readonly steps: (face: 'outside' | 'inside' | 'edge', dx: number, dy: number) => readonly string[];
}

/** As the drawing has them. */
export const drawingWords: ClashWords = {
  insert: (id) => `insert ${id}`,
  item: (id) => `item ${id}`,
  toward: nameDirection,
  edge: (edge) => `edge ${edge}`,
  turned: ({ face, turn_deg, direction_deg }) => {
    const [from, toward] = face === 'edge' ? ['the edge', 'the inside face'] : ['x', 'y'];
    return `by ${turn_deg}°, to ${showTenth(direction_deg)}° from ${from} toward ${toward}`;
  },
  steps: (face, dx, dy) => {
    const [x, y] =
      face === 'edge'
        ? ['along the edge', 'away from the outside face']
        : ['in x of the drawing', 'in y of the drawing'];
    return [...(dx === 0 ? [] : [`${showSigned(dx)} mm ${x}`]), ...(dy === 0 ? [] : [`${showSigned(dy)} mm ${y}`])];
  },
};

/** A clash in sentences: what is too near to what, the best way out, and what that does to strength. */
export function describeClash(clash: ReportedClash, words: ClashWords = drawingWords): string {
  const { b, remedy, strengthAfter } = clash;
  const where = tellMeeting(clash, words);
  const fixed = describeFixed(b);
  if (remedy === null) return `${where}. ${fixed}The design engineer decides.`;
  const notice = isBeyondDiameter(clash, remedy) ? ' That is more than its diameter: tell the design engineer.' : '';
  return [`${where}. ${fixed}${describeRemedy(remedy, words)}.${notice}`, ...strengthAfter.map(describeStrength)].join(
    ' ',
  );
}

/** What is too near to what, without a full stop. */
export function tellMeeting(
  { a, b, clearance_mm, needed_mm }: Pick<ReportedClash, 'a' | 'b' | 'clearance_mm' | 'needed_mm'>,
  words: ClashWords,
): string {
  return clearance_mm <= 0
    ? `${namePart(a, words)} ${b.kind === 'edge' || b.kind === 'opening' ? 'comes out at' : 'meets'} ${nameOther(b, words)}`
    : `${namePart(a, words)} is ${showTenth(clearance_mm)} mm from ${nameOther(b, words)}, needed are ${showTenth(needed_mm)} mm`;
}

function describeFixed(b: ClashingOther): string {
  if (b.kind !== 'bar' || b.bars === 'bars') return '';
  return b.bars === 'mesh' ? 'A mesh is one piece and is not shifted. ' : 'A strand is stressed and is never shifted. ';
}

function namePart({ id, part }: ClashingPart, { insert, item }: ClashWords): string {
  return part === 'item' ? item(id) : `the ${part} of ${insert(id)}`;
}

function nameOther(b: ClashingOther, words: ClashWords): string {
  switch (b.kind) {
    case 'item':
      return namePart(b, words);
    case 'edge':
      return words.edge(b.edge);
    case 'opening':
      return `opening ${b.opening + 1}`;
    case 'bar': {
      const kind = { bars: 'bar', mesh: 'mesh bar', strand: 'strand' }[b.bars];
      return `${kind} ${b.bar} of layer ${b.layer} (${b.diameter_mm} mm, ${b.face})`;
    }
  }
}

/** A remedy as an instruction, without a full stop. */
function describeRemedy(remedy: ClashRemedy, words: ClashWords): string {
  switch (remedy.kind) {
    case 'shift bar':
    case 'shift layer': {
      const what =
        remedy.bar === null ? `all bars of layer ${remedy.layer}` : `bar ${remedy.bar} of layer ${remedy.layer}`;
      const other = remedy.otherWay_mm === null ? '' : `, or by ${remedy.otherWay_mm} mm the other way`;
      return `Shift ${what} by ${remedy.shift_mm} mm toward ${words.toward(remedy.toward)}${other}`;
    }
    case 'turn cross bar':
      return `Turn the cross bar of ${words.insert(remedy.id)} ${words.turned(remedy)}`;
    case 'move': {
      const steps = words.steps(remedy.face, remedy.dx_mm, remedy.dy_mm);
      return `Move ${words.insert(remedy.id)} by ${steps.join(' and ')}, within its tolerance of ±${showTenth(remedy.tolerance_mm)} mm`;
    }
  }
}

function describeStrength({ connection, before, after }: StrengthAfter): string {
  const show = ({ state, ratio }: StrengthAfter['before']) =>
    ratio === null || !Number.isFinite(ratio) ? state : `${state} at ${(100 * ratio).toFixed(1)} %`;
  return `Connection ${connection} with it there: ${show(after)} (now: ${show(before)}).`;
}

/** Along an axis by its name, else by its angle from x towards y. */
function nameDirection([x, y]: Point): string {
  const angle = (Math.round((Math.atan2(y, x) * 1800) / Math.PI) / 10 + 360) % 360;
  const axis = { 0: 'greater x', 90: 'greater y', 180: 'smaller x', 270: 'smaller y' }[angle];
  return axis === undefined ? `${showTenth(angle)}° of the drawing` : `${axis} of the drawing`;
}

function showSigned(value: number): string {
  return value > 0 ? `+${value}` : `−${-value}`;
}

function showTenth(value: number): string {
  return String(Math.round(value * 10) / 10);
}
