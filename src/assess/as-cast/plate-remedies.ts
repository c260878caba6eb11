import { type PlateChange, type PlateQuestion, tryPlate } from './changed-plate.ts';
import { enlargeHoles } from './enlarge-holes.ts';
import { type RedrilledPlate, redrillHoles } from './redrill-holes.ts';
import { SLOT_DIRECTIONS, type SlotDirection, slotHoles } from './slot-holes.ts';

/** What may be done with a plate so that it goes over its bolts as cast. Of strength it says nothing: the caller computes each again. */
export interface PlateRemedies {
  /** Shifted or turned in the holes that it has; a movement of nothing: it goes on where it was drawn. */
  readonly moved: PlateChange;
  readonly enlarged: PlateChange;
  /** Slots along the plate's axes and straight toward the bolts: they differ in where the bolts still take shear. */
  readonly slotted: readonly { readonly direction: SlotDirection; readonly change: PlateChange }[];
  readonly redrilled: RedrilledPlate;
}

/** Why nothing needs to be cut. */
const NOT_NEEDED = 'it goes on without that';

/**
 * The ways in which a plate goes on, each with the least that must be changed. Holes are cut only where it does not go on as they are; drilled anew it
 * may be in any case.
 * @param question at least one bolt
 */
export function findPlateRemedies(question: PlateQuestion): PlateRemedies {
  const asIs = tryPlate(question, []);
  const cut = (change: () => PlateChange): PlateChange =>
    asIs === null ? change() : { kind: 'not this way', why: NOT_NEEDED };
  return {
    moved:
      asIs === null
        ? { kind: 'not this way', why: 'no shift, and no turn up to 1°, lets every bolt in' }
        : { kind: 'goes on', plate: asIs },
    enlarged: cut(() => enlargeHoles(question)),
    slotted: SLOT_DIRECTIONS.map((direction) => ({ direction, change: cut(() => slotHoles(question, direction)) })),
    redrilled: redrillHoles(question),
  };
}
