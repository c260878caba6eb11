import type { AnchorageGroup, SupplementaryBar } from '../engine/checks/anchorage-group.ts';
import { writeNumber } from '../engine/checks/write-step.ts';
import type { Polygon } from '../engine/geometry/point.ts';
import { prepareRegion, type Region } from '../engine/geometry/region.ts';
import { nearPoints } from '../engine/geometry/sight.ts';
import { findEdition } from '../engine/standards/editions.ts';
import type { ResolvedConnection } from '../job/resolve/resolved-connection.ts';

/**
 * Why this exists: a checking engineer starts from zero. All inputs of one connection, in the order in which the engine
 * uses them, so that nothing in the steps comes from elsewhere.
 */

/** An input in words; no label: it goes on from the one before. */
export type GivenPair = readonly [label: string, text: string];

const n = writeNumber;
const yesOrNo = (is: boolean) => (is ? 'yes' : 'no');

/** A point in mm, written without a space so that lines do not break in it. */
function showPoint(x: number, y: number): string {
  return `(${n(Math.round(x * 1000) / 1000)},${n(Math.round(y * 1000) / 1000)})`;
}

function showPolygon(polygon: Polygon): string {
  return polygon.map(([x, y]) => showPoint(x, y)).join(' ');
}

function listConcrete({ concrete, partialFactors, standard }: AnchorageGroup): GivenPair[] {
  const { concrete: gammaMc, steelTension, steelShear } = partialFactors;
  const steel = (factor: number | null) => (factor === null ? 'by the standard from f_uk and f_yk' : n(factor));
  const symbol = findEdition(standard).takesPartialFactors ? 'f_ck' : "f'c (f_c below)";
  const strength = `${symbol} ${n(concrete.strength)} MPa, ${concrete.cracked ? 'cracked' : 'uncracked'}`;
  if (!findEdition(standard).takesPartialFactors)
    return [
      ['concrete', strength],
      ['strength reduction', 'φ of 17.5.3 by mode and ductility'],
    ];
  return [
    ['concrete', strength],
    [
      'partial factors',
      `concrete γ_Mc ${gammaMc === null ? 'of the standard' : n(gammaMc)}; steel in tension: ${steel(steelTension)}; in shear: ${steel(steelShear)}`,
    ],
  ];
}

const percent = (value: number | null) => (value === null ? 'not known' : `${n(value)} %`);

function listInsert({ group, source: { item, bolt, engagement } }: ResolvedConnection): GivenPair[] {
  const { insert, splitting, pryOutFactor } = group;
  const foot =
    insert.foot.kind === 'diameter'
      ? `d_h ${n(insert.foot.diameter)} mm${insert.foot.thickness === null ? ', thickness not known' : `, ${n(insert.foot.thickness)} mm thick`}`
      : `bearing area A_h ${n(insert.foot.area)} mm2`;
  const tested = insert.tested.map(
    ({ mode, characteristic, safety, fromStrength, report }) =>
      `${mode} ${n(characteristic)} N, γ_M ${safety === null ? 'of the standard' : n(safety)}, from f_ck ${n(fromStrength)} MPa (${report})`,
  );
  return [
    ['insert', `${item.id}, thread ${item.thread} class ${item.threadClass}, length ${n(item.length_mm)} mm`],
    ['', `h_ef ${n(insert.embedment)} mm; body at the face d ${n(insert.shaftDiameter)} mm`],
    ['foot', `${foot}; full head all round: ${yesOrNo(insert.isFullHead)}`],
    [
      'its steel',
      `f_uk ${n(item.steel.ultimate_MPa)} MPa, f_yk ${n(item.steel.yield_MPa)} MPa, A5 ${percent(item.steel.elongation_percent)}, Z ${percent(item.steel.areaReduction_percent)}`,
    ],
    [
      'its document',
      insert.qualification === null ? 'none' : `${insert.qualification.document}, for ${insert.qualification.standard}`,
    ],
    ...(tested.length === 0 ? [] : [['tested', tested.join('; ')] as const]),
    [
      'splitting',
      splitting === null
        ? 'c_cr,sp and h_min not given'
        : `c_cr,sp ${n(splitting.criticalEdge)} mm, h_min ${n(splitting.minimumThickness)} mm`,
    ],
    ...(pryOutFactor === null ? [] : [['pry-out', `k_8 ${n(pryOutFactor)} of the document`] as const]),
    [
      'bolt',
      `${item.thread} ${bolt.propertyClass}: f_uk ${n(bolt.ultimate)} MPa, f_yk ${n(bolt.yield)} MPa, A5 ${percent(bolt.elongation)}, Z ${percent(bolt.areaReduction)}; full thread engaged ${n(engagement)} mm`,
    ],
    [
      'ductility',
      `A5 ${percent(insert.elongation)}, Z ${percent(insert.areaReduction)} (the lesser of insert and bolt)`,
    ],
  ];
}

function showBar(bar: SupplementaryBar): string {
  return [
    `d ${n(bar.diameter)} mm`,
    `${bar.legs} legs`,
    `${n(bar.distance)} mm from the insert`,
    `bonded ${n(bar.anchorageInside)} mm inside and ${n(bar.anchorageOutside)} mm outside the body`,
    `f_yk ${n(bar.yield)} MPa`,
    `hooked: ${yesOrNo(bar.hooked)}`,
    `good bond: ${yesOrNo(bar.goodBond)}`,
  ].join(', ');
}

