import { layOutBars } from '../../engine/form/clash/lay-out-bars.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { prepareRegion } from '../../engine/geometry/region.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { findBarLayers } from '../clash/bar-layers.ts';
import { viewPanel } from './panel-view.ts';

/** A bar of the reinforcement as it lies in the form, in the plan [mm]. */
export interface PlanBar {
  readonly from: Point;
  readonly to: Point;
  readonly diameter: number;
  /** The face whose reinforcement it is, as the panel lies. */
  readonly face: 'mould face' | 'trowelled face';
  readonly kind: 'bars' | 'mesh' | 'strand';
}

/** Bars of a panel whose places are known, seen from above. */
export function layBars(panel: Panel): readonly PlanBar[] {
  const { faceDown } = panel;
  const view = viewPanel(panel);
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  return findBarLayers(panel).flatMap(({ bars, layer }) => {
    const laid = layOutBars(layer, region);
    const face = bars.face === faceDown ? ('mould face' as const) : ('trowelled face' as const);
    return laid.map(({ solid }): PlanBar => {
      const { from, to } = solid;
      return {
        from: view.toPlan([from[0], from[1]]),
        to: view.toPlan([to[0], to[1]]),
        diameter: bars.diameter_mm,
        face,
        kind: bars.kind,
      };
    });
  });
}
