import { findPouredWithdrawn } from '../../records/fold/find-poured.ts';
import type { PieceState, PouredState, SlotState } from '../../records/fold/piece-state.ts';
import type { FactRecord } from '../../records/record.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { Flag, YardContext } from './piece-report.ts';
import type { Recognised } from './placing-answer.ts';
import type { InsertFinding } from './report-insert.ts';
import { callPerson } from './rights.ts';
import type { StandingClearance } from './standing-clearance.ts';

/** What flags are raised from. */
export interface FlagSource {
  readonly context: YardContext;
  readonly plan: PiecePlan;
  readonly state: PieceState;
  readonly poured: PouredState | null;
  readonly clearance: StandingClearance;
  readonly inserts: readonly InsertFinding[];
  readonly recognised: Recognised | null;
  /** Of the piece itself: scrapped or re-marked by somebody who may not. */
  readonly withoutRight: readonly FactRecord[];
}

function idsOf(records: readonly FactRecord[]): readonly string[] {
  return records.map(({ id }) => id);
}

const POURED_FLAGS = {
  'without clearance': ['poured without clearance', 'poured without clearance: a non-conformance'],
  'while held': ['poured while held', 'poured though it was held: a non-conformance'],
  'on an override': ['poured on an override', 'poured on an override'],
} as const;

const TOO_LATE = {
  late: 'cleared after it was poured: that makes nothing good',
  'unknown to it': 'a clearance was given on another device; who poured did not know of it',
} as const;

function flagPoured({ poured, clearance }: FlagSource): Flag[] {
  if (poured === null) return [];
  const flags: Flag[] = [];
  const { clearance: how } = poured;
  if (how !== 'cleared' && how !== 'cleared with a condition') {
    const [kind, words] = POURED_FLAGS[how];
    const { record } = clearance;
    const reason = how === 'on an override' && record?.kind === 'override' ? `: ${record.body.reason}` : '';
    flags.push({ kind, words: `${words}${reason}`, records: idsOf(poured.poured) });
  }
  if (poured.tooLate !== null)
    flags.push({ kind: 'cleared too late', words: TOO_LATE[poured.tooLate], records: idsOf(poured.poured) });
  return flags;
}

function flagWithdrawn({ context, state }: FlagSource): Flag[] {
  return findPouredWithdrawn(state).map((record) => {
    const correction = state.history.find(({ id }) => id === state.withdrawn.get(record.id));
    const by = correction === undefined ? '' : ` by ${callPerson(context.people, correction.person)}`;
    const why = correction?.kind === 'correction' ? `: ${correction.body.reason}` : '';
    return {
      kind: 'poured withdrawn',
      words: `a record that it was poured was taken back${by}${why}`,
      records: idsOf([record, ...(correction === undefined ? [] : [correction])]),
    };
  });
}

/** What the piece itself was asked, in words; of a poured one two reports of the same pour are no conflict. */
const PIECE_SLOTS: Readonly<Record<string, string>> = {
  started: 'how it was begun',
  mark: 'which mark it is',
  scrapped: 'why it is scrapped',
  form: 'the check of its form',
  decision: 'whether its form may stay as it is',
  clearance: 'whether it may be poured',
  stripped: 'what came back when it was stripped',
  uncovered: 'how it was when it was opened up',
  location: 'where it stands',
};

function flagConflicts({ plan, state, inserts }: FlagSource): Flag[] {
  const numbers = new Map(plan.setOut.items.map(({ castIn, number }) => [castIn.key, number]));
  const flag = (slot: SlotState, words: string): Flag => ({ kind: 'conflict', words, records: idsOf(slot.latest) });
  const ofPiece = [...state.slots.values()].flatMap((slot) => {
    const what = PIECE_SLOTS[slot.slot];
    if (slot.item !== null || !slot.isConflict || what === undefined) return [];
    return [flag(slot, `two people who did not know of each other recorded different things about ${what}`)];
  });
  const ofInserts = inserts.flatMap(({ item, conflicts }) =>
    conflicts.map(({ slot, words }) => flag(slot, `no. ${numbers.get(item.castIn.key)}: ${words}`)),
  );
  return [...ofPiece, ...ofInserts];
}

const WITHOUT_RIGHT: Readonly<Partial<Record<FactRecord['kind'], string>>> = {
  decision: 'accepted an insert',
  measured: 'chose between two readings',
  cleared: 'cleared it',
  override: 'overrode its hold',
  scrapped: 'scrapped it',
  're-marked': 'marked it anew',
};

function flagRights({ context, plan, clearance, inserts, withoutRight }: FlagSource): Flag[] {
  const numbers = new Map(plan.setOut.items.map(({ castIn, number }) => [castIn.key, number]));
  const all = [...withoutRight, ...clearance.withoutRight, ...inserts.flatMap((finding) => finding.withoutRight)];
  return all.map((record) => {
    const which = record.item === null ? '' : `no. ${numbers.get(record.item) ?? '?'}: `;
    const what = record.kind === 'decision' && record.item === null ? 'accepted the form' : WITHOUT_RIGHT[record.kind];
    const who = callPerson(context.people, record.person);
    return {
      kind: 'decided without the right',
      words: `${which}${who} ${what ?? 'decided'} without the right to: it does not count`,
      records: [record.id],
    };
  });
}

/** Numbers of what was checked by another key than that of now. */
function listOpenAgain({ inserts }: FlagSource): readonly number[] {
  return inserts.filter(({ isOld }) => isOld).map(({ item }) => item.number);
}

function flagRevisions(source: FlagSource): Flag[] {
  const { context, poured, clearance } = source;
  const flags: Flag[] = [];
  if (clearance.fallen !== null)
    flags.push({
      kind: 'cleared on other inputs',
      words: clearance.fallen.why,
      records: [clearance.fallen.record.id],
    });
  const changed = listOpenAgain(source);
  if (poured !== null && changed.length > 0) {
    const letters = [...new Set(poured.poured.map(({ revision }) => revision?.letter ?? 'none'))].join(', ');
    flags.push({
      kind: 'by an old revision',
      words: `cast by revision ${letters}; revision ${context.revision.letter} changed no. ${changed.join(', ')}`,
      records: idsOf(poured.poured),
    });
  }
  return flags;
}

function flagMark({ recognised, inserts }: FlagSource): Flag[] {
  if (recognised?.kind !== 'handed partner') return [];
  return [
    {
      kind: 'wrong mark',
      words: recognised.words,
      records: inserts.flatMap(({ place }) => idsOf(place?.latest ?? [])),
    },
  ];
}

/** Everything about a piece that no screen and no print may leave out, the worst first. A function of the set of records, so that no order hides any of it. */
export function raiseFlags(source: FlagSource): readonly Flag[] {
  return [
    ...flagPoured(source),
    ...flagWithdrawn(source),
    ...flagRights(source),
    ...flagMark(source),
    ...flagConflicts(source),
    ...flagRevisions(source),
  ];
}
