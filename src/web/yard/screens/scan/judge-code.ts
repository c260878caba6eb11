import type { JobFile } from '../../../../job/documents/job-file.ts';
import type { PieceCode } from '../../../../job/piece-code.ts';
import type { Issued } from '../../../../wire/revisions.ts';

/** What a sheet is held against: what the device has of the job, a connection or not. */
export interface JobOnDevice {
  readonly revisions: readonly Pick<Issued, 'letter' | 'status' | 'issuedAt' | 'fingerprint'>[];
  readonly inForce: { readonly letter: string; readonly fingerprint: string; readonly file: JobFile } | null;
}

/** Why nothing may be done by a sheet. */
export type VoidReason =
  /** A revision of this job that a later one took the place of. */
  | { readonly why: 'older'; readonly issuedAt: string }
  /** A revision of this job that was never for construction: preliminary, for approval, void. */
  | { readonly why: 'not for construction'; readonly status: string; readonly issuedAt: string }
  /** Printed from a state of the job that nobody issued, or newer than what this device has heard of. */
  | { readonly why: 'never issued' }
  | { readonly why: 'other project'; readonly project: string; readonly here: string | null };

/** What a sheet's code comes to. */
export type CodeJudgement =
  | { readonly kind: 'in force'; readonly panelKey: string; readonly mark: string; readonly serial: string | null }
  | {
      readonly kind: 'void';
      readonly reason: VoidReason;
      readonly sheetLetter: string;
      /** Letter of the revision in force; null: nothing is in force. */
      readonly inForce: string | null;
      /** The panel of that mark by the revision in force; null: it has none. */
      readonly panelKey: string | null;
      readonly mark: string;
      readonly serial: string | null;
    }
  /** The sheet is in force, and names a mark that the job does not have. */
  | { readonly kind: 'no such mark'; readonly mark: string; readonly inForce: string };

/** The project as sheets print it. */
export function nameProject({ project }: JobFile['job']): string {
  return project.number === null ? project.name : `${project.number} ${project.name}`;
}

/** Holds a sheet's code against the issued revisions: what is not printed from the revision in force is void. */
export function judgeCode(code: PieceCode, { revisions, inForce }: JobOnDevice): CodeJudgement {
  const { mark, serial } = code;
  const panel = inForce?.file.job.panels.find((one) => one.mark === mark) ?? null;
  const isOf = ({ fingerprint }: { readonly fingerprint: string }) =>
    code.fingerprint.length >= 12 && fingerprint.startsWith(code.fingerprint);
  if (inForce !== null && isOf(inForce))
    return panel === null
      ? { kind: 'no such mark', mark, inForce: inForce.letter }
      : { kind: 'in force', panelKey: panel.key, mark, serial };
  return {
    kind: 'void',
    reason: findReason(code, revisions.find(isOf), inForce?.file.job ?? null),
    sheetLetter: code.letter,
    inForce: inForce?.letter ?? null,
    panelKey: panel?.key ?? null,
    mark,
    serial,
  };
}

function findReason(
  code: PieceCode,
  issued: JobOnDevice['revisions'][number] | undefined,
  job: JobFile['job'] | null,
): VoidReason {
  if (issued !== undefined)
    return issued.status === 'for construction'
      ? { why: 'older', issuedAt: issued.issuedAt }
      : { why: 'not for construction', status: issued.status, issuedAt: issued.issuedAt };
  const here = job === null ? null : nameProject(job);
  return code.project === here ? { why: 'never issued' } : { why: 'other project', project: code.project, here };
}
