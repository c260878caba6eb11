import { findThread, type Thread } from '../../engine/hardware/threads.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { AnswerSettings, CaseField, KnownField, KnownValues, OutOfPlaceCase } from './case.ts';
import { type LeastInsert, makeLeastInsert } from './least-insert.ts';

/** An edge farther than this counts as this far [mm]: what is beyond it adds nothing. */
export const FARTHEST_EDGE = 1500;

/** Concrete behind the foot that the least cover leaves [mm]; taken where the thickness is not said. */
const LEAST_BEHIND = 20;

/** The weakest concrete that EN 1992-4 covers [MPa]; taken by every rule set where no strength is said. */
const LEAST_STRENGTH = 12;

/** A value that was not said and what was taken for it, on the safe side; words are made of it where it is shown. */
export interface Assumption {
  readonly what:
    | 'body'
    | 'foot'
    | 'embedment'
    | 'steel'
    | 'cross-hole'
    | 'thread-class'
    | 'bolt'
    | 'engagement'
    | 'document'
    | 'thickness'
    | 'strength'
    | 'cracked'
    | 'bars-close'
    | 'bars-cracks'
    | 'edge-bars'
    | 'other-edges'
    | 'neighbours-place'
    | 'neighbours-load'
    | 'splitting'
    | 'poured'
    | 'shear-direction';
  /** Where the value could be said instead; null: it is not asked for. */
  readonly field: CaseField | KnownField | null;
  /** The sizes that were taken [mm], or strengths [MPa], in the order in which words name them. */
  readonly values: readonly number[];
  /** A class or name that was taken. */
  readonly name: string | null;
}

/** A case with nothing left open. Lengths mm, strength MPa, forces N. */
export interface FilledCase {
  readonly thread: Thread;
  readonly length: number;
  /** The nearest edge, the next, and every other at the least. */
  readonly nearest: number;
  readonly second: number;
  readonly others: number;
  readonly neighbours: 0 | 1 | 2 | 3;
  readonly spacing: number;
  /** Shares of this insert's load that the neighbours may carry at the same time; the worst of them counts. */
  readonly shares: readonly number[];
  readonly thickness: number;
  readonly strength: number;
  readonly isPoured: boolean;
  /** Both loads; null where one of them was not said. */
  readonly load: { readonly tension: number; readonly shear: number } | null;
  readonly insert: LeastInsert;
  readonly isDense: boolean;
  readonly limitsCracks: boolean;
  readonly edgeBars: 'none' | 'bar' | 'bar-and-stirrups';
  /** Where it is drawn, from the same two edges; null where nobody knows. */
  readonly drawn: { readonly nearest: number; readonly second: number } | null;
  readonly known: KnownValues;
  readonly assumptions: readonly Assumption[];
}

const N_PER_KN = 1000;

function readLoad({ tension_kN, shear_kN }: OutOfPlaceCase): FilledCase['load'] {
  if (tension_kN === null || shear_kN === null) return null;
  if (tension_kN === 0 && shear_kN === 0) return null;
  return { tension: tension_kN * N_PER_KN, shear: shear_kN * N_PER_KN };
}

/** The drawn distances in the order of those that were measured. */
function readDrawn(
  { edge1_mm, edge2_mm }: OutOfPlaceCase,
  { drawnEdge1_mm, drawnEdge2_mm }: KnownValues,
): FilledCase['drawn'] {
  if (drawnEdge1_mm === null || drawnEdge2_mm === null) return null;
  return edge1_mm! <= edge2_mm!
    ? { nearest: drawnEdge1_mm, second: drawnEdge2_mm }
    : { nearest: drawnEdge2_mm, second: drawnEdge1_mm };
}

