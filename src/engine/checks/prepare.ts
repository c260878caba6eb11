import { isInside, prepareRegion } from '../geometry/region.ts';
import { nearPoints } from '../geometry/sight.ts';
import type { ConcreteMode, Edition } from '../standards/edition.ts';
import { AnchorageError } from './anchorage-error.ts';
import type { AnchorageGroup, SteelPart, TestedResistance } from './anchorage-group.ts';
import type { EdgeView, PreparedAnchorage, PreparedPart, Resistance, SteelPair, TestedSteel } from './prepared.ts';
import { SQUARE_REACH } from './projection.ts';

/** The test report that replaces a formula, if the group's concrete allows it. */
export function findTested(group: AnchorageGroup, mode: TestedResistance['mode']): TestedResistance | null {
  const found = group.insert.tested.find((test) => test.mode === mode);
  return found !== undefined && found.fromStrength <= group.concrete.strength ? found : null;
}

function resistance(edition: Edition, characteristic: number, safety: number): Resistance {
  return { characteristic, safety, design: edition.designResistance(characteristic, safety) };
}

/** A report without a partial factor of its own takes the safest of the parts'. */
function prepareTested(group: AnchorageGroup, edition: Edition, parts: readonly PreparedPart[]): TestedSteel {
  if (group.insert.tested.length === 0) return { tension: null, shear: null };
  const read = (mode: 'steel-tension' | 'steel-shear', own: readonly (Resistance | null)[]) => {
    const tested = findTested(group, mode);
    if (tested === null) return null;
    const safety = tested.safety === null ? findSafest(edition, own) : edition.fromPartialFactor(tested.safety);
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

/** Of the parts' safety factors the one that leaves the least; 1 where no part carries this load. */
function findSafest(edition: Edition, parts: readonly (Resistance | null)[]): number {
  let safest = 1;
  for (const part of parts)
    if (part !== null && edition.designResistance(1, part.safety) < edition.designResistance(1, safest))
      safest = part.safety;
  return safest;
}

/**
 * Design resistances that meet in one piece of steel: of each part that carries both loads; and where a test gives one of
 * the two for the whole insert, with the least of the other kind. Where no part carries both, the least of each kind.
 */
function pairSteel(parts: readonly PreparedPart[], tested: TestedSteel): SteelPair[] {
  const pairs: SteelPair[] = [];
  for (const { tension, shear } of parts)
    if (tension !== null && shear !== null) pairs.push({ tension: tension.design, shear: shear.design });
  if (pairs.length > 0 && tested.tension === null && tested.shear === null) return pairs;
  const counted = pairs.length > 0 ? parts.filter(({ tension, shear }) => tension !== null && shear !== null) : parts;
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

/** Whether an arm is so short that plain shear is the lower even without tension. */
function isPlainShearLower(
  { leverArm }: AnchorageGroup,
  edition: Edition,
  { part, tension, shear }: PreparedPart,
): boolean {
  if (leverArm === null || edition.leverArmShear === null || tension === null || shear === null) return false;
  return edition.leverArmShear(part, leverArm, 0, tension.design, null) > shear.characteristic;
}

/**
 * Finds what does not depend on the load.
 * @throws AnchorageError where the group cannot be computed (no insert, an insert outside the concrete, two at one place)
 * @throws GeometryError where the outline or an opening is not a simple polygon
 */
export function prepareAnchorage(group: AnchorageGroup, edition: Edition): PreparedAnchorage {
  refuseImpossible(group);
  const region = prepareRegion(group.member.outline, group.member.openings);
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
    steelPairs: pairSteel(parts, tested),
    steelInteracts:
      group.leverArm === null ||
      edition.leverArmShear === null ||
      parts.some((part) => isPlainShearLower(group, edition, part)),
    bearingArea,
    pullOut: resistance(edition, pullOut, pullOutSafety),
    pryOutFactor: edition.pryOutFactor(group.insert.embedment, group.pryOutFactor, null),
    safety: {
      'concrete-cone': safetyOf('concrete-cone'),
      'pull-out': pullOutSafety,
      'blow-out': safetyOf('blow-out'),
      splitting: safetyOf('splitting'),
      'pry-out': safetyOf('pry-out'),
      'concrete-edge': safetyOf('concrete-edge'),
    },
    uncovered: edition.findUncovered(group),
    cache: {
      cones: new Map(),
      splitting: new Map(),
      views: new Array<EdgeView | null | undefined>(region.sides.length),
      shearSides: new Map(),
      blowOutRows: new Map(),
    },
  };
}
