import { addClashes } from '../../assess/clash/add-clashes.ts';
import { type Finding, listFindings } from '../../assess/set-out/list-findings.ts';
import { planPour } from '../../assess/set-out/plan-pour.ts';
import type { PanelSetOut } from '../../assess/set-out/set-out.ts';
import type { HeldJob } from './held-job.ts';
import { takeTurns } from './take-turns.ts';

/** What is found about one pour, what stands against it first. */
export interface PourFindings {
  readonly pour: string;
  readonly findings: readonly Finding[];
}

export type TellPour = (findings: PourFindings) => void | Promise<void>;

/**
 * Plans every pour in turn and tells what is found of each, clashes in the form included; messages are taken between panels.
 * @returns false where `isReplaced` said that a newer question took over
 */
export async function findPourFindings(held: HeldJob, onPour: TellPour, isReplaced: () => boolean): Promise<boolean> {
  const { index } = held;
  const told: (void | Promise<void>)[] = [];
  for (const { id } of index.file.job.pours) {
    const plan = planPour(index, id);
    const setOuts: PanelSetOut[] = [];
    for (const setOut of plan.setOuts) {
      await takeTurns();
      if (isReplaced()) return false;
      setOuts.push(addClashes(index, setOut));
    }
    const findings = listFindings({ ...plan, setOuts });
    told.push(onPour({ pour: id, findings }));
  }
  await Promise.all(told);
  return true;
}
