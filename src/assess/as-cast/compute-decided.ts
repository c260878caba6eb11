import type { BodyOf } from '../../records/record.ts';
import type { Remedy } from './as-cast-report.ts';
import type { Change, RemedyQuestion } from './attempt.ts';
import { changeHoles } from './change-holes.ts';
import { completeRemedy } from './complete-remedy.ts';
import { findDepthNeeds, keepBolts, tellDepthNeeds } from './depth-needs.ts';
import { LEAST_BOLTS } from './fewer-inserts.ts';
import { movePlate } from './plate-place.ts';

/** What of a decision no longer fits what is drawn, and a plate that it leaves on too few bolts. In words. */
function listMisfits(
  { connection, fixture, members }: RemedyQuestion,
  change: Change,
  left: number,
): readonly string[] {
  const holes = change.holes.filter(({ id }) => fixture?.holes.every((hole) => hole.id !== id) ?? true);
  const unused = change.unused.filter((key) => members.every(({ castIn }) => castIn.key !== key));
  return [
    ...holes.map(({ id }) => `hole ${id}, which it changes, is not in the plate as drawn now`),
    ...unused.map((key) => `insert ${key}, which it leaves out, is not in the connection as drawn now`),
    ...(left < Math.min(LEAST_BOLTS, connection.inserts.length)
      ? [`it leaves ${left === 0 ? 'no bolt' : 'one bolt'}: no plate is left on fewer than two`]
      : []),
  ];
}

/** What was decided, computed anew by its own numbers: it may have been computed by another engine, on another job. */
export function computeDecided(question: RemedyQuestion, { remedy, change, words }: BodyOf<'remedy-decided'>): Remedy {
  const { connection, fixture, cast } = question;
  const unused = new Set(change.unused);
  const inserts = connection.inserts.filter(({ insert }) => {
    const key = cast.members.get(insert)?.castIn.key;
    return key === undefined || !unused.has(key);
  });
  const given = { ...connection, inserts, packers_mm: change.packers_mm ?? connection.packers_mm };
  const needs = findDepthNeeds(question, given);
  const proud = needs.proud.map(
    ({ insert: { item } }) => `the plate does not lie flat: no. ${item.number} stands out of the face`,
  );
  const kept = remedy === 'as is' ? keepBolts({ ...question, connection: given }, needs) : null;
  const holes = fixture === null ? null : changeHoles(fixture.holes, change);
  const plate = fixture === null || holes === null || change.holes.length === 0 ? null : { ...fixture, holes };
  const based = kept?.connection ?? given;
  const changed = plate === null ? based : { ...based, fixture: plate };
  const computed = completeRemedy(question, {
    kind: remedy,
    words,
    placed: change.move === null || fixture === null ? changed : movePlate(cast.panel, changed, fixture, change.move),
    holes,
    change,
    conditions: kept === null ? tellDepthNeeds({ ...needs, packers: null }) : [],
    faults: [...listMisfits(question, change, inserts.length), ...proud, ...(kept?.faults ?? [])],
    provenWithin: 0,
  });
  if (remedy !== 'not usable') return computed;
  return { ...computed, verdict: 'does not work', act: 'change the design', ratio: null, clearance: null };
}
