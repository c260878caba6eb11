import type { AnchorageGroup, Hairpin, SupplementaryBar } from '../../engine/checks/anchorage-group.ts';
import type { Connection } from '../documents/connection.ts';
import type { Panel } from '../documents/panel.ts';
import { toRadian } from './units.ts';

type Bars = NonNullable<Panel['reinforcement']>['bars'];

/** EN 1992-4, 7.2.1.4: reinforcement is dense unless bars stand at least 150 mm apart, or at least 100 mm for diameters up to 10 mm. */
function isDense(bars: Bars): boolean {
  return bars.some(({ spacing_mm, diameter_mm }) => spacing_mm < 150 && !(diameter_mm <= 10 && spacing_mm >= 100));
}

/** A supplementary bar in engine units (they are the document's, under other names). */
export function toSupplementaryBar(bar: Connection['hangers'][number]): SupplementaryBar {
  return {
    diameter: bar.diameter_mm,
    legs: bar.legs,
    distance: bar.distance_mm,
    anchorageInside: bar.anchorageInside_mm,
    anchorageOutside: bar.anchorageOutside_mm,
    yield: bar.yield_MPa,
    hooked: bar.hooked,
    goodBond: bar.goodBond,
  };
}

/** A loop in engine units; its direction turns with the plate. */
export function toHairpin(loop: Connection['hairpins'][number], turn_deg: number): Hairpin {
  return { ...toSupplementaryBar(loop), toward: toRadian(loop.toward_deg + turn_deg), depth: loop.depth_mm };
}

/** The panel's reinforcement around a connection; where nothing is known, the choice that gives the smaller resistance, named. */
export function localReinforcement(
  connection: Connection,
  panel: Panel,
): { readonly reinforcement: AnchorageGroup['reinforcement']; readonly assumptions: readonly string[] } {
  const supplementary = connection.hangers.length + connection.hairpins.length > 0;
  const known = panel.reinforcement;
  if (known === null) {
    return {
      reinforcement: { denseSurface: true, edge: 'none', supplementary, limitsCrackWidth: false, stirrupSpacing: null },
      assumptions: ['reinforcement not given: taken as dense at the surface, none along edges, not limiting cracks'],
    };
  }
  const atFace = known.bars.filter((bar) => connection.face === 'edge' || bar.face === connection.face);
  return {
    reinforcement: {
      denseSurface: isDense(atFace),
      edge: known.edge,
      supplementary,
      limitsCrackWidth: known.limitsCrackWidth,
      stirrupSpacing: known.stirrupSpacing_mm,
    },
    assumptions: [],
  };
}
