import { useEffect, useState } from 'preact/hooks';
import type { Yard } from '../../../pieces/yard.ts';
import { tellError } from '../../state/use-asked.ts';
import { openYard } from './open-yard.ts';

/** How often a screen in sight asks for what the tablets have sent [ms]. */
const ASKS_EVERY = 4_000;

/** Where the office stands with the records of its job. */
export type YardDesk =
  | { readonly kind: 'opening' }
  | { readonly kind: 'failed'; readonly why: string }
  /** Another window of this browser took another job: the records of one job at a time are followed. */
  | { readonly kind: 'elsewhere' }
  /** Nothing is issued for construction, so that nobody may work in the yard. */
  | { readonly kind: 'not in force'; readonly yard: Yard }
  | { readonly kind: 'open'; readonly yard: Yard; readonly letter: string };

/** Opens the records of a job on this device and follows them while the screen is in sight. @param tries another number: try again */
export function useYardDesk(job: string, tries: number): YardDesk {
  const [yard, setYard] = useState<Yard | null>(null);
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    const state = { isGone: false };
    setWhy(null);
    openYard()
      .then(async (opened) => {
        const isTaken = await opened.device.takeJob(job);
        if (state.isGone) return;
        if (isTaken) setYard(opened);
        else setWhy('The server does not answer, and the records of this job were never on this device.');
      })
      .catch((error: unknown) => {
        if (!state.isGone) setWhy(tellError(error));
      });
    return () => {
      state.isGone = true;
    };
  }, [job, tries]);
  useEffect(() => {
    if (yard === null) return;
    const ask = () => {
      if (document.visibilityState === 'visible') void yard.device.syncNow();
    };
    const timer = setInterval(ask, ASKS_EVERY);
    return () => clearInterval(timer);
  }, [yard]);
  if (why !== null) return { kind: 'failed', why };
  const known = yard?.device.job.value ?? null;
  if (yard === null || known === null) return { kind: 'opening' };
  if (known.id !== job) return { kind: 'elsewhere' };
  if (known.inForce === null) return { kind: 'not in force', yard };
  return { kind: 'open', yard, letter: known.inForce.letter };
}
