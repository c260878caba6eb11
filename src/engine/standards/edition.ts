import type { AnchorageGroup, InsertProperties, StandardName, SteelPart } from '../checks/anchorage-group.ts';
import type { Clause, Sink } from './clause.ts';

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
  readonly area: number;
  readonly count: number;
  readonly meanSpacing: number;
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

/** Why a group is outside what an edition covers: a message code with its values. */
export type Uncovered = string;

/**
 * Characteristic resistance [N] under a load. What the load does not touch is found when the resistance is asked for, once a
 * set of inserts; each load then costs only its own factors.
 */
export type ResistanceUnder<Load> = (load: Load, sink: Sink | null) => number;

/**
 * The questions that every edition answers. Checks find geometry and loads; an edition knows formulas, factors and safety.
 * Resistances are characteristic [N]; a sink, where given, receives every factor and step.
 */
export interface Edition {
  readonly name: StandardName;
  readonly document: string;
  /** Why this group can never be a pass; empty when all is covered. */
  findUncovered(group: AnchorageGroup): readonly Uncovered[];

  steelTension(part: SteelPart, sink: Sink | null): number;
  steelTensionSafety(part: SteelPart, sink: Sink | null): number;
  steelShear(part: SteelPart, isBrittleGroup: boolean, sink: Sink | null): number;
  steelShearSafety(part: SteelPart, sink: Sink | null): number;
  isBrittle(insert: InsertProperties): boolean;
  leverArmShear(
    part: SteelPart,
    arm: { readonly length: number; readonly restraint: number; readonly sectionModulus: number },
    tension: number,
    tensionDesign: number,
    sink: Sink | null,
  ): number;

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

  /** A group needs this multiple of c_cr,sp on every side for splitting to be left out. */
  readonly splittingGroupEdge: number;
  splitting(question: SplittingQuestion): ResistanceUnder<ConeLoad>;

  /** Blow-out is checked where the edge distance is at most this fraction of the embedment. */
  readonly blowOutReach: number;
  /** Inserts of a blow-out row closer than this multiple of c1 act together. */
  readonly blowOutChain: number;
  /** By the eccentricity along the edge, not negative [mm]. */
  blowOut(question: BlowOutQuestion): ResistanceUnder<number>;

  pryOutFactor(embedment: number, sink: Sink | null): number;
  pryOut(cone: number, factor: number, hasBars: boolean, sink: Sink | null): number;

  /** Edges farther than this need no check in shear [mm]. */
  edgeLimit(embedment: number, diameter: number): number;
  reduceEdge(largestCorner: number, thickness: number, largestSpacing: number, edge: number, sink: Sink | null): number;
  concreteEdge(question: EdgeQuestion): ResistanceUnder<EdgeLoad>;
  /** Factor for edge bars with stirrups in cracked concrete. */
  readonly stirrupFactor: number;

  /** Design resistance from the characteristic one and the safety factor of its row. */
  designResistance(characteristic: number, safety: number): number;

  steelInteraction(tension: number, shear: number): number;
  concreteInteraction(tension: number, shear: number): number;
  /** With bars for one of tension and shear only. */
  reinforcedInteraction(tension: number, shear: number): number;

  /** The clause named on each row of a result. */
  readonly clauses: Readonly<
    Record<
      | 'design'
      | 'steelTension'
      | 'cone'
      | 'pullOut'
      | 'blowOut'
      | 'splitting'
      | 'steelShear'
      | 'leverArm'
      | 'pryOut'
      | 'edge'
      | 'steelInteraction'
      | 'concreteInteraction'
      | 'reinforcedInteraction',
      Clause
    >
  >;
}
