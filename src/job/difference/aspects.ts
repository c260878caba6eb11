import type { AspectChange, CastInAspect, ConnectionAspect, PanelAspect } from './job-difference.ts';
import { findValueChanges } from './value-changes.ts';

/** Two places nearer than this are one [mm]; other numbers alike. */
const SAME = 1e-6;

/** Which keys of a document make up each side of a thing. Every key but names and owners is in one. */
export const castInAspects: Readonly<Record<CastInAspect, readonly string[]>> = {
  number: ['id'],
  role: ['role', 'description'],
  type: ['item'],
  face: ['face', 'edge'],
  place: ['x_mm', 'y_mm'],
  recess: ['recess_mm'],
  holding: ['holding'],
  'cross bar': ['crossBar'],
  size: ['size'],
  tolerance: ['tolerance_mm'],
};

export const connectionAspects: Readonly<Record<ConnectionAspect, readonly string[]>> = {
  mark: ['mark'],
  face: ['face', 'edge'],
  place: ['origin_mm', 'turn_deg'],
  plate: ['detail', 'fixture', 'isHeldAgainstTurning'],
  inserts: ['inserts'],
  packers: ['packers_mm', 'isFilled'],
  bolts: ['boltThread', 'boltClass', 'boltFinish', 'engagement_mm'],
  concrete: ['cracked', 'age_days'],
  bars: ['hangers', 'hairpins'],
  uses: ['uses'],
  loads: ['actions'],
  tolerance: ['positionBox'],
};

export const panelAspects: Readonly<Record<PanelAspect, readonly string[]>> = {
  mark: ['mark'],
  concrete: ['concrete'],
  'drawn face': ['drawnFace'],
  'face down': ['faceDown'],
  turn: ['turn_deg'],
  datum: ['datum'],
  'handed partner': ['handedOf'],
  outline: ['outline_mm'],
  openings: ['openings_mm'],
  thickness: ['thickness_mm'],
  layers: ['layers'],
  zones: ['zones'],
  batter: ['edges'],
  reinforcement: ['reinforcement'],
};

function pick(record: Readonly<Record<string, unknown>>, keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(keys.map((key) => [key, record[key]]));
}

/** The sides of a thing that are another, each with the values that changed. */
export function compareAspects<What extends string>(
  before: object,
  after: object,
  aspects: Readonly<Record<What, readonly string[]>>,
): AspectChange<What>[] {
  const named = Object.entries(aspects) as [What, readonly string[]][]; // safe: the record has no other keys
  return named.flatMap(([what, keys]) => {
    const changes = findValueChanges(pick({ ...before }, keys), pick({ ...after }, keys), { within: SAME });
    return changes.length === 0 ? [] : [{ what, changes }];
  });
}

/** Everything in which two documents differ. */
export function compareDocuments(before: unknown, after: unknown): ReturnType<typeof findValueChanges> {
  return findValueChanges(before, after, { within: SAME });
}
