import { findTested } from './find-tested.ts';
import { writeMessage } from './messages.ts';
import { nameMembers, type Run } from './run.ts';
import { loadRatio } from './verdict.ts';

/** Pull-out of the foot, for the most loaded insert. EN 1992-4, 7.2.1.5. */
export function checkPullOut(run: Run): void {
  const { p, actions, report } = run;
  let worst = 0;
  for (let i = 1; i < actions.length; i++) if (actions[i]!.N > actions[worst]!.N) worst = i;
  const force = actions[worst]!.N;
  const { characteristic, safety, design } = p.pullOut;
  if (force > 0 && run.hasAction) run.tally.addConcreteTension(loadRatio(force, design), 'pull-out');
  if (report === null) return;
  const head = { mode: 'pull-out', inserts: nameMembers(run, [worst]), clause: p.edition.clauses.pullOut } as const;
  if (force <= 0) {
    report.skip(head, writeMessage('no-tension'));
    return;
  }
  report.open(head);
  const { insert, concrete } = p.group;
  const tested = findTested(p.group, 'pull-out');
  if (tested !== null) {
    report.note(writeMessage('tested', { report: tested.report }));
    report.quantity('N_Rk_p', tested.characteristic, 'N', `test report ${tested.report}`);
    report.basic(characteristic);
  } else {
    for (const test of insert.tested)
      if (test.mode === 'pull-out')
        report.note(writeMessage('tested-strength', { report: test.report, value: test.fromStrength }));
    const area = p.edition.bearingArea(insert, report);
    p.edition.pullOut(area, concrete.strength, concrete.cracked, report);
    p.edition.concreteSafety('pull-out', p.group, report);
  }
  report.note(writeMessage('cross-bar'));
  report.close(characteristic, safety, run.hasAction ? force : null);
}
