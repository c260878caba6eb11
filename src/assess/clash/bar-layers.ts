import type { BarLayer } from '../../engine/form/clash/lay-out-bars.ts';
import type { Panel } from '../../job/documents/panel.ts';

/** A layer of bars as the panel gives it, with its place in the concrete. */
export interface PanelBarLayer {
  readonly bars: NonNullable<Panel['reinforcement']>['bars'][number];
  readonly layer: BarLayer;
}

/** The layers of a panel whose bars are known to lie somewhere; named by their number in the job, from 1. */
export function findBarLayers(panel: Panel): readonly PanelBarLayer[] {
  return (panel.reinforcement?.bars ?? []).flatMap((bars, i): PanelBarLayer[] => {
    if (bars.through_mm === null) return [];
    const depth = bars.cover_mm + bars.diameter_mm / 2;
    const layer = {
      id: String(i + 1),
      kind: bars.kind,
      direction: (bars.direction_deg * Math.PI) / 180,
      diameter: bars.diameter_mm,
      spacing: bars.spacing_mm,
      depth: bars.face === 'outside' ? depth : panel.thickness_mm - depth,
      through: bars.through_mm,
      endCover: bars.endCover_mm ?? bars.cover_mm,
    };
    return [{ bars, layer }];
  });
}