/** What was taken about the insert itself. */
function listOfInsert(
  { item, footWidth, bolt, engagement, longestEmbedment }: LeastInsert,
  known: KnownValues,
): Assumption[] {
  const list: Assumption[] = [];
  const add = (isKnown: boolean, one: Assumption) => {
    if (!isKnown) list.push(one);
  };
  add(known.document !== null, { what: 'document', field: 'document', values: [], name: null });
  add(known.footDiameter_mm !== null, {
    what: 'foot',
    field: 'footDiameter_mm',
    values: [footWidth],
    name: item.thread,
  });
  add(known.bodyDiameter_mm !== null, {
    what: 'body',
    field: 'bodyDiameter_mm',
    values: [item.bodyDiameter_mm],
    name: item.thread,
  });
  add(known.embedment_mm !== null, {
    what: 'embedment',
    field: 'embedment_mm',
    values: [item.embedment_mm, longestEmbedment],
    name: null,
  });
  add(known.steelYield_MPa !== null && known.steelUltimate_MPa !== null, {
    what: 'steel',
    field: 'steelYield_MPa',
    values: [item.steel.yield_MPa, item.steel.ultimate_MPa],
    name: null,
  });
  list.push({ what: 'cross-hole', field: null, values: [item.crossHole?.diameter_mm ?? 0], name: null });
  add(known.threadClass !== null, { what: 'thread-class', field: null, values: [], name: item.threadClass });
  add(known.boltClass !== null, { what: 'bolt', field: 'boltClass', values: [], name: bolt.propertyClass });
  add(known.engagement_mm !== null, { what: 'engagement', field: 'engagement_mm', values: [engagement], name: null });
  return list;
}

/**
 * Fills a case in which no fault was found (`findCaseFaults`): each value that was not said is taken where the insert carries least of
 * all that can be, and listed.
 */
export function fillCase(given: OutOfPlaceCase, { standard, known }: AnswerSettings): FilledCase {
  const list: Assumption[] = [];
  const take = <T>(value: T | null, least: T, one: Omit<Assumption, 'name'>): T => {
    if (value === null) list.push({ ...one, name: null });
    return value ?? least;
  };
  const length = given.length_mm!;
  const cap = (edge: number) => Math.min(edge, FARTHEST_EDGE);
  const [nearest, second] = [given.edge1_mm!, given.edge2_mm!].map(cap).toSorted((a, b) => a - b) as [number, number];
  const others = cap(
    take(known.otherEdges_mm, second, { what: 'other-edges', field: 'otherEdges_mm', values: [second] }),
  );
  const thickness = take(given.thickness_mm, length + LEAST_BEHIND, {
    what: 'thickness',
    field: 'thickness_mm',
    values: [length + LEAST_BEHIND, LEAST_BEHIND],
  });
  const said = take(given.strength_MPa, LEAST_STRENGTH, {
    what: 'strength',
    field: 'strength_MPa',
    values: [LEAST_STRENGTH],
  });
  const strength = Math.min(said, findEdition(standard).limits.highestConcrete);
  const insert = makeLeastInsert(given.thread!, length, thickness, standard, known);
  const neighbours = given.neighbours!;
  if (neighbours > 0) list.push({ what: 'neighbours-place', field: null, values: [nearest], name: null });
  const shares =
    neighbours === 0
      ? [0]
      : take(known.neighboursCarry === null ? null : [known.neighboursCarry], [0, 1], {
          what: 'neighbours-load',
          field: 'neighboursCarry',
          values: [],
        });
  list.push({ what: 'cracked', field: null, values: [], name: null });
  const isDense = take(known.isDense, true, { what: 'bars-close', field: 'isDense', values: [] });
  const limitsCracks = take(known.limitsCracks, false, { what: 'bars-cracks', field: 'limitsCracks', values: [] });
  if (known.criticalEdge_mm === null && !limitsCracks)
    list.push({
      what: 'splitting',
      field: 'criticalEdge_mm',
      values: [insert.item.splitting?.criticalEdge_mm ?? 0],
      name: null,
    });
  const edgeBars = take(known.edgeBars, 'none' as const, { what: 'edge-bars', field: null, values: [] });
  const isPoured = take(given.isPoured, true, { what: 'poured', field: 'isPoured', values: [] });
  const load = readLoad(given);
  if (load !== null && load.shear > 0)
    list.push({ what: 'shear-direction', field: null, values: [nearest], name: null });
  return {
    thread: findThread(given.thread!),
    length,
    nearest,
    second,
    others,
    neighbours,
    spacing: given.spacing_mm ?? 0,
    shares,
    thickness,
    strength,
    isPoured,
    load,
    insert,
    isDense,
    limitsCracks,
    edgeBars,
    drawn: readDrawn(given, known),
    known,
    assumptions: [...list, ...listOfInsert(insert, known)],
  };
}
