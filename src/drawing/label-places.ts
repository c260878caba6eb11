import type { Point } from '../engine/geometry/point.ts';
import { type Box, doBoxesOverlap, growBox } from './boxes.ts';
import { doesSegmentMeetBox, doSegmentsCross } from './segments.ts';

/** A label that wants a place beside what it names [mm]. */
export interface LabelWish {
  readonly anchor: Point;
  /** Radius around the anchor that what it names takes. */
  readonly radius: number;
  readonly width: number;
  readonly height: number;
  /** How much it matters that it finds a place; 1 where nothing is said. */
  readonly weight?: number;
}

/** What labels must keep clear of. */
export interface LabelSurroundings {
  /** Labels lie inside it. */
  readonly frame: Box;
  /** No label lies on one of these; leaders may cross them. */
  readonly obstacles: readonly Box[];
  /** Lines that no label lies on; leaders may cross them. */
  readonly lines: readonly (readonly [Point, Point])[];
  /** Room between labels, and from a label to what it names [mm]. */
  readonly gap: number;
}

/** Where a label lies, and the line that ties it to its anchor; null: it lies right beside it. */
export interface LabelPlace {
  readonly box: Box;
  readonly leader: readonly [from: Point, to: Point] | null;
}

interface Candidate extends LabelPlace {
  /** The box with the gap around it. */
  readonly grown: Box;
  readonly cost: number;
}

/** Directions are tried in this order: where two are as good, the earlier wins [rad]. */
const DIRECTIONS = [1, 3, 5, 7, 0, 4, 2, 6, 0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5].map(
  (eighth) => (eighth * Math.PI) / 4,
);

/** How far labels move off [mm]; the first is right beside the anchor. */
const DISTANCES = [0, 3, 6, 10, 15, 21, 28, 36, 46, 58];

/** A leader that crosses another costs as much as so many mm of leader. */
const CROSSING_COST = 60;

/** One that runs over what another label names: only where a label has no place otherwise. */
const ANCHOR_COST = 80;
const ROUNDS = 5;

/** So often a label may take the place of others. */
const EJECTIONS = 60;

/** So many places are as good as all of them for most labels. */
const ENOUGH = 40;

/**
 * Finds places for labels so that none lies on another, on an obstacle, on a line or on an anchor, and no leader runs through a label. Leaders
 * are short; they cross each other or an anchor only where nothing else is left. The same input gives the same places. A label for which there
 * is no such place gets null: the caller must name it elsewhere.
 *
 * @returns a place for each wish, in the same order
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  surroundings: LabelSurroundings,
): readonly (LabelPlace | null)[] {
  const anchors = wishes.map(({ anchor: [x, y], radius }) => growBox({ x, y, width: 0, height: 0 }, radius));
  const options = wishes.map((wish, own) => listCandidates(wish, own, anchors, surroundings, false));
  const chosen: (Candidate | null)[] = wishes.map(() => null);
  settle(options, chosen);
  const homeless = chosen.flatMap((place, k) => (place === null ? [k] : []));
  if (homeless.length > 0) {
    for (const k of homeless) options[k] = listCandidates(wishes[k]!, k, anchors, surroundings, true);
    settle(options, chosen);
    makeRoom(wishes, options, chosen);
  }
  return chosen.map((place) => (place === null ? null : { box: place.box, leader: place.leader }));
}

/**
 * Gives labels without a place one that others hold, where those matter less together, or have been asked to go less often; the others then look
 * again. Each time a label is asked to go it counts more, so that two do not push each other for ever.
 */
function makeRoom(
  wishes: readonly LabelWish[],
  options: readonly (readonly Candidate[])[],
  chosen: (Candidate | null)[],
): void {
  const weights = wishes.map(({ weight = 1 }) => weight);
  let best = [...chosen];
  const lost = (places: readonly (Candidate | null)[]) =>
    places.reduce((sum, place, k) => (place === null ? sum + (wishes[k]!.weight ?? 1) : sum), 0);
  for (let round = 0; round < EJECTIONS && lost(best) > 0; round++) {
    const homeless = chosen.flatMap((place, k) => (place === null && options[k]!.length > 0 ? [k] : []));
    const own = homeless.sort((a, b) => weights[b]! - weights[a]! || a - b)[0];
    if (own === undefined) break;
    let cheapest: { readonly option: Candidate; readonly others: readonly number[]; readonly cost: number } | null =
      null;
    for (const option of options[own]!) {
      const others = chosen.flatMap((other, k) =>
        other !== null && k !== own && !canStandBeside(option, other) ? [k] : [],
      );
      const cost = others.reduce((sum, k) => sum + weights[k]!, 0) + option.cost / 1e4;
      if (cheapest === null || cost < cheapest.cost) cheapest = { option, others, cost };
    }
    if (cheapest === null) break;
    for (const k of cheapest.others) {
      chosen[k] = null;
      weights[k] = weights[k]! * 1.5;
    }
    chosen[own] = cheapest.option;
    settle(options, chosen, own);
    if (lost(chosen) < lost(best)) best = [...chosen];
  }
  for (const [k, place] of best.entries()) chosen[k] = place;
}

