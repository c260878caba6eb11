import { nameReadiness } from '../../../../say/pour-words.ts';
import { StateMark } from '../../../parts/state-mark.tsx';
import type { PourFindings } from '../../../worker/pour-findings.ts';

/** Whether a pour may go ahead: shape, colour and words. */
export function Readiness({ found }: { readonly found: PourFindings | undefined }) {
  if (found === undefined) return <StateMark state="computing" words="looking …" />;
  return <StateMark state={found.isReady ? 'passes' : 'fails'} words={nameReadiness(found.findings)} />;
}
