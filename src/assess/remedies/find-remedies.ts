import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { handedMark } from '../../job/handed/mirror-connection.ts';
import { JobDraft } from '../choose/job-draft.ts';
import { openQuestion, openVerifying } from './question.ts';
import type { Attempt, Remedies, Remedy, Vain } from './remedy.ts';
import { tryInserts, tryTogether } from './try-inserts.ts';
import { tryConcrete, tryThicker } from './try-panel.ts';
import { tryPlace } from './try-place.ts';
import { tryBolts, tryPlate } from './try-steel.ts';

/** Moves along more axes than this say nothing more. */
const MOST_MOVES = 2;

/** A connection of a handed partner is changed where it comes from. */
function findSource({ job }: JobFile, connection: Connection): Connection {
  const panel = job.panels.find(({ mark }) => mark === connection.panel);
  if (panel === undefined || panel.handedOf === null) return connection;
  const source = job.connections.find(
    (one) => one.panel === panel.handedOf && handedMark(one.mark) === connection.mark,
  );
  return source ?? connection;
}

/** No more than a few moves, the shortest first. */
function limitMoves(remedies: readonly Remedy[]): readonly Remedy[] {
  const moves = remedies.filter(({ kind }) => kind === 'move').slice(0, MOST_MOVES);
  return remedies.filter((one) => one.kind !== 'move' || moves.includes(one));
}

/**
 * What would make a connection pass, each change by itself and as little of it as does: another insert, another place, stronger bolts, a
 * thicker plate, stronger concrete, a thicker panel; several at once only where none does alone. Each is verified: the changed panel reads without fault, the connection
 * passes its full check, and no other of the panel that passed fails.
 * @param mark of a connection of the job
 * @returns no remedies where it passes, where nothing says what it must carry, or where no rule covers its use or concrete
 * @throws Error where the job has no such connection
 */
export function findRemedies(file: JobFile, mark: string): Remedies {
  const asked = file.job.connections.find((one) => one.mark === mark);
  if (asked === undefined) throw new Error(`no connection ${mark}`);
  const connection = findSource(file, asked);
  const question = openQuestion(file, connection);
  const { state } = question.before;
  if (state === 'passes' || state === 'strength not checked')
    return { connection: connection.mark, state, remedies: [], inVain: [] };
  // No rule covers it, whichever insert, place or concrete it has: the answer's reasons say why.
  if (connection.uses.length > 0 || question.parts.mix.lightweight)
    return { connection: connection.mark, state, remedies: [], inVain: [] };
  const draft = new JobDraft(file);
  const verify = openVerifying(question);
  const remedies: Remedy[] = [];
  const inVain: Vain[] = [];
  const take = (attempt: Attempt) => {
    inVain.push(...attempt.inVain);
    for (const proposal of attempt.proposals) {
      const found = verify(proposal);
      if (found.kind === 'remedy') remedies.push(found.remedy);
      else inVain.push({ kind: 'refused', deed: proposal.deed, why: found.why });
    }
  };
  take(tryInserts(question, draft));
  take(tryPlace(question, draft));
  take(tryBolts(question));
  take(tryPlate(question));
  take(tryConcrete(question));
  take(tryThicker(question));
  if (remedies.length === 0) take(tryTogether(question, draft));
  return { connection: connection.mark, state, remedies: limitMoves(remedies), inVain };
}
