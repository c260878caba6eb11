import type { Blunder } from '../form/data-snooping.ts';
import type { Pose } from './pose.ts';
import { type Control, type Registration, registerControls } from './register.ts';
import { SurveyError } from './survey-error.ts';

/** One control tried without. */
export interface LeftOut {
  /** How far Σ(v/σ)² falls without it. Null: without it the others fix nothing, so that nobody checks it. */
  readonly fall: number | null;
  /** How far the control then lies from where the others have it [mm]; null with `fall`. */
  readonly misses: number | null;
}

/** What the controls say of blunders among them. */
export interface ControlCheck {
  readonly blunder: Blunder;
  /** In the order of the controls. */
  readonly leftOut: readonly LeftOut[];
}

/** Upper 0.1 % points of chi-square for 1, 2 and 3 degrees of freedom. Source: tables (recalled; 2: −2 ln 0.001 exactly). */
const LIMITS: readonly [number, number, number] = [10.828, 13.816, 16.266];
/** Upper 0.1 % point of a standard normal variable, one-sided (recalled). */
const NORMAL_LIMIT = 3.0902;
/** Leaving one out explains the rest a hundred times better than leaving out the other: 2 ln 100. */
const HUNDRED_TIMES = 9.21;

/**
 * Upper 0.1 % point of chi-square.
 *
 * Source: tables up to 3 degrees of freedom; beyond by E. B. Wilson and M. M. Hilferty, The distribution of chi-square, PNAS 17 (1931), 684 (recalled),
 * at this level up to 1.5 % too large.
 */
export function chiSquareLimit(freedom: number): number {
  const ninth = 2 / (9 * freedom);
  return LIMITS[freedom - 1] ?? freedom * (1 - ninth + NORMAL_LIMIT * Math.sqrt(ninth)) ** 3;
}

/**
 * Looks for one blunder among the controls: each is left out in turn and the panel registered without it. The one without which the others agree best
 * is named, if Σ(v/σ)² falls by more than chance allows (level 0.001, a degree of freedom for each of its coordinates); all those that cannot be
 * told from it are named with it. Where the controls contradict each other, but none can be left out, it is one of all.
 *
 * Source: the principle of W. Baarda's data snooping (1968, recalled), for a point as a whole in place of a coordinate.
 */
export function checkControls(controls: readonly Control[], whole: Registration): ControlCheck {
  const leftOut = controls.map((_, i) => leaveOut(controls, i, whole));
  const ratios = leftOut.map(({ fall }, i) => (fall === null ? 0 : fall / chiSquareLimit(freedomOf(controls[i]!))));
  const largest = Math.max(...ratios);
  if (largest > 1) {
    const falls = leftOut.map(({ fall }) => fall ?? 0);
    const index = ratios.indexOf(largest);
    const indices = falls.flatMap((fall, i) => (ratios[i]! > 1 && falls[index]! - fall < HUNDRED_TIMES ? [i] : []));
    return { leftOut, blunder: indices.length === 1 ? { kind: 'at', index } : { kind: 'one of', indices } };
  }
  const isContradicted = whole.redundancy > 0 && whole.sum > chiSquareLimit(whole.redundancy);
  const indices = controls.map((_, i) => i);
  return { leftOut, blunder: isContradicted ? { kind: 'one of', indices } : { kind: 'none' } };
}

function freedomOf(control: Control): number {
  return control.kind === 'edge' ? 1 : control.design.length;
}

function leaveOut(controls: readonly Control[], index: number, whole: Registration): LeftOut {
  const others = registerOthers(
    controls.filter((_, i) => i !== index),
    whole.pose,
  );
  if (others === null) return { fall: null, misses: null };
  const control = controls[index]!;
  const at = others.place(control.measured, control.deviation).at;
  const off =
    control.kind === 'edge'
      ? Math.abs(control.across.reduce((sum, part, k) => sum + part * (control.through[k]! - at[k]!), 0))
      : Math.hypot(...control.design.map((value, k) => value - at[k]!));
  return { fall: whole.sum - others.sum, misses: off };
}

/** Null where the others do not fix the panel, or do so only just. */
function registerOthers(others: readonly Control[], start: Pose): Registration | null {
  if (others.length === 0) return null;
  try {
    return registerControls(others, start);
  } catch (error) {
    if (error instanceof SurveyError) return null;
    throw error;
  }
}
