import type { PieceState } from '../../records/fold/piece-state.ts';
import type { RecordKind } from '../../records/record.ts';
import type { AsCastConnection, AsCastReport } from '../as-cast/as-cast-report.ts';
import { rememberAsCast } from '../as-cast/remember-as-cast.ts';
import type { BoltUpCard } from '../bolt-up/bolt-up-report.ts';
import { reportBoltUp } from '../bolt-up/report-bolt-up.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { Flag, YardContext } from './piece-report.ts';
import { ofKind } from './piece-slots.ts';
import { callPerson } from './rights.ts';
import { indexSeen, type SeenIndex } from './seen-index.ts';

/** What comes after the form; without any of it there is nothing to flag, and nothing is computed. */
const AFTER: ReadonlySet<RecordKind> = new Set(['surveyed', 'remedy-decided', 'tightened', 'delivered']);

function flagRights({ people }: YardContext, { connections }: AsCastReport): Flag[] {
  return connections.flatMap(({ connection, withoutRight }) =>
    withoutRight.map(
      (record): Flag => ({
        kind: 'decided without the right',
        words: `connection ${connection.mark}: ${callPerson(people, record.person)} decided "${record.body.remedy}" without the right to: it does not count`,
        records: [record.id],
      }),
    ),
  );
}

/** What was computed when it was decided is not what is computed now. */
function flagComputed({ connection, decision, decided, state }: AsCastConnection): Flag[] {
  if (decision === null || decided === null || state === 'not usable') return [];
  const { computed } = decision.body;
  if (computed.state === decided.verdict) return [];
  return [
    {
      kind: 'decided on other numbers',
      words: `connection ${connection.mark}: "${decision.body.remedy}" was computed then as: ${computed.state}; now: ${decided.verdict}${decided.why[0] === undefined ? '' : `, ${decided.why[0]}`}`,
      records: [decision.id],
    },
  ];
}

function flagBlunders({ surveys }: AsCastReport): Flag[] {
  return surveys.flatMap(({ record, controls }): Flag[] => {
    const suspects = controls.filter(({ isUsed, isSuspect }) => isUsed && isSuspect);
    if (suspects.length === 0) return [];
    const names = suspects.map(({ name }) => name).join(', ');
    return [
      {
        kind: 'survey that does not agree',
        words: `a survey rests on a known point that does not agree with the others: ${names}; measure it again, or leave it out with a reason`,
        records: [record.id],
      },
    ];
  });
}

/** A connection that was bolted up while nobody had decided what was to become of it. */
function flagTightened({ asCast, tightened, tightenedFaults }: BoltUpCard, seen: SeenIndex): Flag[] {
  if (tightened === null) return [];
  const { connection, decision, state } = asCast;
  const records = [tightened.id];
  const about = `connection ${connection.mark}`;
  if (state === 'not usable')
    return [{ kind: 'tightened though not usable', words: `${about} is bolted up though it was given up`, records }];
  const isOpen = state === 'needs a remedy' || state === 'fine as it is' || state === 'conflict';
  const cameLater = decision !== null && !seen.hasSeen(tightened, decision);
  if (isOpen || cameLater)
    return [
      {
        kind: 'bolted up before a decision',
        words: `${about} was bolted up before anybody who may had decided what to do about its inserts`,
        records: [...records, ...(cameLater ? [decision.id] : [])],
      },
    ];
  return tightenedFaults.length === 0
    ? []
    : [{ kind: 'bolted otherwise than picked', words: `${about}: ${tightenedFaults.join('; ')}`, records }];
}

/** Caps that were missing, or threads that were not clean, when the piece came to the site. */
function flagDelivery(plan: PiecePlan, state: PieceState): Flag[] {
  const numbers = new Map(plan.setOut.items.map(({ castIn, number }) => [castIn.key, number]));
  const all = [...state.slots.values()].flatMap(({ slot, latest }) =>
    slot === 'delivery' ? ofKind(latest, 'delivered') : [],
  );
  return all.flatMap(({ id, item, body }): Flag[] => {
    const wrong = [...(body.caps ? [] : ['a cap is missing']), ...(body.threads ? [] : ['a thread is not clean'])];
    if (wrong.length === 0) return [];
    const where = item === null ? '' : `no. ${numbers.get(item) ?? '?'}: `;
    return [
      {
        kind: 'caps or threads on delivery',
        words: `${where}${wrong.join(' and ')} on delivery: cleaned and looked at before a bolt goes in, never tapped`,
        records: [id],
      },
    ];
  });
}

/** Everything about a piece that is out of its form that no screen and no print may leave out; empty, and nothing computed, where nothing was done to it since. */
export function raiseAfterFlags(context: YardContext, plan: PiecePlan, state: PieceState): readonly Flag[] {
  if (!state.history.some(({ id, kind }) => AFTER.has(kind) && !state.withdrawn.has(id))) return [];
  const asCast = rememberAsCast({ context, plan, state });
  const seen = indexSeen(state);
  const isTightened = [...state.slots.values()].some(({ latest }) => latest.some(({ kind }) => kind === 'tightened'));
  const cards = isTightened ? reportBoltUp(context, plan, state, asCast).cards : [];
  return [
    ...flagRights(context, asCast),
    ...cards.flatMap((card) => flagTightened(card, seen)),
    ...flagBlunders(asCast),
    ...asCast.connections.flatMap(flagComputed),
    ...flagDelivery(plan, state),
  ];
}