function listMember({ group }: ResolvedConnection): GivenPair[] {
  const { member, reinforcement, leverArm, hangers, hairpins, uncoveredUses } = group;
  const edge = { none: 'none', bar: 'a bar', 'bar-and-stirrups': 'a bar and stirrups' }[reinforcement.edge];
  const spacing = reinforcement.stirrupSpacing === null ? '' : ` at ${n(reinforcement.stirrupSpacing)} mm`;
  return [
    ['member', `thickness that counts h ${n(member.thickness)} mm; sides below`],
    [
      'reinforcement',
      `dense at the surface: ${yesOrNo(reinforcement.denseSurface)}; along edges: ${edge}${spacing}; limits crack width: ${yesOrNo(reinforcement.limitsCrackWidth)}; for this connection: ${yesOrNo(reinforcement.supplementary)}`,
    ],
    ...hangers.map((bar, i) => [`hanger ${i + 1}`, showBar(bar)] as const),
    ...hairpins.map(
      (loop, i) =>
        [
          `hairpin ${i + 1}`,
          `toward ${n((loop.toward * 180) / Math.PI)}° from x, ${n(loop.depth)} mm below the shear, ${showBar(loop)}`,
        ] as const,
    ),
    [
      'lever arm',
      leverArm === null
        ? 'none'
        : `l_a ${n(leverArm.length)} mm, restraint α_M ${n(leverArm.restraint)}, W_el of the bolt pi / 32 * ((d_2 + d_3) / 2)^3 = ${n(leverArm.sectionModulus)} mm3`,
    ],
    ...(uncoveredUses.length === 0 ? [] : [['uses', uncoveredUses.join(', ')] as const]),
  ];
}

function listPlate({ plate, group }: ResolvedConnection): GivenPair[] {
  if (plate === null) return [['plate', 'none']];
  const strength = n(group.concrete.strength);
  return [
    ['plate', `corners ${showPolygon(plate.outline)}`],
    [
      '',
      `thickness ${n(plate.thickness)} mm, f_y ${plate.yield === null ? 'not given' : `${n(plate.yield)} MPa`}; welded on: ${plate.attachment === null ? 'not given' : showPolygon(plate.attachment)}`,
    ],
    [
      'modular ratio',
      `n = E_s / E_cm = 200000 / (22000 * ((${strength} + 8) / 10)^0.3) = ${n(plate.modularRatio)} (EN 1992-1-1, 3.2.7 and Table 3.1)`,
    ],
  ];
}

/** All inputs of a connection but its places and steel sections, in words. */
export function listGiven(connection: ResolvedConnection): readonly GivenPair[] {
  return [
    ...listConcrete(connection.group),
    ...listInsert(connection),
    ...listMember(connection),
    ...listPlate(connection),
    ['coordinates', connection.source.coordinates],
  ];
}

/** An insert's place in words, with what is near it. */
export interface GivenPlace {
  readonly id: string;
  /** As the job has it, and on its face. */
  readonly given: string;
  readonly onFace: string;
  readonly recess: string;
  readonly takesShear: string;
  /** Sides and re-entrant corners in sight, nearest first, each with its distance. */
  readonly near: string;
}

/** A side of the panel that an insert sees. */
export interface GivenSide {
  readonly name: string;
  readonly of: string;
  readonly from: string;
  readonly to: string;
  readonly length: string;
}

/** Sides and re-entrant corners in sight of each insert, nearest first, each with its distance. */
function findNear(
  { group }: ResolvedConnection,
  region: Region,
): { readonly names: string; readonly sides: Set<number> }[] {
  return group.positions.map(({ x, y }) => {
    const near = nearPoints(region, x, y, Number.POSITIVE_INFINITY);
    return {
      names: near
        .map(({ kind, side, distance, x: px, y: py }) =>
          kind === 'side' ? `s${side + 1} ${n(distance)}` : `corner ${showPoint(px, py)} ${n(distance)}`,
        )
        .join('; '),
      sides: new Set(near.filter(({ kind }) => kind === 'side').map(({ side }) => side)),
    };
  });
}

function showShear(connection: ResolvedConnection, i: number): string {
  const takes = connection.plate?.bolts[i]?.takesShear ?? true;
  if (typeof takes === 'boolean') return yesOrNo(takes);
  return `along ${n((Math.atan2(takes.onlyAlong[1], takes.onlyAlong[0]) * 180) / Math.PI)}°`;
}

/** Where the inserts are, and the sides that they see; walking along a side, the concrete is on the left. */
export function listPlaces(connection: ResolvedConnection): {
  readonly places: readonly GivenPlace[];
  readonly sides: readonly GivenSide[];
} {
  const { group, source } = connection;
  const region = prepareRegion(group.member.outline, group.member.openings);
  const near = findNear(connection, region);
  const seen = new Set(near.flatMap(({ sides }) => [...sides]));
  const sides = region.sides
    .filter(({ index }) => seen.has(index))
    .map(({ index, fromX, fromY, toX, toY, ring, length }) => ({
      name: `s${index + 1}`,
      of: ring === 'outline' ? 'outline' : `opening ${ring + 1}`,
      from: showPoint(fromX, fromY),
      to: showPoint(toX, toY),
      length: n(length),
    }));
  const places = group.positions.map(({ id, x, y }, i) => ({
    id,
    given: showPoint(source.castIns[i]!.x_mm, source.castIns[i]!.y_mm),
    onFace: showPoint(x, y),
    recess: n(source.castIns[i]!.recess_mm),
    takesShear: showShear(connection, i),
    near: near[i]!.names,
  }));
  return { places, sides };
}
