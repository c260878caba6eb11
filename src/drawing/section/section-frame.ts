import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { findBounds } from './section-words.ts';

/**
 * A section at 1:1 [mm]: y above the bed, x across it. At a large face the axis stands at x = 0; at an edge the axis leaves the concrete at
 * x = 0 and the concrete lies toward +x.
 */
export interface SectionFrame {
  readonly top: Point;
  /** Direction from the top of the insert to its foot. */
  readonly along: Point;
  /** Axis off square to the face [rad]; 0 at a large face. */
  readonly tilt: number;
  /** At an edge: height of the axis where it leaves the concrete. */
  readonly axisHeight: number;
  /** Where the insert's step of the stack begins and ends. */
  readonly step: readonly [number, number];
}

/** Finds where the insert lies in its section. Throws Error when the stack has no insert. */
export function findFrame(assembly: Assembly): SectionFrame {
  const bounds = findBounds(assembly);
  const k = assembly.stack.findIndex(({ kind }) => kind === 'insert');
  if (k < 0) throw new Error(`section ${assembly.letter}: its stack has no insert`);
  const step: [number, number] = [bounds[k]!, bounds[k + 1]!];
  const axisHeight = (step[0] + step[1]) / 2;
  if (assembly.place === 'mould face') return { top: [0, step[0]], along: [0, 1], tilt: 0, axisHeight, step };
  if (assembly.place === 'trowelled face') return { top: [0, step[1]], along: [0, -1], tilt: 0, axisHeight, step };
  const tilt = (assembly.tilt_deg * Math.PI) / 180;
  const along: Point = [Math.cos(tilt), -Math.sin(tilt)];
  const { recess } = assembly;
  return { top: [recess * along[0], axisHeight + recess * along[1]], along, tilt, axisHeight, step };
}

/** A point at a length along the insert from its top, and aside of its axis. */
export function pointOn({ top, along }: SectionFrame, u: number, v: number): Point {
  return [top[0] + u * along[0] - v * along[1], top[1] + u * along[1] + v * along[0]];
}

/** Where a battered side form's face is at a height [mm]. */
export function findFaceX({ tilt, axisHeight }: SectionFrame, y: number): number {
  return (y - axisHeight) * Math.tan(tilt);
}
