import { createHash } from 'node:crypto';
import { checkAsides } from '../records/verify/check-asides.ts';
import { checkHead, checkLines, type WrittenHead } from '../records/verify/check-lines.ts';
import { checkPhotos } from '../records/verify/check-photos.ts';
import { type ExaminedLine, examineLine } from '../records/verify/examine-line.ts';
import type { Finding } from '../records/verify/finding.ts';
import type { Store } from '../store/store.ts';

/** What was looked at in a store, and what was found. */
export interface VerifiedStore {
  readonly records: number;
  readonly jobs: number;
  readonly devices: number;
  readonly photos: number;
  readonly findings: readonly Finding[];
  /** Mark and serial of the pieces that records name. */
  readonly pieces: ReadonlyMap<string, string>;
  /** Where the log ends; null: it has no line. */
  readonly head: WrittenHead | null;
}

/** Reads the whole log, page by page; the texts are let go of. */
async function readLines(store: Pick<Store, 'readLog'>): Promise<readonly ExaminedLine[]> {
  const lines: ExaminedLine[] = [];
  for (;;) {
    const page = await store.readLog(lines.at(-1)?.line ?? 0);
    if (page.length === 0) return lines;
    for (const row of page) lines.push(examineLine(row));
  }
}

/** Looks at every record and every photo of a store. @param head one that was written down earlier */
export async function verifyStore(
  store: Pick<Store, 'readLog' | 'readAsides' | 'openPhoto'>,
  head: WrittenHead | null,
): Promise<VerifiedStore> {
  const lines = await readLines(store);
  const asides = await store.readAsides();
  const asideIds = new Set(asides.flatMap(({ id }) => (id === null ? [] : [id])));
  const photos = lines.flatMap(({ photo, at }) => (photo === null ? [] : [{ photo, at }]));
  const photoFindings = await checkPhotos(photos, async (photo) => {
    const stored = await store.openPhoto(photo);
    return stored === null ? null : createHash('sha256').update(stored.bytes).digest('hex');
  });
  const byNumber = new Map(lines.map((line) => [line.line, line]));
  const last = lines.at(-1);
  return {
    records: lines.length,
    jobs: new Set(lines.map(({ job }) => job)).size,
    devices: new Set(lines.map(({ device }) => device)).size,
    photos: photos.length,
    findings: [
      ...(head === null ? [] : checkHead(byNumber, head, null)),
      ...checkLines(lines, asideIds),
      ...photoFindings,
      ...checkAsides(asides),
    ],
    pieces: new Map(
      lines.flatMap(({ marked }) => (marked === null ? [] : [[marked.piece, `${marked.mark} no. ${marked.serial}`]])),
    ),
    head: last === undefined ? null : { number: last.line, hash: last.logHash },
  };
}
