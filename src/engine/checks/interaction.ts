import type { Clause } from '../standards/clause.ts';
import type { InteractionRow, Step } from './result.ts';
import type { Run } from './run.ts';
import { loadRatio } from './verdict.ts';

/** Tension and shear together: steel insert by insert, concrete with the largest ratios of all modes. EN 1992-4, 7.2.3. */
export function checkInteraction(run: Run, rows: InteractionRow[] | null): void {
  checkSteel(run, rows);
  checkConcrete(run, rows);
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

function checkSteel(run: Run, rows: InteractionRow[] | null): void {
  const { p, actions, tally } = run;
  if (!p.steelInteracts) return;
  let worst = 0;
  let worstN = 0;
  let worstV = 0;
  for (const { tension, shear } of p.steelPairs) {
    for (const { N, V } of actions) {
      const n = loadRatio(N, tension);
      const v = loadRatio(V, shear);
      if (n === 0 || v === 0) continue;
      const ratio = p.edition.steelInteraction(n, v);
      if (ratio <= worst) continue;
      worst = ratio;
      worstN = n;
      worstV = v;
    }
  }
  if (worst === 0) return;
  tally.add(worst, 'interaction-steel');
  rows?.push(
    writeRow('steel', p.edition.clauses.steelInteraction, [worstN, worstV], worst, run.report?.keepsSteps ?? false),
  );
}

function checkConcrete(run: Run, rows: InteractionRow[] | null): void {
  const { p, tally } = run;
  const n = tally.concreteTension;
  const v = tally.concreteShear;
  if (n === 0 || v === 0) return;
  const oneSided = tally.barsCarryTension !== tally.barsCarryShear;
  const ratio = oneSided ? p.edition.reinforcedInteraction(n, v) : p.edition.concreteInteraction(n, v);
  tally.add(ratio, 'interaction-concrete');
  const clause = oneSided ? p.edition.clauses.reinforcedInteraction : p.edition.clauses.concreteInteraction;
  rows?.push(writeRow('concrete', clause, [n, v], ratio, run.report?.keepsSteps ?? false));
}
