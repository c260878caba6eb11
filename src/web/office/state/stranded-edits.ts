import { download, fileNameOf } from '../../parts/download.ts';
import { tell } from './messages.ts';
import type { Outbox, WaitingEdit } from './outbox.ts';

/** Where edits lie that belong to no state of the server: beside the job, so that they are never put on another state by mistake. */
const asideOf = (job: string) => `${job} aside`;

/** Sets edits aside that were made on a state which the server no longer has. They stay on this device. */
export function setAside(job: string, edits: readonly WaitingEdit[], outbox: Outbox): Promise<void> {
  return outbox.put(edits.map((one) => ({ ...one, job: asideOf(job) })));
}

/** Tells of edits that were set aside, until the person has them as a file. */
export async function tellOfStranded(job: string, name: string, outbox: Outbox): Promise<void> {
  const edits = await outbox.list(asideOf(job));
  if (edits.length === 0) return;
  const labels = edits.slice(-3).map(({ edit }) => edit.label);
  tell(
    'fault',
    `${edits.length === 1 ? '1 edit' : `${edits.length} edits`} of this device were made on a state of the job that the server no longer has, ` +
      `so they are not in it: ${labels.join('; ')}. They stay on this device.`,
    {
      text: 'Save them as a file',
      run: () => {
        const content = edits.map(({ edit }) => edit);
        download(`${fileNameOf(name)}-edits.json`, JSON.stringify(content, null, 1), 'application/json');
        void outbox.remove(edits.map(({ id }) => id));
      },
    },
  );
}