/** Chooses for those with the least choice first; then for everybody again, with the others where they are, until nobody moves. */
function settle(
  options: readonly (readonly Candidate[])[],
  chosen: (Candidate | null)[],
  fixed: number | null = null,
): void {
  const order = options.map((_, k) => k).sort((a, b) => options[a]!.length - options[b]!.length || a - b);
  for (let round = 0; round < ROUNDS; round++) {
    let hasChanged = false;
    for (const k of order) {
      if (k === fixed) continue;
      const best = findBest(options[k]!, k, chosen);
      if (best !== chosen[k]) hasChanged = true;
      chosen[k] = best;
    }
    if (!hasChanged) break;
  }
}

/**
 * Places of a label that nothing but other labels can forbid, the cheapest first; no further off once there are enough. The last resort: any of
 * them, leaders over other anchors too.
 */
function listCandidates(
  wish: LabelWish,
  own: number,
  anchors: readonly Box[],
  { frame, obstacles, lines, gap }: LabelSurroundings,
  isLastResort: boolean,
): readonly Candidate[] {
  const candidates: Candidate[] = [];
  for (const distance of DISTANCES) {
    if (candidates.length >= ENOUGH && !isLastResort) break;
    for (const [k, direction] of DIRECTIONS.entries()) {
      const box = boxToward(wish, direction, wish.radius + gap + distance);
      if (!isInside(box, frame)) continue;
      if (obstacles.some((obstacle) => doBoxesOverlap(box, obstacle))) continue;
      if (anchors.some((anchor) => doBoxesOverlap(box, anchor))) continue;
      if (lines.some((line) => doesSegmentMeetBox(line[0], line[1], box))) continue;
      const leader = distance === 0 ? null : drawLeader(wish, box);
      const crossed =
        leader === null
          ? 0
          : anchors.filter((anchor, i) => i !== own && doesSegmentMeetBox(leader[0], leader[1], anchor)).length;
      if (crossed > 0 && !isLastResort) continue;
      candidates.push({ box, leader, grown: growBox(box, gap / 2), cost: distance + k / 100 + crossed * ANCHOR_COST });
    }
  }
  return candidates.sort((a, b) => a.cost - b.cost);
}

/** The box of a label in a direction from its anchor, its nearest point `off` mm away. */
function boxToward({ anchor, width, height }: LabelWish, direction: number, off: number): Box {
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const near: Point = [anchor[0] + off * c, anchor[1] + off * s];
  // Straight up or down the box hangs by its middle, else by the corner that looks at the anchor.
  const shareX = Math.abs(c) < 1e-9 ? 0.5 : c > 0 ? 0 : 1;
  const shareY = Math.abs(s) < 1e-9 ? 0.5 : s > 0 ? 0 : 1;
  return { x: near[0] - shareX * width, y: near[1] - shareY * height, width, height };
}

/** From the rim of what is named to the nearest point of the label. */
function drawLeader({ anchor, radius }: LabelWish, box: Box): readonly [Point, Point] {
  const to: Point = [
    Math.min(Math.max(anchor[0], box.x), box.x + box.width),
    Math.min(Math.max(anchor[1], box.y), box.y + box.height),
  ];
  const length = Math.hypot(to[0] - anchor[0], to[1] - anchor[1]);
  const share = radius / length;
  return [[anchor[0] + share * (to[0] - anchor[0]), anchor[1] + share * (to[1] - anchor[1])], to];
}

/** The cheapest place that goes with the places of the others; null when none does. */
function findBest(options: readonly Candidate[], own: number, chosen: readonly (Candidate | null)[]): Candidate | null {
  let best: Candidate | null = null;
  let least = Infinity;
  for (const option of options) {
    if (option.cost >= least) break;
    const cost = costBeside(option, own, chosen);
    if (cost >= least) continue;
    best = option;
    least = cost;
  }
  return best;
}

/** Whether neither label lies on the other or on its leader. */
function canStandBeside(a: Candidate, b: Candidate): boolean {
  if (doBoxesOverlap(a.grown, b.grown)) return false;
  if (a.leader !== null && doesSegmentMeetBox(...a.leader, b.grown)) return false;
  return b.leader === null || !doesSegmentMeetBox(...b.leader, a.grown);
}

/** Cost of a place beside those of the others; Infinity where it cannot be. */
function costBeside(option: Candidate, own: number, chosen: readonly (Candidate | null)[]): number {
  let cost = option.cost;
  for (let k = 0; k < chosen.length; k++) {
    const other = chosen[k] ?? null;
    if (other === null || k === own) continue;
    if (!canStandBeside(option, other)) return Infinity;
    if (other.leader === null) continue;
    if (option.leader !== null && doSegmentsCross(...option.leader, ...other.leader)) cost += CROSSING_COST;
  }
  return cost;
}

function isInside(box: Box, frame: Box): boolean {
  return (
    box.x >= frame.x &&
    box.y >= frame.y &&
    box.x + box.width <= frame.x + frame.width &&
    box.y + box.height <= frame.y + frame.height
  );
}
