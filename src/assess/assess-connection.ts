import { checkAnchorage, explainAnchorage, findResistances, prepare } from '../engine/checks/anchorage.ts';
import { AnchorageError } from '../engine/checks/anchorage-error.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import type { AnchorageResult } from '../engine/checks/result.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import { checkPlateBending, type PlateBending } from '../engine/fixture/plate-bending.ts';
import { GeometryError } from '../engine/geometry/geometry-error.ts';
import type { Resolution, ResolvedConnection } from '../job/resolve/resolved-connection.ts';
import { type InsertCombination, spreadActions } from './combinations.ts';
import type { ConnectionAnswer, ConnectionState, Decisive, PlateAnswer } from './connection-answer.ts';

/** γ_M0 of the plate's steel, recommended value of EN 1993-1-1, 6.1. */
const PLATE_FACTOR = 1;

/** One combination of a connection with its full result. */
export interface ExplainedCombination {
  readonly combination: InsertCombination;
  readonly result: AnchorageResult | null;
  /** The plate as bent by its forces; null where no plate stands between the action and the inserts. */
  readonly bending: PlateBending | null;
}

/** The long answer: every combination with rows and, if asked, steps; resistances alone where no action is given. */
export interface ExplainedConnection {
  readonly answer: ConnectionAnswer;
  readonly combinations: readonly ExplainedCombination[];
  readonly resistances: AnchorageResult | null;
}

interface Running {
  ratio: number | null;
  governing: ConnectionAnswer['governing'];
  isCovered: boolean;
  readonly reasons: string[];
  readonly unsolved: string[];
}

function prepareOrSay(connection: ResolvedConnection): PreparedAnchorage | string {
  try {
    return prepare(connection.group);
  } catch (error) {
    if (error instanceof AnchorageError || error instanceof GeometryError) return error.message;
    throw error;
  }
}

function take(running: Running, ratio: number, mode: Decisive, combination: string): void {
  if (running.ratio !== null && ratio <= running.ratio) return;
  running.ratio = ratio;
  running.governing = { mode, combination };
}

function solveBending(connection: ResolvedConnection, combination: InsertCombination): PlateBending | null {
  const { plate } = connection;
  if (plate === null || combination.kind === 'unsolved' || combination.forces === null) return null;
  const { forces } = combination;
  return checkPlateBending({
    plate: plate.outline,
    thickness: plate.thickness,
    yieldDesign: plate.yield === null ? null : plate.yield / PLATE_FACTOR,
    bolts: plate.bolts.map(({ id, x, y }, i) => ({ id, x, y, tension: Math.max(0, forces.bolts[i]!.N) })),
    plane: forces.plane,
    attachment: plate.attachment === null ? null : { kind: 'outline', outline: plate.attachment },
  });
}

function bendPlate(connection: ResolvedConnection, combination: InsertCombination): PlateAnswer | null {
  const bending = solveBending(connection, combination);
  if (bending === null) return null;
  if (bending.kind === 'not-checked') return { kind: 'not checked', missing: bending.missing };
  return { kind: 'checked', ratio: bending.ratio, requiredThickness: bending.requiredThickness };
}

/** The worst plate of several combinations; anything not checked outweighs what was. */
function worsePlate(a: PlateAnswer | null, b: PlateAnswer | null): PlateAnswer | null {
  if (a === null || b === null) return a ?? b;
  if (a.kind === 'not checked') return a;
  return b.kind === 'not checked' || b.ratio > a.ratio ? b : a;
}

function decide(connection: ResolvedConnection, running: Running): ConnectionState {
  if (running.unsolved.length > 0) return 'cannot be computed';
  if (running.ratio !== null && !isWithin(running.ratio)) return 'fails';
  if (!running.isCovered || connection.notCovered.length > 0) return 'not covered';
  return connection.actions.kind === 'none' || running.ratio === null ? 'strength not checked' : 'passes';
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

/** Runs all combinations; `keep` sees each with what it needs to explain it. */
function runConnection(
  connection: ResolvedConnection,
  prepared: PreparedAnchorage,
  keep: ((combination: InsertCombination) => void) | null,
): ConnectionAnswer {
  const running: Running = { ratio: null, governing: null, isCovered: true, reasons: [], unsolved: [] };
  let plate: PlateAnswer | null = null;
  for (const combination of spreadActions(connection, prepared)) {
    keep?.(combination);
    if (combination.kind === 'unsolved') {
      running.unsolved.push(`${combination.name}: ${combination.reason}`);
      continue;
    }
    const numbers = checkAnchorage(prepared, combination.actions);
    if (numbers.uncovered.length > 0) running.isCovered = false;
    for (const reason of numbers.uncovered) if (!running.reasons.includes(reason)) running.reasons.push(reason);
    if (numbers.mode !== null) take(running, numbers.ratio, numbers.mode, combination.name);
    const bending = bendPlate(connection, combination);
    if (bending?.kind === 'checked' && bending.ratio > 0)
      take(running, bending.ratio, 'plate-bending', combination.name);
    plate = worsePlate(plate, bending);
  }
  if (connection.actions.kind === 'none') {
    running.isCovered = prepared.uncovered.length === 0;
    running.reasons.push('no action given', ...prepared.uncovered);
  }
  const { mark, panel, face, assumptions, notCovered, warnings } = connection;
  const rigid =
    plate?.kind === 'not checked'
      ? [`plate taken as rigid, its bending not checked: missing ${plate.missing.join(', ')}`]
      : [];
  return {
    mark,
    panel,
    face,
    inserts: connection.group.positions.map(({ id }) => id),
    state: decide(connection, running),
    ratio: running.ratio,
    governing: running.governing,
    reasons: [...running.unsolved, ...notCovered, ...running.reasons],
    assumptions: [...assumptions, ...rigid],
    warnings,
    plate,
  };
}

/** The short answer for one connection: numbers only, for whole jobs. */
export function assessConnection(resolution: Resolution): ConnectionAnswer {
  if (resolution.kind === 'unresolved') return refuse(resolution, [], resolution.reasons);
  const prepared = prepareOrSay(resolution);
  if (typeof prepared === 'string')
    return refuse(
      resolution,
      resolution.group.positions.map(({ id }) => id),
      [prepared],
    );
  return runConnection(resolution, prepared, null);
}

/** The long answer for one connection, by the same code. */
export function explainConnection(resolution: Resolution, keepsSteps: boolean): ExplainedConnection {
  const prepared = resolution.kind === 'unresolved' ? null : prepareOrSay(resolution);
  if (resolution.kind === 'unresolved' || prepared === null || typeof prepared === 'string')
    return { answer: assessConnection(resolution), combinations: [], resistances: null };
  const combinations: ExplainedCombination[] = [];
  const answer = runConnection(resolution, prepared, (combination) =>
    combinations.push({
      combination,
      result: combination.kind === 'unsolved' ? null : explainAnchorage(prepared, combination.actions, keepsSteps),
      bending: solveBending(resolution, combination),
    }),
  );
  return { answer, combinations, resistances: findResistances(prepared, keepsSteps) };
}
