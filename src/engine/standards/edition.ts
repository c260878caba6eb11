import type { AnchorageGroup, InsertProperties, SteelPart } from '../checks/anchorage-group.ts';
import type { MinimumDistances } from '../hardware/minimum-distances.ts';
import type { Clause, Sink } from './clause.ts';
import type { StandardName } from './standard-name.ts';

/** Modes in which the concrete fails; each has a safety factor of its own. */
export type ConcreteMode = 'concrete-cone' | 'pull-out' | 'blow-out' | 'splitting' | 'pry-out' | 'concrete-edge';

/** What the projected squares of a group say to a cone-like check. Lengths mm, areas mm². */
export interface ConeQuestion {
  readonly strength: number;
  readonly cracked: boolean;
  /** Embedment that counts: h_ef, or h'_ef near three edges. */
  readonly embedment: number;
  /** Area of the union of the squares that counts. */
  readonly area: number;
  /** Characteristic edge distance that goes with the embedment. */
  readonly criticalEdge: number;
  /** Smallest edge distance; Infinity where no edge is near. */
  readonly edge: number;
  readonly denseSurface: boolean;
  /** Factor for lightweight concrete; 1 for normal weight. */
  readonly lightweightFactor: number;
}

/** What the load says to a cone-like check. Lengths mm. */
export interface ConeLoad {
  /** Eccentricities along the two axes of the squares, not negative. */
  readonly eccentricity1: number;
  readonly eccentricity2: number;
  /** Internal lever arm to a compression that counts for psi_M; null where none does. */
  readonly compressionArm: number | null;
}

/** Splitting asks the same, with the thickness and the resistances that cap it. */
export interface SplittingQuestion extends ConeQuestion {
  readonly thickness: number;
  readonly minimumThickness: number;
  readonly pullOut: number;
}

/** A row of inserts along an edge in side-face blow-out. */
export interface BlowOutQuestion {
  readonly strength: number;
  readonly cracked: boolean;
  readonly edge: number;
  readonly corner: number;
  readonly bearingArea: number;
  /** Length along the edge that bodies reaching so far to each side of every insert cover, cut at corners. */
  readonly cover: (reach: number) => number;
  /** From the bearing side of the feet to the far face. */
  readonly depthBehind: number;
  readonly count: number;
  /** Between neighbours, and between the two outer inserts. */
  readonly meanSpacing: number;
  readonly outerSpacing: number;
  readonly lightweightFactor: number;
}

/** A row of inserts along an edge in shear. */
export interface EdgeQuestion {
  readonly diameter: number;
  readonly embedment: number;
  readonly strength: number;
  readonly cracked: boolean;
  readonly edge: number;
  readonly area: number;
  readonly corner: number;
  readonly thickness: number;
  readonly reinforcementFactor: number;
  readonly lightweightFactor: number;
}

/** What the load says to an edge check. */
export interface EdgeLoad {
  /** Along the edge, not negative [mm]. */
  readonly eccentricity: number;
  /** Components of the shear toward the edge and along it, neither negative and not both zero [N]. */
  readonly toward: number;
  readonly along: number;
  /** Two inserts in torsion whose bodies overlap. */
  readonly isTorsionPair: boolean;
}

/** Why a group is outside what an edition covers: a sentence. */
export type Uncovered = string;

/**
 * Characteristic resistance [N] under a load. What the load does not touch is found when the resistance is asked for, once a
 * set of inserts; each load then costs only its own factors.
 */
export type ResistanceUnder<Load> = (load: Load, sink: Sink | null) => number;

/**
 * How an edition takes a shear that is inclined to an edge: by its resultant, or by its parts toward the edge and along it,
 * each by its eccentricity along the edge [mm].
 */
export type EdgeResistance =
  | { readonly kind: 'resultant'; readonly resist: ResistanceUnder<EdgeLoad> }
  | {
      readonly kind: 'parts';
      readonly toward: ResistanceUnder<number>;
      readonly along: ResistanceUnder<number>;
      /** Both together, by their ratios (toward, along). */
      readonly together: Clause;
    };

/** Whether bars along an edge count, and why or why not. */
export interface EdgeReinforcement {
  readonly factor: number;
  readonly note: string | null;
}

/** Which bars may count. */
export interface BarLimits {
  /** Largest diameter [mm]. */
  readonly diameter: number;
  /** Farthest from an insert, as a part of the embedment or of the edge distance. */
  readonly reach: number;
  /** Least bonded length in bar diameters. */
  readonly hookedLength: number;
  readonly straightLength: number;
  /** Shape factor of a hooked bar's bond. */
  readonly hookShape: number;
}

/** Rules for bars that take over from the concrete. */
export interface BarRules {
  /** Safety factor of the bars' steel. */
  readonly safety: number;
  /** Partial factor of the concrete in bond. */
  bondFactor(group: AnchorageGroup): number;
  readonly steel: Clause;
  readonly bond: Clause;
  readonly anchorage: Clause;
  readonly tensionFromShear: Clause;
  readonly limits: BarLimits;
  /** What a loop keeps of its strength, bent around an insert. */
  readonly loopEfficiency: number;
}

