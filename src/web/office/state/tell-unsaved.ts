import { tellCall } from '../../parts/call.ts';
import { tell } from './messages.ts';
import { calls } from './office-calls.ts';

/**
 * Tells why edits stay on this device although the server answers, and what can be done about it.
 * @param onRestored after a job that was removed elsewhere was put back
 */
export function tellUnsaved(job: string, status: number, why: string, onRestored: () => void): void {
  if (status !== 404) {
    const remedy = status < 500 ? ' Undo them, or save the job as a file.' : '';
    tell('fault', `The server does not take the last edits (${why}): they are on this device only.${remedy}`);
    return;
  }
  const restore = async () => {
    const called = await calls.restoreJob(job);
    if (called.kind === 'answered') onRestored();
    else tell('fault', tellCall(called) ?? '');
  };
  tell('fault', 'The job was removed elsewhere, so the last edits are on this device only.', {
    text: 'Put the job back',
    run: () => void restore(),
  });
}
