import type { HoldingMethodName } from '../../engine/form/holding-methods.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { AsCastInsert } from '../as-cast/as-cast-report.ts';
import { findCastInserts } from '../as-cast/cast-inserts.ts';
import type { FormPlace, SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';

/** What may have to do with how far an insert lies off. Null: not known. */
export interface DeviationContext {
  readonly method: HoldingMethodName | null;
  readonly place: FormPlace;
  readonly bed: string | null;
  /** Who said that it was in place, by id. */
  readonly setter: string | null;
  /** Id of the catalogue item. */
  readonly type: string | null;
  readonly isOnBoard: boolean;
}

/** How far one insert lies from its designed place [mm]. */
export interface Deviation {
  readonly piece: string;
  readonly item: string;
  readonly number: number;
  /** Taped in the form, along x and y of the form; or surveyed on the hard panel, in the axes of its drawing. They are never put together. */
  readonly source: 'taped' | 'surveyed';
  readonly x: number;
  readonly y: number;
  /** Designed distances from the datum along the two axes [mm]. */
  readonly from: readonly [x: number, y: number];
  readonly tolerance: number;
  /** Those that one plate goes onto: the piece with the connection; null: it belongs to none. */
  readonly group: string | null;
  /** Who measured, by id; null: an instrument. */
  readonly measurer: string | null;
  readonly context: DeviationContext;
}

/** The records that count of an insert, of one kind, newest last. */
function countingOf<Kind extends FactRecord['kind']>(
  state: PieceState,
  item: string,
  kind: Kind,
): readonly RecordOf<Kind>[] {
  return [...state.slots.values()]
    .filter((slot) => slot.item === item && !slot.isConflict)
    .flatMap(({ latest }) => latest.filter((record): record is RecordOf<Kind> => record.kind === kind));
}

function contextOf(item: SetOutItem, state: PieceState, bed: string | null): DeviationContext {
  const { castIn, way, place, connection } = item;
  const placed = countingOf(state, castIn.key, 'placed').at(-1);
  return {
    method: way?.method ?? null,
    place,
    bed,
    setter: placed === undefined ? null : (placed.measuredBy ?? placed.person),
    type: castIn.item,
    isOnBoard: way?.method === 'template board' && connection !== null,
  };
}

function groupOf({ piece }: PiecePlan, { connection }: SetOutItem): string | null {
  return connection === null ? null : `${piece} ${connection}`;
}

/**
 * Inserts that were taped along both axes by what the piece is to be now, as they count: the later of two stages, no conflict, nothing withdrawn. A choice between two
 * readings is no reading of its own, but the one that was found right.
 */
export function listTapedDeviations(plan: PiecePlan, state: PieceState, bed: string | null): readonly Deviation[] {
  return plan.setOut.items.flatMap((item): readonly Deviation[] => {
    const readings = countingOf(state, item.castIn.key, 'measured').filter(
      ({ checkKey, body }) => checkKey === plan.keys.get(item.castIn.key) && body.x_mm !== null && body.y_mm !== null,
    );
    const last = readings.toSorted((a, b) => a.body.stage - b.body.stage).at(-1);
    if (last === undefined) return [];
    return [
      {
        ...{ piece: plan.piece, item: item.castIn.key, number: item.number, source: 'taped' },
        x: last.body.x_mm! - item.taped[0],
        y: last.body.y_mm! - item.taped[1],
        from: [Math.abs(item.taped[0]), Math.abs(item.taped[1])],
        tolerance: item.tolerance,
        group: groupOf(plan, item),
        measurer: last.measuredBy ?? last.person,
        context: contextOf(item, state, bed),
      },
    ];
  });
}

/** Inserts that were surveyed on the hard panel; surveys that contradict each other teach nothing. */
export function listSurveyedDeviations(
  plan: PiecePlan,
  state: PieceState,
  bed: string | null,
  inserts: readonly AsCastInsert[],
): readonly Deviation[] {
  return inserts.flatMap(({ item, place, state: found }): readonly Deviation[] =>
    place === null || found === 'conflict' || found === 'not surveyed'
      ? []
      : [
          {
            ...{ piece: plan.piece, item: item.castIn.key, number: item.number, source: 'surveyed' },
            ...{ x: place.dx, y: place.dy, from: [Math.abs(item.taped[0]), Math.abs(item.taped[1])] },
            ...{
              tolerance: item.tolerance,
              group: groupOf(plan, item),
              measurer: null,
              context: contextOf(item, state, bed),
            },
          },
        ],
  );
}

/** All that a piece teaches: what was taped in its form, and what was surveyed when it was hard. */
export function listDeviations(
  context: YardContext,
  plan: PiecePlan,
  state: PieceState,
  bed: string | null,
): readonly Deviation[] {
  const taped = listTapedDeviations(plan, state, bed);
  if ((state.beside.get('surveyed') ?? []).length === 0) return taped;
  return [...taped, ...listSurveyedDeviations(plan, state, bed, findCastInserts(context, plan, state).inserts)];
}
