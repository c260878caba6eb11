import { assessConnection } from '../../assess/assess-connection.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { Edit } from '../../job/edit/edit.ts';
import { applyEdit } from '../../job/edit/edit-job.ts';
import { indexJob } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import type { HeldJob } from './held-job.ts';

/** One connection before and after an edit that is not made yet. */
export interface PreviewedConnection {
  readonly mark: string;
  readonly panel: string;
  readonly before: Pick<ConnectionAnswer, 'state' | 'ratio'>;
  readonly after: Pick<ConnectionAnswer, 'state' | 'ratio'>;
}

function assess(file: JobFile, marks: ReadonlySet<string>): ReadonlyMap<string, ConnectionAnswer> {
  const index = indexJob(file);
  const asked = file.job.connections.filter(({ mark }) => marks.has(mark));
  return new Map(asked.map((one) => [one.mark, assessConnection(resolveConnection(index, one))]));
}

const short = ({ state, ratio }: ConnectionAnswer) => ({ state, ratio });

/**
 * What an edit would do to some connections; the held job stays as it is.
 * @throws Error where the edit was made on another state
 */
export function previewInHeld(
  { file }: HeldJob,
  changes: Edit['changes'],
  marks: readonly string[],
): readonly PreviewedConnection[] {
  const wanted = new Set(marks);
  const edit: Edit = { id: 'preview', label: 'preview', at: new Date(0).toISOString(), changes, back: changes };
  const before = assess(file, wanted);
  const after = assess(applyEdit(file, edit), wanted);
  return [...before.values()].flatMap((was) => {
    const is = after.get(was.mark);
    return is === undefined ? [] : [{ mark: was.mark, panel: was.panel, before: short(was), after: short(is) }];
  });
}
