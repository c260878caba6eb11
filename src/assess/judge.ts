import { checkAnchorage, prepare } from '../engine/checks/anchorage.ts';
import { AnchorageError } from '../engine/checks/anchorage-error.ts';
import type { AnchorageGroup } from '../engine/checks/anchorage-group.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import type { PlateBending } from '../engine/fixture/plate-bending.ts';
import { GeometryError } from '../engine/geometry/geometry-error.ts';
import type { Region } from '../engine/geometry/region.ts';
import type { ConnectionAnswer, ConnectionState, Decisive, PlateAnswer } from './connection-answer.ts';
import type { LoadCase } from './load-cases.ts';

/** The numbers of a connection: its state, the ratio that governs, and why it is not a pass. */
export type Judgement = Pick<ConnectionAnswer, 'state' | 'ratio' | 'governing' | 'reasons' | 'plate'>;

interface Running {
  ratio: number | null;
  governing: ConnectionAnswer['governing'];
  isCovered: boolean;
  readonly reasons: string[];
  readonly unsolved: string[];
}

/** A group ready for its combinations, or why it cannot be computed. */
export function prepareOrSay(group: AnchorageGroup, face: Region | null = null): PreparedAnchorage | string {
  try {
    return prepare(group, face);
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

function answerPlate(bending: PlateBending | null): PlateAnswer | null {
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

function decide(running: Running, hasAction: boolean, notCovered: readonly string[]): ConnectionState {
  if (running.unsolved.length > 0) return 'cannot be computed';
  if (running.ratio !== null && !isWithin(running.ratio)) return 'fails';
  if (!running.isCovered || notCovered.length > 0) return 'not covered';
  return !hasAction || running.ratio === null ? 'strength not checked' : 'passes';
}

/** Runs all combinations of a group, numbers only: the one way from forces to a state, for a check and for choosing. */
export function judge(
  prepared: PreparedAnchorage,
  cases: readonly LoadCase[],
  hasAction: boolean,
  notCovered: readonly string[],
): Judgement {
  const running: Running = { ratio: null, governing: null, isCovered: true, reasons: [], unsolved: [] };
  let plate: PlateAnswer | null = null;
  for (const { combination, bending } of cases) {
    if (combination.kind === 'unsolved') {
      running.unsolved.push(`${combination.name}: ${combination.reason}`);
      continue;
    }
    const numbers = checkAnchorage(prepared, combination.actions);
    if (numbers.uncovered.length > 0) running.isCovered = false;
    for (const reason of numbers.uncovered) if (!running.reasons.includes(reason)) running.reasons.push(reason);
    if (numbers.mode !== null) take(running, numbers.ratio, numbers.mode, combination.name);
    if (bending?.kind === 'checked' && bending.ratio > 0)
      take(running, bending.ratio, 'plate-bending', combination.name);
    plate = worsePlate(plate, answerPlate(bending));
  }
  if (!hasAction) {
    running.isCovered = prepared.uncovered.length === 0;
    running.reasons.push('no action given', ...prepared.uncovered);
  }
  return {
    state: decide(running, hasAction, notCovered),
    ratio: running.ratio,
    governing: running.governing,
    reasons: [...running.unsolved, ...notCovered, ...running.reasons],
    plate,
  };
}
