import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { NOTHING_REPLACED } from '../../job/edit/replace-values.ts';
import { changeParts } from '../choose/apply-choice.ts';
import type { Changes, ConnectionChoice, PassingInsert } from '../choose/choice.ts';
import { chooseConnection } from '../choose/choose-connection.ts';
import type { JobDraft } from '../choose/job-draft.ts';
import type { RemedyQuestion } from './question.ts';
import type { Attempt, Proposal, RemedyKind } from './remedy.ts';

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

function tellChanges({ holes, boltThread }: Changes): string {
  const parts = [
    ...(holes === null ? [] : [`holes ${holes.ids.join(', ')} drilled to ${holes.to} mm`]),
    ...(boltThread === null ? [] : [`bolts ${boltThread.to}`]),
  ];
  return parts.length === 0 ? '' : `, ${parts.join(', ')}`;
}

function propose({ parts, items, slice }: RemedyQuestion, passing: PassingInsert): Proposal {
  const { connection, castIns } = changeParts(parts, passing, slice.library.holding.ways);
  const { boltThread, boltClass, fixture, detail } = connection;
  const now = [...new Set(items.map(({ id }) => id))].join(', ');
  const { changes } = passing;
  const isConnectionChanged = changes.holes !== null || changes.boltThread !== null;
  return {
    kind: kindOf(passing.item, items),
    words: `take ${describe(passing.item)} in place of ${now}${tellChanges(changes)}`,
    notes: [...passing.consequences, ...passing.notes],
    change: {
      ...NOTHING_REPLACED,
      castIns: castIns.map(({ key, item, holding }) => ({ key, set: { item, holding } })),
      connections: isConnectionChanged
        ? [{ key: connection.key, set: { boltThread, boltClass, fixture, detail } }]
        : [],
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
  return { proposals: best.map((passing) => propose(question, passing)), inVain: tellInVain(choice) };
}
