import type { Point } from '../../engine/geometry/point.ts';

/** A group of inserts, or a single one, to be put into the order of a walk. */
export type Stop<T> = readonly { readonly what: T; readonly at: Point; readonly stage: 1 | 2 }[];

/** A stop for each stage in which members of a group are set: one who has set the first comes back for the others. */
function splitByStage<T>(stop: Stop<T>): readonly { readonly stage: 1 | 2; readonly members: Stop<T> }[] {
  return ([1, 2] as const).flatMap((stage) => {
    const members = stop.filter((member) => member.stage === stage);
    return members.length === 0 ? [] : [{ stage, members }];
  });
}

function middleOf(members: readonly { readonly at: Point }[]): Point {
  const sum = members.reduce<Point>(([x, y], { at }) => [x + at[0], y + at[1]], [0, 0]);
  return [sum[0] / members.length, sum[1] / members.length];
}

/**
 * The order in which a person meets the inserts who walks round the form once a stage: from the datum corner along its rail, round the other end
 * and back along the other rail. What belongs to one group stays together within a stage.
 *
 * Why not simply by distance: a form is worked from its two long sides, and nobody steps across the cage.
 * @param width of the panel across the bed [mm]; positions are from the datum corner
 */
export function orderWalk<T>(stops: readonly Stop<T>[], width: number): readonly T[] {
  const placed = stops.flatMap(splitByStage).map((stop) => {
    const [x, y] = middleOf(stop.members);
    const isBack = y > width / 2;
    const members = [...stop.members].sort(
      (a, b) => (isBack ? b.at[0] - a.at[0] : a.at[0] - b.at[0]) || a.at[1] - b.at[1],
    );
    return { stage: stop.stage, isBack, along: isBack ? -x : x, y, members };
  });
  placed.sort((a, b) => a.stage - b.stage || Number(a.isBack) - Number(b.isBack) || a.along - b.along || a.y - b.y);
  return placed.flatMap(({ members }) => members.map(({ what }) => what));
}
