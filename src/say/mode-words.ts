import type { PlateAnswer } from '../assess/connection-answer.ts';
import type { ExplainedMode } from '../assess/explain/explanation.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import { showRatio } from './numbers.ts';
import type { QuantityWriter } from './quantities.ts';
import { nameMode } from './words.ts';

/** Directions on a face seen from its front, a quarter turn each, counter-clockwise from x. */
const SIDES = ['right', 'top', 'left', 'bottom'] as const;

/** How far from a quarter turn a direction may be and still be called by it [°]. */
const NEARLY = 1;

/** Which edge a direction points to, as one stands in front of the face: `bottom edge`, `edge toward 225°`. */
function nameEdge(direction: number): string {
  const degrees = ((direction * 180) / Math.PI + 360) % 360;
  const quarter = Math.round(degrees / 90);
  if (Math.abs(degrees - 90 * quarter) <= NEARLY) return `${SIDES[quarter % 4]} edge`;
  return `edge toward ${Math.round(degrees)}°`;
}

/**
 * What a line of the results is about: mode, part, edge.
 * @param see a direction on the face [rad] as it runs where it is looked at; as one stands in front of the face where it is left out
 */
export function nameModeLine(
  { mode, part, edge, direction }: Pick<ExplainedMode, 'mode' | 'part' | 'edge' | 'direction'>,
  see: (direction: number) => number = (seen) => seen,
): string {
  const details = [
    ...(edge === null || direction === null ? [] : [nameEdge(see(direction))]),
    ...(part === null ? [] : [part === 'toward' || part === 'along' ? `part ${part} it` : part]),
  ];
  return details.length === 0 ? nameMode(mode) : `${nameMode(mode)}: ${details.join(', ')}`;
}

/** Which inserts a line is about, in words; nothing where it is about all. */
export function nameInserts(inserts: readonly string[]): string {
  if (inserts.length === 0) return '';
  return `${inserts.length === 1 ? 'insert' : 'inserts'} ${inserts.join(', ')}`;
}

/** The worst bending of the plate over all combinations, in words; null where it was not checked or there is none. */
export function tellPlate(plate: PlateAnswer | null, { length }: Pick<QuantityWriter, 'length'>): string | null {
  if (plate === null || plate.kind === 'not checked') return null;
  return plate.ratio === 0
    ? 'Plate: nothing bends it'
    : `Plate: bending ${showRatio(plate.ratio)}, ${isWithin(plate.ratio) ? 'passes' : 'FAILS'}; it stays elastic from ${length(plate.requiredThickness)} on (common practice, EN 1992-4:2018 6.2.1)`;
}
