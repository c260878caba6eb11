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

/** A connection worked out down to the forces on its inserts: what its answer, explanation and areas share. */
export interface WorkedConnection {
  readonly resolved: ResolvedConnection;
  readonly prepared: PreparedAnchorage;
  readonly cases: readonly LoadCase[];
  readonly answer: ConnectionAnswer;
}

/** The short answer with what it came from; null where it could not be computed. */
export function workOut(resolution: Resolution): {
  readonly answer: ConnectionAnswer;
  readonly worked: WorkedConnection | null;
} {
  if (resolution.kind === 'unresolved') return { answer: refuse(resolution, [], resolution.reasons), worked: null };
  const prepared = prepareOrSay(resolution.group);
  if (typeof prepared === 'string') {
    const inserts = resolution.group.positions.map(({ id }) => id);
    return { answer: refuse(resolution, inserts, [prepared]), worked: null };
  }
  const cases = solveLoadCases(resolution, prepared);
  const found = answer(resolution, prepared, cases);
  return { answer: found, worked: { resolved: resolution, prepared, cases, answer: found } };
}

/** The short answer for one connection: numbers only, for whole jobs. */
export function assessConnection(resolution: Resolution): ConnectionAnswer {
  return workOut(resolution).answer;
}

/** The long answer for one connection, by the same code. */
export function explainConnection(resolution: Resolution, keepsSteps: boolean): ExplainedConnection {
  const { answer, worked } = workOut(resolution);
  if (worked === null) return { answer, combinations: [], resistances: null };
  const { prepared, cases } = worked;
  return {
    answer,
    combinations: cases.map((one) => ({
      ...one,
      result:
        one.combination.kind === 'unsolved' ? null : explainAnchorage(prepared, one.combination.actions, keepsSteps),
    })),
    resistances: findResistances(prepared, keepsSteps),
  };
}
