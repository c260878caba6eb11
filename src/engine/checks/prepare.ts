import { distanceToBoundary, isInside, prepareRegion, type Region } from '../geometry/region.ts';
import { nearPoints } from '../geometry/sight.ts';
import type { ConcreteMode, Edition } from '../standards/edition.ts';
import { AnchorageError } from './anchorage-error.ts';
import type { AnchorageGroup, SteelPart } from './anchorage-group.ts';
import { findTested } from './find-tested.ts';
import { findLeastDistanceFaults } from './least-distances.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeView, PreparedAnchorage, PreparedPart, Resistance, SteelPair, TestedSteel } from './prepared.ts';
import { SQUARE_REACH } from './projection.ts';

function resistance(edition: Edition, characteristic: number, safety: number): Resistance {
  return { characteristic, safety, design: edition.design.fn(characteristic, safety) };
}

/** A report without a partial factor of its own takes the safest of the parts'. */
function prepareTested(group: AnchorageGroup, edition: Edition, parts: readonly PreparedPart[]): TestedSteel {
  if (group.insert.tested.length === 0) return { tension: null, shear: null };
  const read = (mode: 'steel-tension' | 'steel-shear', own: readonly (Resistance | null)[]) => {
    const tested = findTested(group, mode);
    if (tested === null) return null;
    const safety = tested.safety === null ? findSafest(edition, own) : edition.fromPartialFactor(tested.safety);
    if (safety === null)
      throw new AnchorageError(
        'insert.tested',
        `the tested ${mode} resistance of report ${tested.report} gives no partial factor, and no steel part carries that load to take it from; a factor was expected`,
      );
    return { ...resistance(edition, tested.characteristic, safety), report: tested.report };
  };
  return {
    tension: read(
      'steel-tension',
      parts.map(({ tension }) => tension),
    ),
    shear: read(
      'steel-shear',
      parts.map(({ shear }) => shear),
    ),
  };
}

/** Of the parts' safety factors the one that leaves the least; null where no part carries this load. */
function findSafest(edition: Edition, parts: readonly (Resistance | null)[]): number | null {
  let safest: number | null = null;
  for (const part of parts)
    if (part !== null && (safest === null || edition.design.fn(1, part.safety) < edition.design.fn(1, safest)))
      safest = part.safety;
  return safest;
}

/**
 * Design resistances that meet in one piece of steel: of each part that carries both loads; and where a test gives one of
 * the two for the whole insert, with the least of the other kind. Where no part carries both, the least of each kind. A part
 * that a lever arm bends is left out: its bending resistance already carries the tension.
 */
function pairSteel(
  parts: readonly PreparedPart[],
  tested: TestedSteel,
  isBent: (part: PreparedPart) => boolean,
): SteelPair[] {
  const pairs: SteelPair[] = [];
  const carriers = parts.filter(({ tension, shear }) => tension !== null && shear !== null);
  for (const part of carriers)
    if (!isBent(part)) pairs.push({ tension: part.tension!.design, shear: part.shear!.design });
  if (carriers.length > 0 && tested.tension === null && tested.shear === null) return pairs;
  const counted = carriers.length > 0 ? carriers : parts;
  if (counted.some(isBent)) return pairs;
  const least = (kind: 'tension' | 'shear') =>
    Math.min(
      tested[kind]?.design ?? Number.POSITIVE_INFINITY,
      ...counted.map((part) => part[kind]?.design ?? Number.POSITIVE_INFINITY),
    );
  return [...pairs, { tension: least('tension'), shear: least('shear') }];
}

function preparePart(group: AnchorageGroup, edition: Edition, part: SteelPart): PreparedPart {
  const { steelTension, steelShear } = group.partialFactors;
  const { insert } = group;
  const inTension = () => edition.steelTensionSafety(part, insert, null);
  const inShear = () => edition.steelShearSafety(part, insert, null);
  const choose = (given: number | null, own: () => number) =>
    given === null ? own() : edition.fromPartialFactor(given);
  return {
    part,
    tension:
      part.resists === 'shear'
        ? null
        : resistance(edition, edition.steelTension(part, null), choose(steelTension, inTension)),
    shear:
      part.resists === 'tension'
        ? null
        : resistance(edition, edition.steelShear(part, group, null), choose(steelShear, inShear)),
  };
}

function refuseImpossible(group: AnchorageGroup): void {
  if (group.positions.length === 0) throw new AnchorageError('positions', 'no insert given, at least one expected');
  if (group.insert.steelParts.length === 0)
    throw new AnchorageError('insert.steelParts', 'no steel part given, at least one expected');
  for (const { mode, report } of group.insert.tested)
    if (report.trim() === '')
      throw new AnchorageError(
        'insert.tested',
        `the tested ${mode} resistance names no test report; a report was expected`,
      );
  for (const { depth } of group.hairpins)
    if (depth >= group.member.thickness)
      throw new AnchorageError(
        'hairpins',
        `a loop ${depth} mm below the shear force does not fit in a member ${group.member.thickness} mm thick; less was expected`,
      );
  if (group.insert.embedment >= group.member.thickness)
    throw new AnchorageError(
      'insert.embedment',
      `${group.insert.embedment} mm does not fit in a member ${group.member.thickness} mm thick; less was expected`,
    );
  for (const [i, a] of group.positions.entries())
    for (const [j, b] of group.positions.entries())
      if (i < j && Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) < 1e-6)
        throw new AnchorageError('positions', `inserts ${a.id} and ${b.id} stand at the same place`);
}

