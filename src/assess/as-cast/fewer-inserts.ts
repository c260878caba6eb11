import type { Connection } from '../../job/documents/connection.ts';
import type { Remedy } from './as-cast-report.ts';
import { NO_CHANGE, type RemedyQuestion } from './attempt.ts';
import type { CastMember } from './cast-panel.ts';
import { completeRemedy, refuseRemedy } from './complete-remedy.ts';
import { findDepthNeeds, packUp, tellDepthNeeds } from './depth-needs.ts';
import { pickBest } from './pick-best.ts';
import { moveToBest } from './site-remedies.ts';

/** No plate is left on fewer bolts, unless it was designed so: on one it turns. */
export const LEAST_BOLTS = 2;
/** As many are left out at once, at most. */
const MOST_LEFT_OUT = 2;

/** Every choice of so many of some. */
function choose<T>(of: readonly T[], count: number): readonly (readonly T[])[] {
  if (count === 0) return [[]];
  return of.flatMap((one, i) => choose(of.slice(i + 1), count - 1).map((rest) => [one, ...rest]));
}

function leaveOut(question: RemedyQuestion, unused: readonly CastMember[]): Remedy {
  const { connection, fixture } = question;
  const ids = new Set(unused.map(({ castIn }) => castIn.id));
  const fewer: Connection = { ...connection, inserts: connection.inserts.filter(({ insert }) => !ids.has(insert)) };
  const needs = findDepthNeeds(question, fewer);
  const packed = packUp(fewer, needs);
  const moved = fixture === null ? null : moveToBest(question, packed, fixture, fixture.holes);
  const numbers = unused.map(({ insert }) => insert.item.number).join(', ');
  return completeRemedy(question, {
    kind: 'fewer inserts',
    words: `No bolt in no. ${numbers}; the other ${fewer.inserts.length} carry all.`,
    placed: moved?.placed ?? packed,
    holes: fixture?.holes ?? null,
    change: {
      ...NO_CHANGE,
      move: moved?.move ?? null,
      unused: unused.map(({ castIn }) => castIn.key),
      packers_mm: needs.packers,
    },
    conditions: [...tellDepthNeeds(needs), `fill and seal no. ${numbers}`],
    faults: [],
    provenWithin: moved?.provenWithin ?? 0,
  });
}

/** Leaves bolts out: one where that works, else two, never so that a plate hangs on one. */
export function tryFewerInserts(question: RemedyQuestion): Remedy {
  const { members } = question;
  const words = 'Leave bolts out.';
  if (members.length <= LEAST_BOLTS)
    return refuseRemedy(question, 'fewer inserts', words, [
      `it has ${members.length === 1 ? 'one bolt' : 'two bolts'}: no plate is left on fewer than two`,
    ]);
  const most = Math.min(MOST_LEFT_OUT, members.length - LEAST_BOLTS);
  let best: Remedy | undefined;
  for (let count = 1; count <= most && best?.verdict !== 'works'; count += 1) {
    const tried = choose(members, count).map((unused) => leaveOut(question, unused));
    best = pickBest([...(best === undefined ? [] : [best]), ...tried]);
  }
  return best!; // one at least was tried
}
