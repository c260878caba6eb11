import type { Move } from '../assess/choose/find-move.ts';
import type { QuantityWriter } from './quantities.ts';

/** From where a person looks at what is moved. */
export interface Sight {
  /** `outside`, `inside` or `edge`, with what more is said of it. */
  readonly face: string;
  /** Positions in the documents are the mirror image of what one sees in front of the face. */
  readonly isMirrored: boolean;
}

const isOnEdge = ({ face }: Sight) => face.startsWith('edge');

/** A step along an axis, as one sees it; on an edge, as its documents give places. */
function nameStep(axis: 'x' | 'y', isForward: boolean, sight: Sight): string {
  if (isOnEdge(sight)) {
    if (axis === 'x') return isForward ? 'along the edge' : 'back along the edge';
    return isForward ? 'away from the outside face' : 'toward the outside face';
  }
  if (axis === 'x') return isForward === sight.isMirrored ? 'left' : 'right';
  return isForward ? 'up' : 'down';
}

/** Where the edge lies that a step leads away from. */
const BEHIND: Readonly<Record<string, string>> = {
  left: 'on its right',
  right: 'on its left',
  up: 'below it',
  down: 'above it',
};

/** The side behind a move along one axis, as one sees it: `on its right`. */
export function nameSideBehind({ dx, dy }: Move, sight: Sight): string {
  return BEHIND[dx === 0 ? nameStep('y', dy > 0, sight) : nameStep('x', dx > 0, sight)] ?? '';
}

/** A move in words, from where a person stands: `20 mm left and 40 mm up, seen from the front of the inside face`. */
export function tellMove({ dx, dy }: Move, sight: Sight, { length }: Pick<QuantityWriter, 'length'>): string {
  const steps = [
    ...(dx === 0 ? [] : [`${length(Math.abs(dx))} ${nameStep('x', dx > 0, sight)}`]),
    ...(dy === 0 ? [] : [`${length(Math.abs(dy))} ${nameStep('y', dy > 0, sight)}`]),
  ];
  const told = steps.join(' and ');
  return sight.isMirrored && dx !== 0 && !isOnEdge(sight)
    ? `${told}, seen from the front of the ${sight.face} face`
    : told;
}
