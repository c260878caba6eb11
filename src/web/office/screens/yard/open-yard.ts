import { Yard } from '../../../pieces/yard.ts';
import { openDevice } from '../../../records/open-device.ts';

/** The records on this device as the office reads them: opened at the first need, once for the page. */
const opened: { yard: Promise<Yard> | null } = { yard: null };

/** Rejects, in words, where the browser keeps nothing; the next call tries again. */
export function openYard(): Promise<Yard> {
  opened.yard ??= openDevice().then(
    (device) => new Yard(device),
    (error: unknown) => {
      opened.yard = null;
      throw error;
    },
  );
  return opened.yard;
}
