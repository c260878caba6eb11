import type { PieceState } from '../../records/fold/piece-state.ts';
import type { FactRecord } from '../../records/record.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import { ofKind, type PieceSlots, readSlots } from '../yard/piece-slots.ts';
import { indexSeen, type SeenIndex } from '../yard/seen-index.ts';
import type { AsCastInsert } from './as-cast-report.ts';
import { findCountingPlace } from './counting-places.ts';
import { judgeInsert } from './judge-insert.ts';
import { readSurvey } from './read-survey.ts';
import type { SurveyReading } from './survey-reading.ts';

/** The inserts of a hard panel, with what their places were found from. */
export interface CastInserts {
  readonly slots: PieceSlots;
  readonly seen: SeenIndex;
  readonly readings: readonly SurveyReading[];
  /** Records that the place of an insert rests on, by its id. */
  readonly rests: ReadonlyMap<string, readonly FactRecord[]>;
  readonly inserts: readonly AsCastInsert[];
}

/** Where the inserts of a piece came out by the surveys that count, each held against its tolerance; no connection is computed. */
export function findCastInserts(context: YardContext, plan: PiecePlan, state: PieceState): CastInserts {
  const { setOut } = plan;
  const slots = readSlots(state);
  const seen = indexSeen(state);
  const readings = ofKind(state.beside.get('surveyed') ?? [], 'surveyed').map((record) => readSurvey(plan, record));
  const rests = new Map<string, readonly FactRecord[]>();
  const inserts = setOut.items.map((item) => {
    const counting = findCountingPlace(context, plan, slots, seen, readings, item);
    rests.set(item.castIn.id, counting.records);
    return judgeInsert(context.index, setOut.panel, item, counting);
  });
  return { slots, seen, readings, rests, inserts };
}
