import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, recordsOf } from './piece-slots.ts';
import type { FoundPlace } from './placing-answer.ts';
import { findPerson, mayDo } from './rights.ts';
import type { SeenIndex } from './seen-index.ts';

export const AXES = ['x', 'y', 'level'] as const;
export type Axis = (typeof AXES)[number];

/** Where an insert was found, as far as records say: each length by itself, so that one taped alone does not make another one forgotten. */
export interface FoundRecords {
  /** Of each length what the last ones say, that no later one has seen: several where people did not know of each other. Least first. */
  readonly values: Readonly<Record<Axis, readonly number[]>>;
  /** Records that these are from. */
  readonly records: readonly FactRecord[];
  /** Choices between two readings by somebody who may not choose: they settle nothing. */
  readonly withoutRight: readonly RecordOf<'measured'>[];
}

/** A length and the record that says it. */
interface Reading {
  readonly record: FactRecord;
  readonly axis: Axis;
  readonly value: number;
}

function readingsOf(record: RecordOf<'measured'> | RecordOf<'screed-checked'>): readonly Reading[] {
  const lengths: Readonly<Record<Axis, number | null>> =
    record.kind === 'measured'
      ? { x: record.body.x_mm, y: record.body.y_mm, level: record.body.level_mm }
      : { x: null, y: null, level: record.body.level_mm };
  return AXES.flatMap((axis) => {
    const value = lengths[axis];
    return value === null ? [] : [{ record, axis, value }];
  });
}

/** Whether somebody chose between readings without the right to. */
function isChosenWithoutRight(context: YardContext, record: RecordOf<'measured'>): boolean {
  return record.body.basis === 'chosen' && !mayDo(findPerson(context.people, record.person), 'settle a conflict').may;
}

/**
 * The lengths that were taped to an insert by what it is to be now; those of another check key are not in it. A level taken after screeding counts
 * like any other.
 * @param key check key of the insert
 */
export function findPlaces(
  context: YardContext,
  plan: PiecePlan,
  slots: PieceSlots,
  seen: SeenIndex,
  { castIn }: SetOutItem,
): FoundRecords {
  const key = plan.keys.get(castIn.key);
  const taped = ofKind(recordsOf(slots.of(castIn.key, 'place 1'), slots.of(castIn.key, 'place 2')), 'measured').filter(
    ({ checkKey }) => checkKey === key,
  );
  const withoutRight = taped.filter((record) => isChosenWithoutRight(context, record));
  const screed = ofKind(recordsOf(slots.of(castIn.key, 'screed')), 'screed-checked').filter(
    ({ checkKey }) => checkKey === key || checkKey === null,
  );
  const readings = [...taped.filter((record) => !withoutRight.includes(record)), ...screed].flatMap(readingsOf);
  const last = (axis: Axis) => {
    const own = readings.filter((reading) => reading.axis === axis);
    const standing = new Set(seen.standing(own.map(({ record }) => record)));
    return own.filter(({ record }) => standing.has(record));
  };
  const counting = { x: last('x'), y: last('y'), level: last('level') };
  const valuesOf = (axis: Axis) => [...new Set(counting[axis].map(({ value }) => value))].sort((a, b) => a - b);
  return {
    values: { x: valuesOf('x'), y: valuesOf('y'), level: valuesOf('level') },
    records: [...new Set(AXES.flatMap((axis) => counting[axis].map(({ record }) => record)))],
    withoutRight,
  };
}

/** The ends of what was found of one length; not taken: null. */
function endsOf(values: readonly number[]): readonly (number | null)[] {
  if (values.length === 0) return [null];
  return [...new Set([values[0]!, values.at(-1)!])];
}

/** Every place that the readings allow, by their ends: one where they agree, at most eight. */
export function listFoundPlaces({ values }: Pick<FoundRecords, 'values'>): readonly FoundPlace[] {
  return endsOf(values.x).flatMap((x) =>
    endsOf(values.y).flatMap((y) => endsOf(values.level).map((level): FoundPlace => ({ x, y, level }))),
  );
}

/** The place farthest from the designed one; level aside. */
export function findFarthest(places: readonly FoundPlace[], { taped }: Pick<SetOutItem, 'taped'>): FoundPlace {
  const away = ({ x, y }: FoundPlace) => Math.hypot(x === null ? 0 : x - taped[0], y === null ? 0 : y - taped[1]);
  return places.reduce((far, place) => (away(place) > away(far) ? place : far));
}