/** Tension with shear: steel and concrete each by a rule of its own, or all modes by one. Clause functions of (n, v). */
export type Together =
  | { readonly kind: 'apart'; readonly steel: Clause; readonly concrete: Clause; readonly reinforced: Clause }
  | { readonly kind: 'all'; readonly all: Clause };

/** Where a rule stands, for a row of a result. */
export type ClauseName = Pick<Clause, 'reference'>;

/**
 * The questions that every edition answers. Checks find geometry and loads; an edition knows formulas, factors and safety.
 * Resistances are characteristic (nominal, where the document says so) [N]; a sink, where given, receives every factor and step.
 */
export interface Edition {
  readonly name: StandardName;
  readonly document: string;
  /** The names that mean this document in a qualification or test report; another year is another document. */
  readonly namePattern: RegExp;
  /** The range of its rules; null: it sets no limit. Concrete and steel strengths MPa, embedment mm. */
  readonly limits: {
    readonly lowestConcrete: number | null;
    readonly highestConcrete: number;
    readonly smallestEmbedment: number | null;
    readonly highestSteel: number | null;
  };
  /** Why this group can never be a pass; empty when all is covered. */
  findUncovered(group: AnchorageGroup): readonly Uncovered[];

  /** The rule that gives the design resistance from the characteristic one and the safety factor of its row. */
  readonly design: Clause;
  /** How a safety factor enters: the resistance divided by it (γ), or multiplied by it (φ). */
  readonly safetyFactor: 'divides' | 'multiplies';
  /** The safety factor that stands for a partial factor of a test report or a national annex. */
  fromPartialFactor(partialFactor: number): number;
  /** False where the document has factors of its own that no partial factor of a job or input replaces. */
  readonly takesPartialFactors: boolean;
  concreteSafety(mode: ConcreteMode, group: AnchorageGroup, sink: Sink | null): number;

  /** Whether steel must show its reduction of area, beside its elongation, to count as ductile. */
  readonly needsAreaReduction: boolean;
  steelTension(part: SteelPart, sink: Sink | null): number;
  steelTensionSafety(part: SteelPart, insert: InsertProperties, sink: Sink | null): number;
  steelShear(part: SteelPart, group: AnchorageGroup, sink: Sink | null): number;
  steelShearSafety(part: SteelPart, insert: InsertProperties, sink: Sink | null): number;
  /** Shear at a distance from the face; null where the document gives no rule. */
  readonly leverArmShear:
    | ((
        part: SteelPart,
        arm: { readonly length: number; readonly restraint: number; readonly sectionModulus: number },
        tension: number,
        tensionDesign: number,
        sink: Sink | null,
      ) => number)
    | null;

  /** Characteristic edge distance of the cone as a multiple of the embedment. */
  readonly coneReach: number;
  reduceEmbedment(
    largestEdge: number,
    largestSpacing: number,
    criticalEdge: number,
    embedment: number,
    sink: Sink | null,
  ): number;
  concreteCone(question: ConeQuestion): ResistanceUnder<ConeLoad>;

  bearingArea(insert: InsertProperties, sink: Sink | null): number;
  pullOut(bearingArea: number, strength: number, cracked: boolean, sink: Sink | null): number;

  /** Least edge distance and spacing of the document itself, by the body's diameter [mm]; null: left to the product's document. */
  readonly leastDistances: ((diameter: number, isTorqued: boolean) => MinimumDistances) | null;

  /** Null where the document keeps splitting away by least distances alone. */
  readonly splitting: {
    /** A group needs this multiple of c_cr,sp on every side for splitting to be left out. */
    readonly groupEdge: number;
    resist(question: SplittingQuestion): ResistanceUnder<ConeLoad>;
  } | null;

  readonly blowOut: {
    isNear(edge: number, embedment: number): boolean;
    /** The same limit as a fraction of the embedment, for a note. */
    readonly reach: number;
    /** Inserts of a row closer than this multiple of c1 act together. */
    readonly chain: number;
    /** A corner counts as far as this multiple of c1 to each side. */
    readonly body: number;
    /** By the eccentricity along the edge, not negative [mm]. */
    resist(question: BlowOutQuestion): ResistanceUnder<number>;
  };

  /** The factor as given, or by the embedment. */
  pryOutFactor(embedment: number, given: number | null, sink: Sink | null): number;
  pryOut(cone: number, factor: number, hasBars: boolean, sink: Sink | null): number;

  /** Edges farther than this need no check in shear [mm]; null: every edge is checked. */
  edgeLimit(embedment: number, diameter: number): number | null;
  reduceEdge(largestCorner: number, thickness: number, largestSpacing: number, edge: number, sink: Sink | null): number;
  edgeReinforcement(group: AnchorageGroup, edge: number): EdgeReinforcement;
  concreteEdge(question: EdgeQuestion): EdgeResistance;
  /** Two inserts in torsion whose edge bodies overlap lose resistance. */
  readonly weakensTorsionPairs: boolean;

  /** Null where bars in place of the concrete are not computed: they then count for nothing. */
  readonly bars: BarRules | null;
  readonly together: Together;

  /** The clause named on each row of a result. */
  readonly clauses: Readonly<
    Record<
      'steelTension' | 'cone' | 'pullOut' | 'blowOut' | 'splitting' | 'steelShear' | 'leverArm' | 'pryOut' | 'edge',
      ClauseName
    >
  >;
}
