import { roundForText, writeMessage } from './messages.ts';
import type { PreparedPart } from './prepared.ts';
import { nameMembers, type Run } from './run.ts';
import { findDesign, loadRatio } from './verdict.ts';

function findLargest({ actions }: Run, force: 'N' | 'V'): number {
  let best = 0;
  for (let i = 1; i < actions.length; i++) if (actions[i]![force] > actions[best]![force]) best = i;
  return best;
}

/** Steel in tension: one row a part, for the most loaded insert. EN 1992-4, 7.2.1.3. */
export function checkSteelTension(run: Run): void {
  const { p, actions, report, tally } = run;
  const worst = findLargest(run, 'N');
  const action = Math.max(0, actions[worst]!.N);
  for (const { part, tension } of p.parts) {
    if (tension === null) continue;
    if (run.hasAction) tally.addSteelTension(loadRatio(action, tension.design));
    if (report === null) continue;
    const clause = p.edition.clauses.steelTension;
    const head = { mode: 'steel-tension', part: part.name, inserts: nameMembers(run, [worst]), clause } as const;
    if (action === 0) {
      report.skip(head, writeMessage('no-tension'));
      continue;
    }
    report.open(head);
    report.basic(p.edition.steelTension(part, report));
    if (p.group.partialFactors.steelTension === null) p.edition.steelTensionSafety(part, p.group.insert, report);
    report.close(tension.characteristic, tension.safety, run.hasAction ? action : null);
  }
  if (action > 0) {
    checkTested(run, 'steel-tension', worst, action);
    if (p.parts.every((part) => part.tension === null) && p.tested.tension === null)
      tally.refuse(writeMessage('no-steel-part', { load: 'tension' }));
  }
}

/** A tested resistance of the whole insert stands beside the parts: the lower governs. */
function checkTested(run: Run, mode: 'steel-tension' | 'steel-shear', insert: number, action: number): void {
  const { p, report } = run;
  const inTension = mode === 'steel-tension';
  const tested = inTension ? p.tested.tension : p.tested.shear;
  if (tested === null) return;
  if (run.hasAction) {
    const ratio = loadRatio(action, tested.design);
    if (inTension) run.tally.addSteelTension(ratio);
    else run.tally.addSteelShear(ratio);
  }
  if (report === null) return;
  const clause = inTension ? p.edition.clauses.steelTension : p.edition.clauses.steelShear;
  report.open({ mode, part: 'insert as tested', inserts: nameMembers(run, [insert]), clause });
  report.note(writeMessage('tested', { report: tested.report }));
  report.quantity(inTension ? 'N_Rk_s' : 'V_Rk_s', tested.characteristic, 'N', `test report ${tested.report}`);
  report.close(tested.characteristic, tested.safety, run.hasAction ? action : null);
}

/** Steel in shear, with or without lever arm: one row a part, for the most loaded insert. EN 1992-4, 7.2.2.3. */
export function checkSteelShear(run: Run): void {
  const { p, actions, report, tally } = run;
  const worst = findLargest(run, 'V');
  const action = actions[worst]!.V;
  const { leverArmShear } = p.edition;
  const leverArm = leverArmShear === null ? null : p.group.leverArm;
  const clause = leverArm === null ? p.edition.clauses.steelShear : p.edition.clauses.leverArm;
  for (const prepared of p.parts) {
    const { part, shear, tension } = prepared;
    if (shear === null) continue;
    if (action > 0 && leverArm !== null && tension !== null && part.isEmbedded !== true) {
      checkLeverArm(run, prepared);
      continue;
    }
    const isUncovered = p.group.leverArm !== null && leverArm === null && part.isEmbedded !== true;
    if (action > 0 && run.hasAction && !isUncovered) tally.addSteelShear(loadRatio(action, shear.design));
    if (report === null) continue;
    const head = { mode: 'steel-shear', part: part.name, inserts: nameMembers(run, [worst]), clause } as const;
    if (action === 0) {
      report.skip(head, writeMessage('no-shear'));
      continue;
    }
    if (isUncovered) {
      const value = roundForText(p.group.leverArm?.length ?? 0);
      report.skip(head, writeMessage('lever-arm-uncovered', { value, document: p.edition.document }));
      continue;
    }
    report.open(head);
    if (p.group.leverArm === null) report.note(writeMessage('no-lever-arm'));
    const { elongation, areaReduction } = p.group.insert;
    if (elongation === null || (p.edition.needsAreaReduction && areaReduction === null))
      report.note(writeMessage('ductility-unknown'));
    p.edition.steelShear(part, p.group, report);
    if (p.group.partialFactors.steelShear === null) p.edition.steelShearSafety(part, p.group.insert, report);
    report.close(shear.characteristic, shear.safety, run.hasAction ? action : null);
  }
  if (leverArm === null && action > 0) checkTested(run, 'steel-shear', worst, action);
  if (action > 0 && p.parts.every((part) => part.shear === null) && p.tested.shear === null)
    tally.refuse(writeMessage('no-steel-part', { load: 'shear' }));
}

/** With a lever arm each insert's own tension counts, so the worst is looked for over all of them. */
function checkLeverArm(run: Run, { part, shear, tension }: PreparedPart): void {
  const { p, actions, report } = run;
  const { leverArm } = p.group;
  const { leverArmShear } = p.edition;
  if (leverArm === null || leverArmShear === null || shear === null || tension === null) return;
  let worst = 0;
  let worstRatio = -1;
  for (let i = 0; i < actions.length; i++) {
    const force = actions[i]!.V;
    const pull = run.hasAction ? actions[i]!.N : 0;
    // However short the arm, bending gives no more than plain shear.
    const bending = leverArmShear(part, leverArm, pull, tension.design, null);
    const design = findDesign(p, Math.min(bending, shear.characteristic), shear.safety);
    const ratio = loadRatio(force, design);
    if (ratio > worstRatio) {
      worstRatio = ratio;
      worst = i;
    }
  }
  if (run.hasAction) run.tally.addSteelShear(worstRatio);
  if (report === null) return;
  const inserts = nameMembers(run, [worst]);
  report.open({ mode: 'steel-shear', part: part.name, inserts, clause: p.edition.clauses.leverArm });
  const pull = run.hasAction ? actions[worst]!.N : 0;
  report.quantity('l_a', leverArm.length, 'mm', 'lever arm');
  report.quantity('N_Rd_s', tension.design, 'N', 'design tension of this part, see there');
  const bending = leverArmShear(part, leverArm, pull, tension.design, report);
  if (bending > shear.characteristic) {
    report.note(writeMessage('plain-shear-cap'));
    p.edition.steelShear(part, p.group, report);
  }
  const value = Math.min(bending, shear.characteristic);
  report.basic(value);
  if (value === 0) report.note(writeMessage('no-steel-left'));
  if (p.group.partialFactors.steelShear === null) p.edition.steelShearSafety(part, p.group.insert, report);
  report.close(value, shear.safety, run.hasAction ? actions[worst]!.V : null);
}
