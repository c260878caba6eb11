import * as z from 'zod';
import { checkAnchorage, prepare } from '../engine/checks/anchorage.ts';
import { AnchorageError } from '../engine/checks/anchorage-error.ts';
import type { AnchorageGroup, GroupActions } from '../engine/checks/anchorage-group.ts';
import { isWithin } from '../engine/checks/verdict.ts';
import { isInside, prepareRegion } from '../engine/geometry/region.ts';
import { fitBoxInZone } from '../engine/tolerance/fit-box.ts';
import { TRACED_TO, traceByMargin } from '../engine/tolerance/trace-by-margin.ts';
import { actionsField, findActionFaults, findGroupFaults, groupFields } from './anchorage-input.ts';
import { words } from './fields.ts';
import { listAssumptions, readActions, readGroup, tellByKey } from './read-group.ts';

/** Nothing farther from the place as given is looked at [mm]. */
const WINDOW = 50;

/** Schema of the input: that of `anchorage` with its actions, and which insert moves. */
const input = z
  .strictObject({
    calc: z.literal('position-zone'),
    ...groupFields,
    actions: actionsField,
    insertId: words('the name of the insert that moves, or "group"'),
  })
  .superRefine((value, context) => {
    const { positions, actions, insertId } = value;
    const faults = [...findGroupFaults(value), ...findActionFaults(positions, actions)];
    if (insertId !== 'group' && !positions.some(({ id }) => id === insertId))
      faults.push({
        path: ['insertId'],
        message: `"${insertId}" is none of the positions, expected one of them or "group"`,
      });
    for (const { path, message } of faults) context.addIssue({ code: 'custom', path: [...path], message });
  });

const point = z.tuple([z.number(), z.number()]);

const output = z.strictObject({
  boundary_mm: z.array(point),
  holes_mm: z.array(z.array(point)),
  box_mm: z.strictObject({ along: z.number(), across: z.number() }),
  checks: z.number(),
  isCut: z.strictObject({ left: z.boolean(), right: z.boolean(), down: z.boolean(), up: z.boolean() }),
  window_mm: z.number(),
  resolution_mm: z.number(),
  notes: z.array(z.string()),
});

type Input = z.infer<typeof input>;
type Output = z.infer<typeof output>;

/** The group with one insert shifted, or all. */
function shift(group: AnchorageGroup, insertId: string, dx: number, dy: number): AnchorageGroup {
  const moves = (id: string) => insertId === 'group' || id === insertId;
  return {
    ...group,
    positions: group.positions.map((at) => (moves(at.id) ? { ...at, x: at.x + dx, y: at.y + dy } : at)),
  };
}

/** 1 less the largest ratio; NaN where it fails for another reason. */
function findMargin(group: AnchorageGroup, actions: GroupActions): number {
  try {
    const { ratio, uncovered } = checkAnchorage(prepare(group), actions);
    if (uncovered.length > 0 || !Number.isFinite(ratio)) return Number.NaN;
    // A ratio of 1 passes, and rounding with it.
    return isWithin(ratio) ? Math.max(1 - ratio, Number.MIN_VALUE) : Math.max(-1, 1 - ratio);
  } catch (error) {
    if (error instanceof AnchorageError) return Number.NaN;
    throw error;
  }
}

const NOWHERE = { left: false, right: false, down: false, up: false };

function writeNotes(given: Input, isEmpty: boolean): string[] {
  return [
    'strength only: cover, what is in the way, and whether a plate goes on are not looked at; the forces on the inserts stay as given',
    given.insertId === 'group'
      ? 'boundary_mm holds shifts of the whole group: [0, 0] is as given'
      : 'boundary_mm holds places of the insert',
    ...(isEmpty ? ['the positions as given do not pass, or are not covered: there is no zone around them'] : []),
    ...listAssumptions(given),
  ];
}

/**
 * Where an insert may stand, or a group be shifted to, with the full check of its strength passing: the connected region that contains the place as given.
 * @throws CalcError where the group cannot be computed as given
 */
function run(given: Input): Output {
  return tellByKey(() => {
    const group = readGroup(given);
    const actions = readActions(given, given.actions);
    // What cannot be computed as given is told by its key.
    prepare(group);
    const face = prepareRegion(group.member.outline, group.member.openings);
    const { insertId } = given;
    const found = traceByMargin({
      window: WINDOW,
      canBe: (x, y) => shift(group, insertId, x, y).positions.every((at) => isInside(face, at.x, at.y)),
      margin: (x, y) => findMargin(shift(group, insertId, x, y), actions),
    });
    const base = { window_mm: WINDOW, notes: writeNotes(given, found === null) };
    if (found === null)
      return {
        boundary_mm: [],
        holes_mm: [],
        box_mm: { along: 0, across: 0 },
        checks: 1,
        isCut: NOWHERE,
        resolution_mm: TRACED_TO,
        ...base,
      };
    const own = group.positions.find(({ id }) => id === insertId);
    const toFace = ([x, y]: readonly [number, number]): [number, number] => [x + (own?.x ?? 0), y + (own?.y ?? 0)];
    const box_mm = fitBoxInZone(found.passes, WINDOW);
    return {
      boundary_mm: found.zone.boundary.map(toFace),
      holes_mm: found.zone.holes.map((hole) => hole.map(toFace)),
      box_mm,
      checks: found.countAsked(),
      isCut: found.zone.isCut,
      resolution_mm: found.step,
      ...base,
    };
  });
}

export const positionZoneCalc = {
  name: 'position-zone',
  gives: 'where an insert may stand, or a group be shifted to, with its strength passing',
  input,
  output,
  run,
};
