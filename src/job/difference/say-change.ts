import { showValue } from '../fault.ts';
import { isRecord } from '../json-record.ts';
import type { ValueChange } from './value-changes.ts';

/** Units as keys of documents end in them, and as they are written. */
const UNITS: Readonly<Record<string, string>> = {
  mm: ' mm',
  mm2: ' mm²',
  um: ' µm',
  deg: '°',
  percent: ' %',
  days: ' days',
  d: ' bolt diameters',
  kN: ' kN',
  kNm: ' kNm',
  Nm: ' Nm',
  MPa: ' MPa',
};

/** Entries of lists, which have a number in place of a name. */
const ENTRIES: Readonly<Record<string, string>> = {
  ages: 'age',
  attachment_mm: 'corner of what is welded on',
  bars: 'bars',
  boltFinishes: 'finish of bolts',
  chairs: 'chair',
  combinations: 'combination',
  contacts: 'contact',
  edges: 'side',
  hairpins: 'hairpin',
  hangers: 'hanger bar',
  holes: 'hole',
  inserts: 'insert',
  layers: 'layer',
  openings_mm: 'opening',
  outline_mm: 'corner',
  parts: 'part',
  pieces: 'piece',
  ratedLoads: 'rated load',
  remarks: 'remark',
  statements: 'statement',
  tested: 'test',
  uses: 'use',
  zones: 'zone',
};

/** Keys whose own words are not what a person calls them. Empty: what stands around it says it. */
const NAMES: Readonly<Record<string, string>> = {
  acceptance: 'limits of acceptance by QA',
  actions: '',
  at_mm: 'at',
  aim_mm: 'aimed at',
  along_mm: 'along the bed',
  atLeast: 'at least',
  attachment_mm: 'outline of what is welded on',
  behindFoot_mm: 'behind the foot',
  behindOutside_mm: 'behind the outside face',
  belowFace: 'below the face',
  castIns: 'cast-in items',
  criticalEdge_mm: 'critical edge distance',
  crossHole: 'cross hole',
  fixture: '',
  handedOf: 'handed partner',
  id: 'number',
  item: 'type',
  fromFoot_mm: 'distance from the foot',
  boreThere_mm: 'bore at it',
  isFilled: 'filled with mortar',
  isFullHead: 'full round head',
  isHeldAgainstTurning: 'held against turning',
  leadTime_days: 'lead time',
  most_mm: 'at most',
  origin_mm: 'place',
  outline_mm: 'outline',
  openings_mm: 'openings',
  pieces: '',
  positionBox: 'box of the position zone',
  positionZones: 'position zones in place of the tolerance',
  position_mm: 'place',
  railA: 'rail A',
  railB: 'rail B',
  strength28_MPa: 'strength at 28 days',
  strengthAtStrip_MPa: 'strength before lifting out',
  through_mm: 'passes through',
  turnRound_days: 'days until it can be used again',
};

const UNIT = new RegExp(`_(${Object.keys(UNITS).join('|')})$`);

/** `screedDeflection_mm` is said as `screed deflection`; a capital that stands alone (N, Vx) stays. */
function nameKey(key: string): string {
  return (
    NAMES[key] ??
    key.replace(UNIT, '').replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
  );
}

/** After how many steps into a list of points, or a list of outlines, there is a coordinate. */
const DEPTHS: Readonly<Record<string, number>> = {
  at_mm: 1,
  origin_mm: 1,
  through_mm: 1,
  outline_mm: 2,
  attachment_mm: 2,
  openings_mm: 3,
};

/** An entry of a list: of points, of outlines, of anything else. */
function nameEntryAt(path: ValueChange['path'], at: number, step: number): string {
  const from = path.findLastIndex((before, k) => k < at && typeof before === 'string');
  const key = String(path[from] ?? '');
  const depth = at - from;
  if (depth === DEPTHS[key]) return step === 0 ? 'x' : 'y';
  return `${depth > 1 ? 'corner' : (ENTRIES[key] ?? 'entry')} ${step + 1}`;
}

/**
 * Where in a document a value stands, for people: `T12, P02 no. 1, along the bed`, `corner 4, y`.
 *
 * @param isNamed the first step is a name that somebody gave, not a key
 */
export function sayPath(path: ValueChange['path'], isNamed = false): string {
  const words = path.map((step, k) => {
    const [before, next] = [path[k - 1], path[k + 1]];
    if (typeof step === 'number') return nameEntryAt(path, k, step);
    if ((k === 0 && isNamed) || before === 'pieces') return step;
    if (before === 'beds') return `bed ${step}`;
    // The words of an entry hold those of its list.
    const isList = typeof next === 'number' ? ENTRIES[step] !== undefined : next !== undefined && step === 'beds';
    return isList ? '' : nameKey(step);
  });
  return words.filter((word) => word !== '').join(', ');
}

/** The unit that the nearest key gives its numbers, as it follows one; empty: none. */
function unitOf(path: ValueChange['path']): string {
  const key = [...path].reverse().find((step) => typeof step === 'string');
  return UNITS[UNIT.exec(String(key))?.[1] ?? ''] ?? '';
}

/** Digits that somebody may have typed; what comes behind is of computing. */
const DIGITS = 9;

/** A value in a sentence: texts without quotes, nothing as a word; a whole record only as given. */
export function sayValue(value: unknown): string {
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(Number(value.toPrecision(DIGITS)));
  if (typeof value === 'object') return 'given';
  return typeof value === 'string' ? value : showValue(value);
}

/** What an entry of a list is called by people; empty: nothing. */
function nameEntry(value: unknown): string {
  const name = isRecord(value) ? (value.name ?? value.id ?? value.kind) : undefined;
  return typeof name === 'string' ? `: ${name}` : '';
}

/** A value with its unit, and the one before: `8000 mm (was 7000)`. */
export function sayValues({ path, before, after }: ValueChange): string {
  if (before === undefined && isRecord(after)) return `new${nameEntry(after)}`;
  if (after === undefined && isRecord(before)) return `removed${nameEntry(before)}`;
  const unit = unitOf(path);
  const isNumber = typeof after === 'number';
  const was = typeof before === 'number' && !isNumber ? unit : '';
  return `${sayValue(after)}${isNumber ? unit : ''} (was ${sayValue(before)}${was})`;
}

/** One change in words: where, the value after, the value before. */
export function sayChange(change: ValueChange, isNamed = false): string {
  return [sayPath(change.path, isNamed), sayValues(change)].filter((word) => word !== '').join(' ');
}
