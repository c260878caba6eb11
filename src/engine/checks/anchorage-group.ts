import type { Point, Polygon } from '../geometry/point.ts';
import type { StandardName } from '../standards/standard-name.ts';
import type { UncoveredUse } from './uncovered-use.ts';

/** Steel in the load path of one insert: bolt, thread, body at the cross hole. */
export interface SteelPart {
  readonly name: string;
  /** Net section [mm²]. */
  readonly area: number;
  /** f_uk [MPa]. */
  readonly ultimate: number;
  /** f_yk [MPa]. */
  readonly yield: number;
  /** Which load this part carries; a thread that can only shear off along its flanks takes tension only. */
  readonly resists: 'tension' | 'shear' | 'both';
  /** Stands in the concrete, so a shear at a distance does not bend it; left out: it is bent. */
  readonly isEmbedded?: boolean;
}

/** The cast-in insert, as the standards see it: a headed fastener (the foot is their head). */
export interface InsertProperties {
  /** Effective embedment h_ef, face to bearing side of the foot [mm]. */
  readonly embedment: number;
  /** Body diameter at the face, d_nom [mm]. */
  readonly shaftDiameter: number;
  /** Foot: its diameter (with its thickness, if known), or its net bearing area. */
  readonly foot:
    | { readonly kind: 'diameter'; readonly diameter: number; readonly thickness: number | null }
    | { readonly kind: 'area'; readonly area: number };
  readonly steelParts: readonly SteelPart[];
  /** Elongation after fracture A5 [%]; null when not known (taken as brittle). */
  readonly elongation: number | null;
  /** Reduction of area Z [%]; null when not known (taken as brittle). */
  readonly areaReduction: number | null;
  /** The product document that lets this insert be designed by a standard; null when there is none. */
  readonly qualification: { readonly document: string; readonly standard: string } | null;
  /** False for a foot that is not a full circumferential head. */
  readonly isFullHead: boolean;
  /** Resistances from tests, each in place of a formula. */
  readonly tested: readonly TestedResistance[];
}

/** A characteristic resistance from tests, worth nothing without its report. */
export interface TestedResistance {
  readonly mode: 'steel-tension' | 'pull-out' | 'steel-shear';
  /** Characteristic resistance of one insert [N]. */
  readonly characteristic: number;
  /** Partial factor γ of the report; null: the safety factor of the standard. */
  readonly safety: number | null;
  /** Lowest f_ck the value holds for [MPa]; 0 for steel. */
  readonly fromStrength: number;
  readonly report: string;
}

/** A bar placed as supplementary reinforcement, counted only for what is bonded each side of the failure plane. */
export interface SupplementaryBar {
  /** Bar diameter [mm]. */
  readonly diameter: number;
  /** Legs that cross the failure surface. */
  readonly legs: number;
  /** Distance from the insert's axis to the nearest leg [mm]. */
  readonly distance: number;
  /** Bonded length inside the failure body, l_1 [mm]. */
  readonly anchorageInside: number;
  /** Bonded length outside the failure body [mm]. */
  readonly anchorageOutside: number;
  /** f_yk [MPa]. */
  readonly yield: number;
  /** Ends hooked or looped (lets the shorter minimum length count). */
  readonly hooked: boolean;
  /** Good bond conditions (EN 1992-1-1, 8.4.2). */
  readonly goodBond: boolean;
}

/** A loop that takes up shear toward one edge. */
export interface Hairpin extends SupplementaryBar {
  /** Direction of the edge it serves: outward normal of that edge, counter-clockwise from x [rad]. */
  readonly toward: number;
  /** Depth of the loop below the shear force, e_s [mm]. */
  readonly depth: number;
}

/** A group of equal inserts in one face. Lengths mm, forces N, stresses MPa. */
export interface AnchorageGroup {
  readonly standard: StandardName;
  readonly concrete: {
    /** Cylinder strength f_ck [MPa]. */
    readonly strength: number;
    readonly cracked: boolean;
    readonly lightweightFactor: number;
  };
  readonly member: {
    readonly thickness: number;
    /** Outline of the face; null for a face without an edge near. */
    readonly outline: Polygon | null;
    readonly openings: readonly Polygon[];
  };
  readonly reinforcement: {
    readonly denseSurface: boolean;
    readonly edge: 'none' | 'bar' | 'bar-and-stirrups';
    readonly supplementary: boolean;
    readonly limitsCrackWidth: boolean;
    /** Spacing of edge stirrups [mm]; null when not known. */
    readonly stirrupSpacing: number | null;
  };
  readonly insert: InsertProperties;
  readonly positions: readonly { readonly id: string; readonly x: number; readonly y: number }[];
  /** Stand-off: the shear acts at a distance; null when the fixture sits on the face. */
  readonly leverArm: { readonly length: number; readonly restraint: number; readonly sectionModulus: number } | null;
  /** The bolts are tightened beyond snug. */
  readonly isTorqued: boolean;
  /** The fixture sits on a pad of mortar. */
  readonly hasMortarPad: boolean;
  /** Product values for splitting; null when the insert's document gives none. */
  readonly splitting: { readonly criticalEdge: number; readonly minimumThickness: number } | null;
  /** Partial factors γ in place of the document's own; null: those of the document. ACI 318 takes none of them. */
  readonly partialFactors: {
    readonly concrete: number | null;
    readonly steelTension: number | null;
    readonly steelShear: number | null;
  };
  /** k8 (EN, AS) or k_cp (ACI) of pry-out; null: by embedment. */
  readonly pryOutFactor: number | null;
  /** Bars that take up tension behind the cone. */
  readonly hangers: readonly SupplementaryBar[];
  /** Loops that take up shear toward an edge. */
  readonly hairpins: readonly Hairpin[];
  readonly uncoveredUses: readonly UncoveredUse[];
}

/** Force on one insert [N], tension (pulling out) positive, shear in the axes of the face. */
export interface InsertAction {
  readonly N: number;
  readonly Vx: number;
  readonly Vy: number;
}

/** What one load combination puts on the group. */
export interface GroupActions {
  /** One entry a position, in the order of `positions`. */
  readonly inserts: readonly InsertAction[];
  /** Compression under the fixture [N] and where it acts, for psi_M; null: none near. */
  readonly compression: { readonly force: number; readonly at: Point } | null;
}
