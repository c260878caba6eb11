import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import type { FilledCase } from './fill-case.ts';
import type { Layout } from './lay-out.ts';

/** The group that the engine is asked about, for one layout and one embedment [mm]. */
export function makeGroup(
  filled: FilledCase,
  { outline, places }: Layout,
  embedment: number,
  standard: StandardName,
): AnchorageGroup {
  const { insert, thickness } = filled;
  const { item, steel } = insert;
  return {
    standard,
    concrete: { strength: filled.strength, cracked: true, lightweightFactor: 1 },
    member: { thickness, outline, openings: [] },
    reinforcement: {
      denseSurface: filled.isDense,
      edge: filled.edgeBars,
      supplementary: false,
      limitsCrackWidth: filled.limitsCracks,
      stirrupSpacing: null,
    },
    insert: {
      embedment,
      shaftDiameter: item.bodyDiameter_mm,
      foot:
        item.foot.kind === 'diameter'
          ? { kind: 'diameter', diameter: item.foot.diameter_mm, thickness: item.foot.thickness_mm }
          : { kind: 'area', area: item.foot.area_mm2 },
      steelParts: steel.parts,
      // Not known of the insert: bolt and insert together count as brittle, whatever the bolt is.
      elongation: null,
      areaReduction: null,
      qualification: item.qualification,
      isFullHead: true,
      tested: [],
    },
    positions: places.map(([x, y], i) => ({ id: i === 0 ? 'insert' : `neighbour ${i}`, x, y })),
    leverArm: null,
    isTorqued: false,
    hasMortarPad: false,
    // The thickness stands for h_min: it then neither adds to the resistance nor is it too thin.
    splitting:
      item.splitting === null
        ? null
        : { criticalEdge: item.splitting.criticalEdge_mm, minimumThickness: item.splitting.minimumThickness_mm },
    partialFactors: { concrete: null, steelTension: null, steelShear: null },
    pryOutFactor: null,
    hangers: [],
    hairpins: [],
    uncoveredUses: [],
  };
}

/**
 * The embedments to be asked about [mm]: the least and the longest that go with the length. A longer one carries more but for side-face
 * blow-out, which comes in with it, and groups between near edges, whose embedment is reduced.
 */
export function listEmbedments({ insert }: FilledCase): readonly number[] {
  const least = insert.item.embedment_mm;
  const longest = insert.longestEmbedment;
  return longest > least ? [least, longest] : [least];
}
