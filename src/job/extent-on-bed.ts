import type { Panel } from './documents/panel.ts';

/** A panel's extent on the bed, turned as it lies [mm]. */
export function extentOnBed(panel: Pick<Panel, 'outline_mm' | 'inForm'>): {
  readonly along: number;
  readonly across: number;
} {
  const reach = (axis: 0 | 1) => {
    const values = panel.outline_mm.map((corner) => corner[axis]);
    return Math.max(...values) - Math.min(...values);
  };
  const isQuarter = panel.inForm.turn_deg === 90 || panel.inForm.turn_deg === 270;
  return isQuarter ? { along: reach(1), across: reach(0) } : { along: reach(0), across: reach(1) };
}
