import type { OpenJob } from '../../../wire/jobs.ts';
import { tell } from './messages.ts';
import type { Outbox } from './outbox.ts';
import { setAside, tellOfStranded } from './stranded-edits.ts';
import { tellError } from './use-asked.ts';
import { readWaiting, type Waiting } from './waiting-edits.ts';

/**
 * Tells of edits that another window left on this device when it was closed: they are taken when the job is opened.
 * @returns whether there are any
 */
export async function tellOfLeft(
  job: string,
  outbox: Outbox,
  editor: string,
  openEditors: ReadonlySet<string>,
): Promise<boolean> {
  const left = (await outbox.list(job)).filter((one) => one.editor !== editor && !openEditors.has(one.editor));
  if (left.length === 0) return false;
  const count = left.length === 1 ? '1 edit' : `${left.length} edits`;
  tell('fault', `${count} of a window that was closed did not reach the server: on this device only.`, {
    text: 'Open the job again with them',
    run: () => location.reload(),
  });
  return true;
}

/**
 * What this device has of a job besides what the server has. Edits that belong to no state of the server are set aside; the person is told of
 * them, and where the browser does not give what it keeps.
 */
export async function findLeftBehind(
  opened: OpenJob,
  outbox: Outbox,
  editor: string,
  openEditors: ReadonlySet<string>,
): Promise<Waiting> {
  try {
    const left = await outbox.list(opened.id);
    const waiting = await readWaiting(opened, left, outbox, editor, openEditors);
    if (waiting.kind === 'stranded') await setAside(opened.id, waiting.edits, outbox);
    await tellOfStranded(opened.id, opened.file.job.project.name, outbox);
    return waiting;
  } catch (error) {
    tell(
      'fault',
      `Whether this device still has edits of the job could not be found out: ${tellError(error)}. Edits from now on go to the server.`,
    );
    return { kind: 'nothing' };
  }
}
