import type { JobFile } from '../job/documents/job-file.ts';

/** A job at a version. */
export interface Draft {
  readonly version: number;
  readonly file: JobFile;
}

/** The last state of the jobs in use, so that an edit does not read a whole job again. One process owns the data, so it cannot be behind. */
export interface DraftCache {
  readonly find: (id: string, version: number) => JobFile | null;
  readonly put: (id: string, draft: Draft) => void;
}

/** @param most number of jobs; the one not used for longest goes first */
export function makeDraftCache(most: number): DraftCache {
  const drafts = new Map<string, Draft>();
  const put = (id: string, draft: Draft): void => {
    drafts.delete(id);
    drafts.set(id, draft);
    const [oldest] = drafts.keys();
    if (drafts.size > most && oldest !== undefined) drafts.delete(oldest);
  };
  const find = (id: string, version: number): JobFile | null => {
    const draft = drafts.get(id);
    if (draft?.version !== version) return null;
    put(id, draft);
    return draft.file;
  };
  return { find, put };
}
