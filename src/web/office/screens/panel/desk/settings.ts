import { signal } from '@preact/signals';
import { units } from '../../../../parts/units.ts';

/** How a person likes to work on a panel; the same on every panel of this page. */
export const isSnapping = signal(true);
/** Places rest on multiples of this from where coordinates are counted; null: as the units suggest [mm]. */
export const ownGrid = signal<number | null>(null);
/** The concrete that counts is drawn. */
export const showsConcrete = signal(true);
/** Inserts are taken singly, not with their connection. */
export const takesSingly = signal(false);
export const showsBars = signal(true);

const METRIC_GRID = 5;
const INCH_GRID = 25.4 / 4;

/** The grid where nothing else is said [mm]. */
export function usualGrid(): number {
  return units.value === 'US' ? INCH_GRID : METRIC_GRID;
}

/** The grid in use [mm]. */
export function gridOf(): number {
  return ownGrid.value ?? usualGrid();
}
