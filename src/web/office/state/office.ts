import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Answers } from './answers.ts';
import type { JobSession } from './session.ts';

/** What every screen of an open job works with. */
export interface Office {
  readonly session: JobSession;
  readonly answers: Answers;
}

export const OfficeContext = createContext<Office | null>(null);

/** @throws Error outside an open job: a screen that needs one was put elsewhere */
export function useOffice(): Office {
  const office = useContext(OfficeContext);
  if (office === null) throw new Error('no job is open around this screen');
  return office;
}
