import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import { changeParts } from '../choose/apply-choice.ts';
import { type ConnectionChoice, countChanges, type PassingInsert } from '../choose/choice.ts';
import { chooseConnection } from '../choose/choose-connection.ts';
import type { JobDraft } from '../choose/job-draft.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt, Proposal, RemedyKind, Vain } from './remedy.ts';
import { stiffenPlate } from './try-steel.ts';

const sizeOf = ({ thread }: CatalogueItem) => findThread(thread).diameter;

/** What a passing insert is beside those that the connection has. */
function kindOf(item: CatalogueItem, present: readonly CatalogueItem[]): RemedyKind {
  const size = Math.max(...present.map(sizeOf));
  const length = Math.max(...present.map(({ length_mm }) => length_mm));
  if (sizeOf(item) > size) return 'larger insert';
  return sizeOf(item) === size && item.length_mm > length ? 'longer insert' : 'other insert';
}

/** Of the longer ones the shortest, of the larger ones the smallest, of all the first of the ranking: each once. */
function pickBest(ranked: readonly PassingInsert[], present: readonly CatalogueItem[]): readonly PassingInsert[] {
  const least = (kind: RemedyKind) =>
    ranked
      .filter(({ item }) => kindOf(item, present) === kind)
      .reduce<PassingInsert | null>((best, one) => {
        if (best === null) return one;
        const [a, b] = [one.item, best.item];
        return sizeOf(a) < sizeOf(b) || (sizeOf(a) === sizeOf(b) && a.length_mm < b.length_mm) ? one : best;
      }, null);
  const picked = [least('longer insert'), least('larger insert'), ranked[0] ?? null].filter((one) => one !== null);
  return picked.filter((one, i) => picked.indexOf(one) === i);
}

/** How far a connection is moved along each axis where one change alone does not do [mm]. */
const TOGETHER_MOVE = 150;

/** @param plate thickness of the plate that goes with it [mm]; null: it stays */
function propose(
  { parts, items, slice }: RemedyQuestion,
  passing: PassingInsert,
  kind: RemedyKind,
  plate: number | null,
): Proposal {
  const { connection, castIns } = changeParts(parts, passing, slice.library.holding.ways);
  const { origin_mm, boltThread, boltClass, fixture, detail } = connection;
  const now = [...new Set(items.map(({ id }) => id))].join(', ');
  const { changes, item } = passing;
  const { id, thread, length_mm } = item;
  return {
    kind,
    deed: { kind: 'insert', from: now, to: { id, thread, length_mm }, changes, plate },
    notes: [...passing.consequences, ...passing.notes],
    change: {
      ...NOTHING_REPLACED,
      castIns: castIns.map(({ key, item: type, holding, x_mm, y_mm }) => ({
        key,
        set: { item: type, holding, ...(changes.move === null ? {} : { x_mm, y_mm }) },
      })),
      connections:
        countChanges(changes) === 0
          ? []
          : [
              {
                key: connection.key,
                set: { boltThread, boltClass, fixture, detail, ...(changes.move === null ? {} : { origin_mm }) },
              },
            ],
    },
  };
}

function tellInVain({ rejected, ranked, present }: ConnectionChoice): readonly Vain[] {
  if (ranked.length > 0) return [];
  const others = rejected.filter(({ item }) => !present.includes(item.id));
  return others.length === 0 ? [] : [{ kind: 'inserts', count: others.length }];
}

/** Other inserts of the catalogue: a longer one, the next size up, the best of the ranking. */
export function tryInserts(question: RemedyQuestion, draft: JobDraft): Attempt {
  const { connection, items } = question;
  const options = { move: 0, drills: true, strongerBolts: false, daysToPour: null };
  const choice = chooseConnection(draft, connection, options);
  const best = pickBest(choice.ranked, items);
  return {
    proposals: best.map((passing) => propose(question, passing, kindOf(passing.item, items), null)),
    inVain: tellInVain(choice),
  };
}

/** Several changes at once, where none does alone: plate, insert, holes, bolts and a move up to 150 mm; the best of the ranking. */
export function tryTogether(question: RemedyQuestion, draft: JobDraft): Attempt {
  const options = { move: TOGETHER_MOVE, drills: true, strongerBolts: true, daysToPour: null };
  const stiff = stiffenPlate(question);
  const connection = stiff?.connection ?? question.connection;
  const [first] = chooseConnection(draft, connection, options).ranked;
  if (first === undefined)
    return {
      proposals: [],
      inVain: [{ kind: 'together', move: TOGETHER_MOVE }],
    };
  const { fixture } = connection;
  const parts = { ...question.parts, connection, fixture: fixture ?? question.parts.fixture };
  const proposal = propose({ ...question, connection, parts }, first, 'several changes', stiff?.thickness ?? null);
  if (stiff === null) return { proposals: [proposal], inVain: [] };
  const set = { fixture, detail: connection.detail, ...proposal.change.connections[0]?.set };
  return {
    proposals: [
      {
        ...proposal,
        notes: [...stiff.notes, ...proposal.notes],
        change: { ...proposal.change, connections: [{ key: connection.key, set }] },
      },
    ],
    inVain: [],
  };
}