/** Whether a part bends under a shear at a distance, and its bending and not its plain shear decides. */
function isBentPart({ leverArm }: AnchorageGroup, edition: Edition, { part, tension, shear }: PreparedPart): boolean {
  if (leverArm === null || edition.leverArmShear === null || tension === null || shear === null) return false;
  if (part.isEmbedded === true) return false;
  return edition.leverArmShear(part, leverArm, 0, tension.design, null) <= shear.characteristic;
}

/** Why no answer about the group can be a pass: the document's own scope, its least distances, a foot that stands out. */
function collectUncovered(group: AnchorageGroup, edition: Edition, region: Region): readonly string[] {
  const { insert, positions, isTorqued } = group;
  const reasons = [...edition.findUncovered(group)];
  const ofCode = edition.leastDistances?.(insert.shaftDiameter, isTorqued);
  if (ofCode !== undefined) reasons.push(...findLeastDistanceFaults(group, region, [ofCode]));
  if (region.sides.length === 0) return reasons;
  const widest = Math.max(insert.shaftDiameter, insert.foot.kind === 'diameter' ? insert.foot.diameter : 0);
  for (const { id, x, y } of positions) {
    const edge = distanceToBoundary(region, x, y);
    if (edge < widest / 2 - ROUNDING)
      reasons.push(writeMessage('stands-out', { insert: id, value: roundForText(widest), edge: roundForText(edge) }));
  }
  return reasons;
}

/** Lengths may be off by rounding [mm]. */
const ROUNDING = 1e-6;

/**
 * Finds what does not depend on the load.
 * @param face the region of the group's outline and openings, where it is known already
 * @throws AnchorageError where the group cannot be computed (no insert, an insert outside the concrete, two at one place)
 * @throws GeometryError where the outline or an opening is not a simple polygon
 */
export function prepareAnchorage(group: AnchorageGroup, edition: Edition, face: Region | null): PreparedAnchorage {
  refuseImpossible(group);
  const region = face ?? prepareRegion(group.member.outline, group.member.openings);
  for (const position of group.positions)
    if (!isInside(region, position.x, position.y))
      throw new AnchorageError(
        'positions',
        `insert ${position.id} at (${position.x}, ${position.y}) mm is not inside the concrete of the face`,
      );
  const xs = new Float64Array(group.positions.length);
  const ys = new Float64Array(group.positions.length);
  for (const [i, { x, y }] of group.positions.entries()) {
    xs[i] = x;
    ys[i] = y;
  }
  const largestSquare = Math.max(edition.coneReach * group.insert.embedment, group.splitting?.criticalEdge ?? 0);
  const groupReach = (edition.splitting?.groupEdge ?? 0) * (group.splitting?.criticalEdge ?? 0);
  const reach = Math.max(SQUARE_REACH * largestSquare, groupReach);
  const near = group.positions.map((p) => nearPoints(region, p.x, p.y, reach));
  const parts = group.insert.steelParts.map((part) => preparePart(group, edition, part));
  const tested = prepareTested(group, edition, parts);
  const isBent = (part: PreparedPart) => isBentPart(group, edition, part);
  const bearingArea = edition.bearingArea(group.insert, null);
  const testedPullOut = findTested(group, 'pull-out');
  const pullOut =
    testedPullOut?.characteristic ??
    edition.pullOut(bearingArea, group.concrete.strength, group.concrete.cracked, null);
  const safetyOf = (mode: ConcreteMode) => edition.concreteSafety(mode, group, null);
  const ownSafety = testedPullOut?.safety ?? null;
  const pullOutSafety = ownSafety === null ? safetyOf('pull-out') : edition.fromPartialFactor(ownSafety);
  return {
    group,
    edition,
    region,
    count: group.positions.length,
    xs,
    ys,
    near,
    parts,
    tested,
    steelPairs: pairSteel(parts, tested, isBent),
    hasBentPart: parts.some(isBent),
    bearingArea,
    pullOut: resistance(edition, pullOut, pullOutSafety),
    pryOutFactor: edition.pryOutFactor(group.insert.embedment, group.pryOutFactor, null),
    safetyDivides: edition.safetyFactor === 'divides',
    edgeLimit: edition.edgeLimit(group.insert.embedment, group.insert.shaftDiameter) ?? Number.POSITIVE_INFINITY,
    safety: {
      'concrete-cone': safetyOf('concrete-cone'),
      'pull-out': pullOutSafety,
      'blow-out': safetyOf('blow-out'),
      splitting: safetyOf('splitting'),
      'pry-out': safetyOf('pry-out'),
      'concrete-edge': safetyOf('concrete-edge'),
    },
    uncovered: collectUncovered(group, edition, region),
    cache: {
      cones: new Map(),
      splitting: new Map(),
      views: new Array<EdgeView | null | undefined>(region.sides.length),
      shearSides: new Map(),
      blowOutRows: new Map(),
    },
  };
}
