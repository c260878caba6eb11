import type { Clause } from '../standards/clause.ts';
import type { Together } from '../standards/edition.ts';
import type { InteractionRow, Step } from './result.ts';
import type { Run } from './run.ts';
import { loadRatio } from './verdict.ts';

/**
 * Tension and shear together. Apart: steel insert by insert, concrete with the largest ratios of all its modes (EN 1992-4,
 * 7.2.3). All: the largest ratios of all modes (ACI 318, 17.8).
 */
export function checkInteraction(run: Run, rows: InteractionRow[] | null): void {
  const { together } = run.p.edition;
  if (together.kind === 'all') {
    checkAll(run, together.all, rows);
    return;
  }
  checkSteel(run, together.steel, rows);
  checkConcrete(run, together, rows);
}

function writeRow(
  kind: InteractionRow['kind'],
  clause: Clause,
  args: readonly number[],
  ratio: number,
  keepsSteps: boolean,
): InteractionRow {
  const steps: readonly Step[] = keepsSteps
    ? [{ kind: 'clause', clause, args, value: ratio, symbol: clause.symbol }]
    : [];
  return { kind, ratio, clause: clause.reference, steps };
}

function checkAll(run: Run, clause: Clause, rows: InteractionRow[] | null): void {
  const { tally } = run;
  const n = Math.max(tally.steelTension, tally.concreteTension);
  const v = Math.max(tally.steelShear, tally.concreteShear);
  if (n === 0 || v === 0) return;
  const ratio = clause.fn(n, v);
  tally.add(ratio, 'interaction-all');
  rows?.push(writeRow('all', clause, [n, v], ratio, run.report?.keepsSteps ?? false));
}

function checkSteel(run: Run, clause: Clause, rows: InteractionRow[] | null): void {
  const { p, actions, tally } = run;
  let worst = 0;
  let worstN = 0;
  let worstV = 0;
  for (const { tension, shear } of p.steelPairs) {
    for (const { N, V } of actions) {
      const n = loadRatio(N, tension);
      const v = loadRatio(V, shear);
      if (n === 0 || v === 0) continue;
      const ratio = clause.fn(n, v);
      if (ratio <= worst) continue;
      worst = ratio;
      worstN = n;
      worstV = v;
    }
  }
  if (worst === 0) return;
  tally.add(worst, 'interaction-steel');
  rows?.push(writeRow('steel', clause, [worstN, worstV], worst, run.report?.keepsSteps ?? false));
}

function checkConcrete(
  run: Run,
  { concrete, reinforced }: Extract<Together, { readonly kind: 'apart' }>,
  rows: InteractionRow[] | null,
): void {
  const { tally } = run;
  const n = tally.concreteTension;
  const v = tally.concreteShear;
  if (n === 0 || v === 0) return;
  const clause = tally.barsCarryTension !== tally.barsCarryShear ? reinforced : concrete;
  const ratio = clause.fn(n, v);
  tally.add(ratio, 'interaction-concrete');
  rows?.push(writeRow('concrete', clause, [n, v], ratio, run.report?.keepsSteps ?? false));
}
