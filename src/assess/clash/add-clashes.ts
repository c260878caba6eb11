import type { JobIndex } from '../../job/job-index.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';
import type { SetOutProblem } from '../set-out/set-out-problem.ts';
import type { ReportedClash } from './clash-report.ts';
import { describeClash } from './describe-clash.ts';
import { formClashWords } from './form-clash-words.ts';
import { reportClashes } from './report-clashes.ts';

/**
 * A set-out with what meets what in the form among its findings. A clash is an error while only the design engineer can decide it; with a legal
 * way out it is to be looked at. What could not be looked at is said too.
 */
export function addClashes(index: JobIndex, setOut: PanelSetOut): PanelSetOut {
  const { panel } = setOut;
  const { clashes, unknown } = reportClashes(index, panel, setOut.bed);
  const words = formClashWords(setOut);
  // Too little cover at a side is told with the covers of its assembly; here only what comes out there.
  const isTold = ({ b, clearance_mm }: ReportedClash) =>
    (b.kind === 'edge' || b.kind === 'opening') && clearance_mm > 0;
  const found = clashes
    .filter((clash) => !isTold(clash))
    .map(
      (clash): SetOutProblem => ({
        severity: clash.remedy === null ? 'error' : 'warning',
        kind: 'clash',
        panel: panel.mark,
        insert: clash.a.id,
        text: describeClash(clash, words),
      }),
    );
  const open = unknown.map(
    (text): SetOutProblem => ({
      severity: 'warning',
      kind: 'clash',
      panel: panel.mark,
      insert: null,
      text: `not looked at for clashes: ${text}`,
    }),
  );
  return { ...setOut, problems: [...setOut.problems, ...found, ...open] };
}
