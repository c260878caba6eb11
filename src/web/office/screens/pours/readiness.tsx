import { useMemo } from 'preact/hooks';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import type { Pour } from '../../../../job/documents/pour.ts';
import { type IssueWarning, listIssueWarnings } from '../../../../say/issue-words.ts';
import { tellReadiness } from '../../../../say/pour-words.ts';
import { StateMark } from '../../../parts/state-mark.tsx';
import type { PourFindings } from '../../../worker/pour-findings.ts';
import { useOffice } from '../../state/office.ts';

/** What the connections in the panels of a pour do not pass. */
interface Strength {
  readonly warnings: readonly IssueWarning[];
  /** Connections without an answer yet. */
  readonly computing: number;
}

/** Follows the answers: what shows it is drawn anew as they come. */
export function usePourStrength({ job }: JobFile, { pieces }: Pour): Strength {
  const { answers } = useOffice();
  const own = useMemo(() => {
    const marks = new Set(pieces.map(({ panel }) => panel));
    return job.connections.filter(({ panel }) => marks.has(panel));
  }, [job.connections, pieces]);
  const known = own.flatMap(({ key }) => answers.byKey.value.get(key) ?? []);
  return { warnings: listIssueWarnings(known), computing: own.length - known.length };
}

/** Whether a pour may go ahead: shape, colour and words. */
export function Readiness({
  file,
  pour,
  found,
}: {
  readonly file: JobFile;
  readonly pour: Pour;
  readonly found: PourFindings | undefined;
}) {
  const { warnings, computing } = usePourStrength(file, pour);
  if (found === undefined) return <StateMark state="computing" words="looking …" />;
  const { state, words } = tellReadiness(found.findings, warnings, computing);
  return <StateMark state={state} words={words} />;
}
