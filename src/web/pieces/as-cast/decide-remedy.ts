import type { AsCastConnection, Remedy } from '../../../assess/as-cast/as-cast-report.ts';
import { mayDo, type Permission } from '../../../assess/yard/rights.ts';
import { ENGINE_VERSION } from '../../../engine/version.ts';
import type { Person } from '../../../records/person.ts';
import type { WriteDraft } from '../../records/record-device.ts';
import { roleOf } from '../decide.ts';
import { factOf } from '../facts.ts';
import type { OpenPiece } from '../read-piece.ts';

/** As many records as a decision can name. */
const MOST_ABOUT = 50;

/** Records that say where the inserts of a connection are, each once: a decision about it rests on them. Empty: nobody measured any. */
function listGround({ rests }: Pick<AsCastConnection, 'rests'>): readonly string[] {
  return [...new Set(rests.map(({ id }) => id))].slice(0, MOST_ABOUT);
}

/** Whether this person may decide so, and in which role; without a survey nobody can. */
export function mayDecideRemedy(
  person: Person | null,
  connection: Pick<AsCastConnection, 'rests'>,
  remedy: Pick<Remedy, 'act'>,
): Permission {
  if (listGround(connection).length === 0) return { may: false, why: 'nothing is surveyed that it could rest on' };
  return mayDo(person, remedy.act);
}

/** A ratio without limit is no number that a record can hold. */
function finiteOf(ratio: number | null): number | null {
  return ratio !== null && Number.isFinite(ratio) ? ratio : null;
}

/** The record of a decision, with what was computed when it was made; null: this person may not. */
export function draftRemedy(
  piece: Pick<OpenPiece, 'id' | 'plan'>,
  found: AsCastConnection,
  remedy: Remedy,
  person: Person,
  reason: string,
): WriteDraft | null {
  const permission = mayDecideRemedy(person, found, remedy);
  if (!permission.may) return null;
  const role = roleOf(person, permission.as);
  const { key, mark } = found.connection;
  return {
    ...factOf(piece, null),
    kind: 'remedy-decided',
    body: {
      connection: key,
      connectionMark: mark,
      about: listGround(found),
      remedy: remedy.kind,
      change: remedy.change,
      words: remedy.words,
      role,
      registration: role === 'design engineer' ? person.registration : null,
      reason,
      computed: {
        state: remedy.verdict,
        ratio: finiteOf(remedy.ratio),
        clearance_mm: remedy.clearance?.margin ?? null,
        engine: ENGINE_VERSION,
      },
    },
  };
}
