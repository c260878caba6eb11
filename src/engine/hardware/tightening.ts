import type { NutFactorRange } from './nut-factors.ts';

/** Gives the torque for a tension, T = K d F (any consistent units). Example: K 0.2, d 16 mm, F 50 000 N → 160 000 N mm. */
export function findTorque(nutFactor: number, diameter: number, tension: number): number {
  return nutFactor * diameter * tension;
}

/** Gives the tension from a torque, F = T / (K d). The inverse of `findTorque`. */
export function findTension(nutFactor: number, diameter: number, torque: number): number {
  return torque / (nutFactor * diameter);
}

/** A round section that is pulled and twisted while tightening. Area mm², torsion modulus mm³, yield MPa. */
export interface TwistedSection {
  readonly area: number;
  readonly torsionModulus: number;
  readonly yield: number;
}

/**
 * Gives the torque at which a section begins to yield under this torque and the tension from it together [N mm].
 *
 * Source: von Mises, σ² + 3 τ² = f_y², σ = T/(K d A), τ = T/W_T. On the safe side: the least K, so the greatest tension, with the whole torque of
 * the wrench, as if neither head nor thread rubbed (so it is when a thread seizes or a bolt stands on the bottom).
 * Example: K 0.15, d 16, A 220 mm², W_T 1000 mm³, f_y 400 MPa → 400/√((1/528)² + 3/1000²) = 156 000 N mm.
 */
export function findTorqueAtYield(section: TwistedSection, leastNutFactor: number, diameter: number): number {
  const stressPerTorque = findTension(leastNutFactor, diameter, 1) / section.area;
  const shearPerTorque = 1 / section.torsionModulus;
  return section.yield / Math.hypot(stressPerTorque, Math.sqrt(3) * shearPerTorque);
}

/** Gives area and torsion modulus of a round tube [mm², mm³]. Example: 24 and 16 → 251.3 and 2178. */
export function tubeSection(
  outside: number,
  inside: number,
): { readonly area: number; readonly torsionModulus: number } {
  return {
    area: (Math.PI / 4) * (outside ** 2 - inside ** 2),
    torsionModulus: (Math.PI / 16) * ((outside ** 4 - inside ** 4) / outside),
  };
}

/** What can limit a tightening torque. */
export type TorqueLimitKind =
  | "maker's maximum"
  | 'body around the thread'
  | 'body at the cross hole'
  | "bolt's thread"
  | "insert's thread"
  | 'concrete'
  | 'bolt';

/** A torque that must not be passed [N mm], and why. */
export interface TorqueLimit {
  readonly kind: TorqueLimitKind;
  readonly torque: number;
}

/** All that is known about what a torque may break. Forces N, torques N mm, lengths mm; null: not known. */
export interface TorqueCase {
  readonly diameter: number;
  readonly nutFactor: number;
  readonly nutFactorRange: NutFactorRange;
  readonly makersMaximum: number | null;
  readonly bodyAtThread: TwistedSection | null;
  readonly bodyAtCrossHole: TwistedSection | null;
  /** Tensions at which the threads shear at their yield stress. */
  readonly threads: { readonly bolt: number; readonly insert: number } | null;
  /** Design resistance of the concrete in tension today. */
  readonly concrete: number | null;
  /** Tension wanted in the bolt; 0: none. */
  readonly wantedTension: number;
}

/**
 * Gives every known limit of the tightening torque, that of the bolt last [N mm].
 *
 * A tension that something else must carry (threads, concrete, insert) counts with the least K of the range, the tension wanted in the bolt with the
 * nominal K. Which of them governs: `findLowest`.
 */
export function findTorqueLimits(given: TorqueCase): readonly TorqueLimit[] {
  const { diameter, nutFactor, nutFactorRange } = given;
  const fromTension = (tension: number) => findTorque(nutFactorRange.least, diameter, tension);
  const atYield = (section: TwistedSection) => findTorqueAtYield(section, nutFactorRange.least, diameter);
  const limits: readonly (readonly [TorqueLimitKind, number | null])[] = [
    ["maker's maximum", given.makersMaximum],
    ['body around the thread', given.bodyAtThread && atYield(given.bodyAtThread)],
    ['body at the cross hole', given.bodyAtCrossHole && atYield(given.bodyAtCrossHole)],
    ["bolt's thread", given.threads && fromTension(given.threads.bolt)],
    ["insert's thread", given.threads && fromTension(given.threads.insert)],
    ['concrete', given.concrete === null ? null : fromTension(given.concrete)],
    ['bolt', given.wantedTension === 0 ? null : findTorque(nutFactor, diameter, given.wantedTension)],
  ];
  return limits.flatMap(([kind, torque]) => (torque === null ? [] : [{ kind, torque }]));
}

/** Gives the lowest of several limits; null when there is none. */
export function findLowest(limits: readonly TorqueLimit[]): TorqueLimit | null {
  return limits.reduce<TorqueLimit | null>(
    (lowest, limit) => (lowest === null || limit.torque < lowest.torque ? limit : lowest),
    null,
  );
}
