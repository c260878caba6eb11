import type { LogHead, RecordList, TookRecords, YardJob } from '../../../wire/records.ts';
import { call } from '../../parts/call.ts';

/** Records of one call: small enough that a weak line carries it before it breaks. */
export const TEXTS_A_CALL = 100;
/** Where no answer came to as many. */
export const TEXTS_ON_WEAK_LINE = 10;

/** A photo on a weak line takes its time [ms]. */
const PHOTO_PATIENCE = 120_000;

const at = (job: string, rest: string) => `/api/jobs/${encodeURIComponent(job)}${rest}`;

/** The end of the server's log as last heard, to be asked whether it is the same log still. */
function askKnown(known: LogHead | null): string {
  return known === null || known.hash === null ? '' : `known=${known.number}:${known.hash}&`;
}

/** What became of a photo on its way. */
export type PhotoSent = { readonly kind: 'taken' | 'away' } | { readonly kind: 'refused'; readonly why: string };

/** Everything that a device asks of the server, one line a route of wire/routes.ts; photos go as bytes. */
export const recordCalls = {
  health: () => call<{ readonly ok: true }>('GET', '/api/health'),
  yardJob: (job: string, have: string | null, known: LogHead | null) =>
    call<YardJob>('GET', at(job, `/yard?${askKnown(known)}${have === null ? '' : `have=${have}`}`)),
  takeRecords: (job: string, texts: readonly string[], known: LogHead | null) =>
    call<TookRecords>('POST', at(job, `/records?${askKnown(known)}`), { texts }),
  listRecords: (job: string, after: number, known: LogHead | null) =>
    call<RecordList>('GET', at(job, `/records?${askKnown(known)}after=${after}`)),
  listOfPieces: (job: string, after: number, pieces: readonly string[]) =>
    call<RecordList>('GET', at(job, `/records?after=${after}&pieces=${pieces.join(',')}`)),
  heldPhotos: (photos: readonly string[]) =>
    call<{ readonly held: readonly string[] }>('POST', '/api/photos/held', { photos }),
  sendPhoto: async (hash: string, type: string, bytes: ArrayBuffer): Promise<PhotoSent> => {
    try {
      const response = await fetch(`/api/photos/${hash}`, {
        method: 'PUT',
        body: bytes,
        headers: { 'content-type': type },
        signal: AbortSignal.timeout(PHOTO_PATIENCE),
      });
      if (response.ok) return { kind: 'taken' };
      const { message } = (await response.json()) as { readonly message: string };
      return { kind: 'refused', why: message };
    } catch {
      return { kind: 'away' };
    }
  },
  /** Null where the server has none or does not answer. */
  fetchPhoto: async (hash: string): Promise<Blob | null> => {
    try {
      const response = await fetch(`/api/photos/${hash}`, { signal: AbortSignal.timeout(PHOTO_PATIENCE) });
      return response.ok ? await response.blob() : null;
    } catch {
      return null;
    }
  },
};
