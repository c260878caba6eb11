import type { ExplainedConnection } from '../../assess/assess-connection.ts';
import { writeAnchorage } from '../../calc/anchorage-output.ts';
import { printInteraction, printModes, printSteps } from './anchorage.ts';
import { printAssumptions } from './job.ts';
import { showForce, showRatio } from './numbers.ts';
import { layTable, wrapText } from './table.ts';
import { nameMode, STATE_WORDS } from './words.ts';

type Explained = ExplainedConnection['combinations'][number];

function printForces({ combination }: Explained, inserts: readonly string[]): string {
  if (combination.kind === 'unsolved') return `  ${wrapText(combination.reason, 100, '  ')}`;
  const { actions, forces } = combination;
  const table = layTable(
    [
      { head: 'insert' },
      { head: 'N kN', align: 'right' },
      { head: 'Vx kN', align: 'right' },
      { head: 'Vy kN', align: 'right' },
    ],
    actions.inserts.map(({ N, Vx, Vy }, i) => [inserts[i]!, showForce(N), showForce(Vx), showForce(Vy)]),
  );
  const contact =
    forces === null || forces.compression === null
      ? ''
      : `\n  contact ${showForce(forces.compression.force)} kN at (${forces.compression.at.map((x) => x.toFixed(1)).join(', ')}) mm, at most ${forces.maxContact.toFixed(2)} MPa`;
  return indent(table) + contact;
}

function isGoverning(explained: ExplainedConnection, { combination }: Explained): boolean {
  return explained.answer.governing?.combination === combination.name;
}

/**
 * A connection in full: forces on the inserts by combination, modes of each, and, if steps are kept, the governing
 * combination step by step.
 */
export function printConnection(explained: ExplainedConnection, keepsSteps: boolean): string {
  const { answer, combinations, resistances } = explained;
  const governing =
    answer.governing === null ? '' : `, ${nameMode(answer.governing.mode)} in ${answer.governing.combination}`;
  const parts = [
    `Connection ${answer.mark}, panel ${answer.panel}, ${answer.face}: ${STATE_WORDS[answer.state]}`,
    `Used: ${showRatio(answer.ratio)}${governing}`,
    ...answer.reasons.map((reason) => `- ${wrapText(reason, 110, '  ')}`),
    ...answer.warnings.map((warning) => `- look at: ${wrapText(warning, 110, '  ')}`),
  ];
  if (answer.plate?.kind === 'checked')
    parts.push(
      `Plate: bending ${showRatio(answer.plate.ratio)}; it stays elastic from ${answer.plate.requiredThickness.toFixed(1)} mm (common practice, EN 1992-4:2018 6.2.1)`,
    );
  if (answer.assumptions.length > 0) parts.push('', 'Taken as given:', printAssumptions([answer]));
  for (const one of combinations) {
    parts.push('', `Combination ${one.combination.name}${isGoverning(explained, one) ? ' (governing)' : ''}`);
    parts.push(printForces(one, answer.inserts));
    if (one.result === null) continue;
    const written = writeAnchorage(one.result, [], keepsSteps);
    parts.push('', indent(printModes(written)));
    if (written.interaction.length > 0) parts.push(indent(printInteraction(written)));
    if (keepsSteps && isGoverning(explained, one)) parts.push('', 'Step by step', '', printSteps(written));
  }
  if (combinations.length === 0 && resistances !== null) {
    const written = writeAnchorage(resistances, [], keepsSteps);
    parts.push('', 'Resistances alone (equal tension; shear toward each edge in turn):', indent(printModes(written)));
    if (keepsSteps) parts.push('', 'Step by step', '', printSteps(written));
  }
  return parts.join('\n');
}

function indent(text: string): string {
  return text.replace(/^/gm, '  ');
}
