import { type ComparedState, compareStates } from '../../assess/compare-states.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { indexJob } from '../../job/job-index.ts';
import { readJobDocument } from '../../job/read-job-document.ts';
import type { TellProgress } from './assess-run.ts';
import type { HeldJob } from './held-job.ts';
import { takeTurns } from './take-turns.ts';

/** What of a job is tried otherwise: panels, inserts and connections stay as they are. */
export interface OtherParts {
  readonly library?: Partial<JobFile['library']>;
  readonly concretes?: JobFile['job']['concretes'];
}

/** Every connection now and with something else; why the job cannot be so; or a newer question took over. */
export type OtherOutcome =
  | { readonly kind: 'compared'; readonly connections: readonly ComparedState[] }
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'replaced' };

/** How long to compute before messages are looked at [ms]. */
const LOT_MS = 12;

/**
 * Assesses a whole job as it is and as it would be with another edition, rules or catalogue. Nothing is changed.
 * @param isReplaced asked between lots
 */
export async function assessOther(
  held: HeldJob,
  { library = {}, concretes }: OtherParts,
  onProgress: TellProgress,
  isReplaced: () => boolean,
): Promise<OtherOutcome> {
  const { index } = held;
  const { file } = index;
  const read = readJobDocument({
    ...file,
    job: { ...file.job, concretes: concretes ?? file.job.concretes },
    library: { ...file.library, ...library },
  });
  if (!read.ok) return { kind: 'refused', why: read.faults.map(({ text }) => text).join(' · ') };
  const other = indexJob(read.file);
  const { connections } = file.job;
  const compared: ComparedState[] = [];
  const told: (void | Promise<void>)[] = [];
  while (compared.length < connections.length) {
    if (isReplaced()) return { kind: 'replaced' };
    const until = performance.now() + LOT_MS;
    do compared.push(compareStates(index, other, connections[compared.length]!));
    while (compared.length < connections.length && performance.now() < until);
    told.push(onProgress(compared.length, connections.length));
    await takeTurns();
  }
  await Promise.all(told);
  return { kind: 'compared', connections: compared };
}
