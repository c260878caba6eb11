import type { RecordList } from '../../../wire/records.ts';
import { changeMeta, readMeta } from '../device-meta.ts';
import type { RecordDatabase } from '../record-db.ts';
import { pullPieces, pullTexts } from './pull-texts.ts';
import { pushPhotos } from './push-photos.ts';
import { listUnsentJobs, pushTexts } from './push-texts.ts';
import { recordCalls } from './record-calls.ts';
import { refreshJob } from './refresh-job.ts';
import { sendAllAgain } from './send-all-again.ts';
import type { Step } from './step.ts';

/** What every answer tells of the server's log. */
type LogTold = Pick<RecordList, 'head' | 'isKnown' | 'now'>;

/** What a round tells while it runs. */
export interface RoundListener {
  readonly onState: (state: 'sending' | 'fetching') => void;
  /** Something in the lists of what is unsent has changed, or the server was heard. */
  readonly onHeard: () => Promise<void>;
  readonly onJob: () => Promise<void>;
  readonly onPieces: (job: string, pieces: ReadonlySet<string>) => Promise<void>;
}

export interface RoundResult {
  readonly isServerThere: boolean;
  /** Why the server would not take something. */
  readonly refused: string | null;
  /** Why the server would not give what is new of the job. */
  readonly withheld: string | null;
  /** Why this device could not go on. */
  readonly fault: string | null;
  readonly isPutBack: boolean;
}

/**
 * Sends what waits, of every job, then fetches what is new of the job that the device works on, then sends photos. Broken off anywhere, what was done
 * stays done and the next round goes on there.
 * @param job null: none is taken
 */
export async function runRound(
  db: RecordDatabase,
  job: string | null,
  { onState, onHeard, onJob, onPieces }: RoundListener,
): Promise<RoundResult> {
  const refused: string[] = [];
  const withheld: string[] = [];
  let isPutBack = false;
  const hear = async (answer: LogTold, sentAt: number) => {
    await hearServer(db, answer, sentAt);
    await onHeard();
  };
  /** False: the server does not answer, and the round is over. */
  const goesOn = <T>(step: Step<T>, reasons = refused): boolean => {
    if (step.kind === 'refused') reasons.push(step.why);
    return step.kind !== 'away';
  };
  const end = (isServerThere: boolean) => ({
    isServerThere,
    refused: refused.at(-1) ?? null,
    withheld: withheld[0] ?? null,
    fault: null,
    isPutBack,
  });

  const unsentJobs = await listUnsentJobs(db);
  // Where there is nothing to send and nothing to fetch, it is still said whether the server is there.
  if (unsentJobs.length === 0 && job === null && (await recordCalls.health()).kind === 'away') return end(false);
  onState('sending');
  for (const waiting of unsentJobs) {
    const pushed = await pushTexts(db, waiting, hear);
    if (!goesOn(pushed)) return end(false);
    if (pushed.kind !== 'done') continue;
    if (pushed.value.refused !== null) refused.push(pushed.value.refused);
    if (!goesOn(await pullPieces(db, waiting, pushed.value.pieces, (pieces) => onPieces(waiting, pieces))))
      return end(false);
  }
  if (job !== null) {
    onState('fetching');
    if (!goesOn(await refreshJob(db, job, hear), withheld)) return end(false);
    await onJob();
    const pulled = await pullTexts(db, job, hear, (pieces) => onPieces(job, pieces));
    if (!goesOn(pulled, withheld)) return end(false);
  }
  if ((await readMeta(db)).isLogOther === true) {
    isPutBack = true;
    await sendAllAgain(db);
    await onHeard();
  }
  onState('sending');
  const photos = await pushPhotos(db, onHeard);
  if (!goesOn(photos)) return end(false);
  if (photos.kind === 'done' && photos.value.refused !== null) refused.push(photos.value.refused);
  return end(true);
}

/**
 * Keeps what an answer says of the server: the end of its log, and its clock less ours, taken as read half way between asking and hearing.
 * @param sentAt our clock when the call went out [ms]
 */
async function hearServer(db: RecordDatabase, { head, isKnown, now }: LogTold, sentAt: number): Promise<void> {
  const heardAt = Date.now();
  const clock_s = Math.round((Date.parse(now) - (sentAt + heardAt) / 2) / 100) / 10;
  const lastSyncAt = new Date(heardAt).toISOString();
  await changeMeta(
    db,
    (meta) => ({ ...meta, clock_s, lastSyncAt, head, ...(isKnown ? {} : { isLogOther: true as const }) }),
    'relaxed',
  );
}
