import type { ExplainedCombination, ExplainedConnection } from '../../assess/assess-connection.ts';
import type { ConnectionBolt } from '../../assess/bolt-of-connection.ts';
import type { Asked, Capacities } from '../../assess/capacities.ts';
import { writeAnchorage } from '../../calc/anchorage-output.ts';
import { writeNumber } from '../../engine/checks/write-step.ts';
import type { Resolution } from '../../job/resolve/resolved-connection.ts';
import { tellPlate } from '../../say/mode-words.ts';
import { showForce, showRatio } from '../../say/numbers.ts';
import { writerOf } from '../../say/quantities.ts';
import { nameMode, STATE_WORDS } from '../../say/words.ts';
import { printInteraction, printModes, printSteps } from './anchorage.ts';
import { printBolt } from './bolt.ts';
import { printCapacities } from './capacities.ts';
import { printGiven } from './given.ts';
import { printAssumptions } from './job.ts';
import { printBendingSteps, printPlateSteps } from './plate.ts';
import { indentLines, layPoint, layTable, layText } from './table.ts';

/** What a page about one connection shows. */
export interface ConnectionPage {
  readonly resolution: Resolution;
  readonly standard: string;
  readonly explained: ExplainedConnection;
  readonly asked: Asked<Capacities>;
  /** Null where no plate is given. */
  readonly bolt: ConnectionBolt | null;
  readonly keepsSteps: boolean;
  readonly cautions: readonly string[];
  readonly width: number;
}

function printForces({ combination }: ExplainedCombination, { explained, width }: ConnectionPage): string {
  if (combination.kind === 'unsolved') return layText(combination.reason, width, '  ', '  ');
  const { actions, forces } = combination;
  const table = layTable(
    [
      { head: 'insert' },
      { head: 'N kN', align: 'right' },
      { head: 'Vx kN', align: 'right' },
      { head: 'Vy kN', align: 'right' },
    ],
    actions.inserts.map(({ N, Vx, Vy }, i) => [
      explained.answer.inserts[i]!,
      showForce(N),
      showForce(Vx),
      showForce(Vy),
    ]),
    width - 2,
  );
  const contact =
    forces === null || forces.compression === null
      ? ''
      : `\n  contact ${showForce(forces.compression.force)} kN at (${forces.compression.at.map((x) => x.toFixed(1)).join(', ')}) mm, at most ${forces.maxContact.toFixed(2)} MPa`;
  return indentLines(table, '  ') + contact;
}

function isGoverning({ explained }: ConnectionPage, { combination }: ExplainedCombination): boolean {
  return explained.answer.governing?.combination === combination.name;
}

/** A combination as the engine took it, with its steps where it governs and they are asked for. */
function printCombination(page: ConnectionPage, one: ExplainedCombination): string[] {
  const { keepsSteps, resolution, width } = page;
  const governs = isGoverning(page, one);
  const parts = ['', `Combination ${one.combination.name}${governs ? ' (governing)' : ''}`, printForces(one, page)];
  if (one.result === null) return parts;
  const written = writeAnchorage(one.result, [], keepsSteps);
  parts.push('', indentLines(printModes(written, width - 2), '  '));
  if (written.interaction.length > 0) parts.push(indentLines(printInteraction(written, width - 2), '  '));
  if (!keepsSteps || !governs) return parts;
  const plate = resolution.kind === 'resolved' ? resolution.plate : null;
  const steps = [
    resolution.kind === 'resolved' ? printPlateSteps(resolution, one, width) : '',
    printSteps(written, width),
    printBendingSteps(one.bending, plate, page.explained.answer.governing?.mode === 'plate-bending', width),
  ];
  return [...parts, '', `Step by step: ${one.combination.name}`, '', steps.filter((text) => text !== '').join('\n\n')];
}

/** The last line of the steps: how the answer follows from them. */
function printVerdict({ explained: { answer }, width }: ConnectionPage): string {
  const largest =
    answer.governing === null || answer.ratio === null
      ? 'no ratio'
      : `largest ratio of all combinations and modes ${Number.isFinite(answer.ratio) ? writeNumber(answer.ratio) : 'no resistance'}, ${nameMode(answer.governing.mode)} in ${answer.governing.combination}`;
  return layText(`Answer: ${largest}: ${STATE_WORDS[answer.state]}`, width);
}

/**
 * A connection in full: forces on the inserts by combination, modes of each, and, if steps are kept, all that is given and the
 * governing combination step by step.
 */
export function printConnection(page: ConnectionPage): string {
  const { explained, asked, resolution, keepsSteps, width } = page;
  const { answer, combinations, resistances } = explained;
  const governing =
    answer.governing === null ? '' : `, ${nameMode(answer.governing.mode)} in ${answer.governing.combination}`;
  const plate = tellPlate(answer.plate, writerOf('metric'));
  const parts = [
    layText(
      `Connection ${answer.mark}, panel ${answer.panel}, ${answer.face}, by ${page.standard}: ${STATE_WORDS[answer.state]}`,
      width,
    ),
    layText(`Used: ${showRatio(answer.ratio)}${governing}`, width),
    ...answer.reasons.map((reason) => layPoint(reason, width, '')),
    ...answer.warnings.map((warning) => layPoint(`look at: ${warning}`, width, '')),
    ...(plate === null ? [] : [layText(plate, width)]),
  ];
  if (resolution.kind === 'resolved')
    parts.push(layText(`Positions and edges: ${resolution.source.coordinates}`, width));
  if (asked.kind === 'computed') parts.push('', printCapacities(asked.value, width));
  if (page.bolt !== null) parts.push('', printBolt(page.bolt, width));
  if (answer.assumptions.length > 0) parts.push('', 'Taken as given:', printAssumptions([answer], width));
  if (keepsSteps && resolution.kind === 'resolved') parts.push('', printGiven(resolution, width));
  for (const one of combinations) parts.push(...printCombination(page, one));
  if (combinations.length === 0 && resistances !== null) {
    const written = writeAnchorage(resistances, [], keepsSteps);
    parts.push(
      '',
      layText('Resistances alone (equal tension; shear toward each edge in turn):', width),
      indentLines(printModes(written, width - 2), '  '),
    );
    if (keepsSteps) parts.push('', 'Step by step', '', printSteps(written, width));
  }
  if (keepsSteps) parts.push('', printVerdict(page));
  parts.push('', 'Cautions', ...page.cautions.map((text) => layPoint(text, width)));
  return parts.join('\n');
}
