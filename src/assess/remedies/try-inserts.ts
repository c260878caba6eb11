import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import { changeParts } from '../choose/apply-choice.ts';
import { type Changes, type ConnectionChoice, countChanges, type PassingInsert } from '../choose/choice.ts';
import { chooseConnection } from '../choose/choose-connection.ts';
import type { Move } from '../choose/find-move.ts';
import type { JobDraft } from '../choose/job-draft.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt, Proposal, RemedyKind } from './remedy.ts';
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

const describe = ({ id, thread, length_mm }: CatalogueItem) => `${id} (${thread} × ${length_mm} mm)`;

/** How far a connection is moved along each axis where one change alone does not do [mm]. */
const TOGETHER_MOVE = 150;

function tellMove({ dx, dy }: Move, isEdge: boolean): string {
  if (isEdge) return `moved ${dx} mm along the edge and ${dy} mm away from the outside face`;
  const parts = [
    ...(dx === 0 ? [] : [`${Math.abs(dx)} mm ${dx > 0 ? 'right' : 'left'}`]),
    ...(dy === 0 ? [] : [`${Math.abs(dy)} mm ${dy > 0 ? 'up' : 'down'}`]),
  ];
  return `moved ${parts.join(' and ')}`;
}

function tellChanges({ holes, boltThread, boltClass, move }: Changes, isEdge: boolean): string {
  const parts = [
    ...(move === null ? [] : [tellMove(move, isEdge)]),
    ...(boltClass === null ? [] : [`bolts of class ${boltClass.to}`]),
    ...(holes === null ? [] : [`holes ${holes.ids.join(', ')} drilled to ${holes.to} mm`]),
    ...(boltThread === null ? [] : [`bolts ${boltThread.to}`]),
  ];
  return parts.length === 0 ? '' : `, ${parts.join(', ')}`;
}

function propose({ parts, items, slice }: RemedyQuestion, passing: PassingInsert, kind: RemedyKind): Proposal {
  const { connection, castIns } = changeParts(parts, passing, slice.library.holding.ways);
  const { origin_mm, boltThread, boltClass, fixture, detail } = connection;
  const now = [...new Set(items.map(({ id }) => id))].join(', ');
  const { changes, item } = passing;
  const isSame = now === item.id;
  const told = tellChanges(changes, connection.face === 'edge');
  return {
    kind,
    words: isSame ? `keep ${item.id}${told}` : `take ${describe(item)} in place of ${now}${told}`,
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

function tellInVain({ rejected, ranked, present }: ConnectionChoice): readonly string[] {
  if (ranked.length > 0) return [];
  const others = rejected.filter(({ item }) => !present.includes(item.id));
  return others.length === 0 ? [] : [`the ${others.length} other inserts of the catalogue`];
}

/** Other inserts of the catalogue: a longer one, the next size up, the best of the ranking. */
export function tryInserts(question: RemedyQuestion, draft: JobDraft): Attempt {
  const { connection, items } = question;
  const options = { move: 0, drills: true, strongerBolts: false, daysToPour: null };
  const choice = chooseConnection(draft, connection, options);
  const best = pickBest(choice.ranked, items);
  return {
    proposals: best.map((passing) => propose(question, passing, kindOf(passing.item, items))),
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
      inVain: [`plate, insert, bolts and a move up to ${TOGETHER_MOVE} mm changed together`],
    };
  const { fixture } = connection;
  const parts = { ...question.parts, connection, fixture: fixture ?? question.parts.fixture };
  const proposal = propose({ ...question, connection, parts }, first, 'several changes');
  if (stiff === null) return { proposals: [proposal], inVain: [] };
  const set = { fixture, detail: connection.detail, ...proposal.change.connections[0]?.set };
  return {
    proposals: [
      {
        ...proposal,
        words: `${proposal.words}, ${stiff.words}`,
        notes: [...stiff.notes, ...proposal.notes],
        change: { ...proposal.change, connections: [{ key: connection.key, set }] },
      },
    ],
    inVain: [],
  };
}
