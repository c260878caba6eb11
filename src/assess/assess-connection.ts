import { explainAnchorage, findResistances } from '../engine/checks/anchorage.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import type { AnchorageResult } from '../engine/checks/result.ts';
import type { Resolution, ResolvedConnection } from '../job/resolve/resolved-connection.ts';
import type { ConnectionAnswer } from './connection-answer.ts';
import { judge, prepareOrSay } from './judge.ts';
import { type LoadCase, solveLoadCases } from './load-cases.ts';

/** One combination of a connection with its full result. */
export interface ExplainedCombination extends LoadCase {
  readonly result: AnchorageResult | null;
}

/** The long answer: every combination with rows and, if asked, steps; resistances alone where no action is given. */
export interface ExplainedConnection {
  readonly answer: ConnectionAnswer;
  readonly combinations: readonly ExplainedCombination[];
  readonly resistances: AnchorageResult | null;
}

function refuse(resolution: Resolution, inserts: readonly string[], reasons: readonly string[]): ConnectionAnswer {
  const { mark, panel, face } = resolution;
  return {
    mark,
    panel,
    face,
    inserts,
    state: 'cannot be computed',
    ratio: null,
    governing: null,
    reasons,
    assumptions: [],
    warnings: [],
    plate: null,
  };
}

/** The short answer from combinations that are brought down to the inserts. */
function answer(
  connection: ResolvedConnection,
  prepared: PreparedAnchorage,
  cases: readonly LoadCase[],
): ConnectionAnswer {
  const { mark, panel, face, group, actions, assumptions, notCovered, warnings } = connection;
  const judgement = judge(prepared, cases, actions.kind !== 'none', notCovered);
  const { plate } = judgement;
  const rigid =
    plate?.kind === 'not checked'
      ? [`plate taken as rigid, its bending not checked: missing ${plate.missing.join(', ')}`]
      : [];
  return {
    mark,
    panel,
    face,
    inserts: group.positions.map(({ id }) => id),
    ...judgement,
    assumptions: [...assumptions, ...rigid],
    warnings,
  };
}

/** The short answer for one connection: numbers only, for whole jobs. */
export function assessConnection(resolution: Resolution): ConnectionAnswer {
  if (resolution.kind === 'unresolved') return refuse(resolution, [], resolution.reasons);
  const prepared = prepareOrSay(resolution.group);
  if (typeof prepared === 'string')
    return refuse(
      resolution,
      resolution.group.positions.map(({ id }) => id),
      [prepared],
    );
  return answer(resolution, prepared, solveLoadCases(resolution, prepared));
}

/** The long answer for one connection, by the same code. */
export function explainConnection(resolution: Resolution, keepsSteps: boolean): ExplainedConnection {
  const prepared = resolution.kind === 'unresolved' ? null : prepareOrSay(resolution.group);
  if (resolution.kind === 'unresolved' || prepared === null || typeof prepared === 'string')
    return { answer: assessConnection(resolution), combinations: [], resistances: null };
  const cases = solveLoadCases(resolution, prepared);
  return {
    answer: answer(resolution, prepared, cases),
    combinations: cases.map((one) => ({
      ...one,
      result:
        one.combination.kind === 'unsolved' ? null : explainAnchorage(prepared, one.combination.actions, keepsSteps),
    })),
    resistances: findResistances(prepared, keepsSteps),
  };
}
