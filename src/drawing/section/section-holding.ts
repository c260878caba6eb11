import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import { findHoldingStage } from '../../engine/form/holding-methods.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { HoldingPart } from '../../job/documents/holding-parts.ts';
import type { Fill, Mark } from '../drawing.ts';
import { drawArea, drawCircle, drawLine, drawPath, rectangle } from '../marks.ts';
import { findFrame, pointOn, type SectionFrame } from './section-frame.ts';
import { SIDE_FORM } from './section-ground.ts';
import { findFootDiameter } from './section-insert.ts';
import { findBounds } from './section-words.ts';

/** Sizes of what the job does not give, drawn as such a thing usually is [mm]. */
const USUAL = {
  /** Of a bridging bar or board across the form. */
  beam: 14,
  boltHead: 8,
  nail: 8,
  pad: 2,
  chairLeg: 5,
  cageBar: 10,
  cap: 3,
};

/** A rectangle along the insert's axis, from one length to another, `half` to both sides. */
function block(frame: SectionFrame, from: number, to: number, half: number, fill: Fill, narrow = half): Mark {
  const ring = [pointOn(frame, from, -half), pointOn(frame, to, -narrow), pointOn(frame, to, narrow)];
  return drawArea('holding', 'medium', fill, [...ring, pointOn(frame, from, half)]);
}

/** How far bolts and studs go into the thread [mm]: as much as their diameter, if there is so much. */
function findStud({ item }: Assembly): number {
  return item.threadStartsBelowTop_mm + Math.min(findThread(item.thread).diameter, item.threadDepth_mm);
}

function findPart({ parts }: Assembly, kind: HoldingPart['kind']): HoldingPart | null {
  return parts.find(({ part }) => part.kind === kind)?.part ?? null;
}

/** Half the width of the recess, or of what leaves it. */
export function findHalfWidth({ way, item }: Assembly): number {
  return (way.recessWidth_mm ?? 2 * item.bodyDiameter_mm) / 2;
}

/** What sits in the recess between form and insert, and its stud in the thread. */
function drawInRecess(assembly: Assembly, frame: SectionFrame): readonly Mark[] {
  const { recess, way, item } = assembly;
  const half = findHalfWidth(assembly);
  const stud = block(frame, -recess, findStud(assembly), findThread(item.thread).diameter / 2, 'grey');
  if (recess <= 0) return [stud];
  const isFormer = way.method === 'recess former';
  const body = block(
    frame,
    -recess,
    0,
    half,
    way.method === 'magnet' ? 'black' : 'grey',
    isFormer ? 0.75 * half : half,
  );
  if (way.method === 'nail-on plate') {
    const nails = [-0.75, 0.75].map((side) =>
      drawLine('holding', pointOn(frame, 0, side * half), pointOn(frame, -recess - USUAL.nail, side * half), 'thick'),
    );
    return [stud, body, ...nails];
  }
  if (way.method === 'stick-on plate')
    return [stud, body, block(frame, -recess, -recess + Math.min(USUAL.pad, recess / 2), half, 'black')];
  return [stud, body];
}

/** The bolt through the side form into the insert, with its head outside. */
function drawThroughBolt(assembly: Assembly, frame: SectionFrame): readonly Mark[] {
  const { recess, item } = assembly;
  const { diameter } = findThread(item.thread);
  const outside = -recess - SIDE_FORM * Math.cos(frame.tilt);
  const former = recess > 0 ? [block(frame, -recess, 0, findHalfWidth(assembly), 'grey')] : [];
  return [
    ...former,
    block(frame, outside, findStud(assembly), diameter / 2, 'grey'),
    block(frame, outside - USUAL.boltHead, outside, 0.85 * diameter, 'grey'),
  ];
}

/** A chair with two legs under the foot, true in height. */
function drawChair(assembly: Assembly): readonly Mark[] {
  const bounds = findBounds(assembly);
  const k = assembly.stack.findIndex(({ kind }) => kind === 'chair');
  if (k < 0) throw new Error(`section ${assembly.letter}: held on a chair, and its stack has none`);
  const [low, high] = [bounds[k]!, bounds[k + 1]!];
  const half = findFootDiameter(assembly.item) / 2;
  const leg = Math.min(USUAL.chairLeg, half / 2);
  const legs = [-1, 1].map((side) =>
    drawArea('holding', 'medium', 'grey', [
      [side * half, high],
      [side * (half - leg), high],
      [side * (1.3 * half - leg), low],
      [side * 1.3 * half, low],
    ]),
  );
  const seat = Math.min(leg, (high - low) / 2);
  return [...legs, drawArea('holding', 'medium', 'grey', rectangle(-half, high - seat, 2 * half, seat))];
}

/** A bar or board over the form, and the bolt that the insert hangs from. */
function drawBeam(assembly: Assembly, frame: SectionFrame, reach: number): readonly Mark[] {
  const { thickness, item } = assembly;
  const { diameter } = findThread(item.thread);
  const top = thickness - frame.top[1];
  return [
    block(frame, -top - USUAL.beam, findStud(assembly), diameter / 2, 'grey'),
    drawArea('holding', 'medium', 'grey', rectangle(-reach, thickness, 2 * reach, USUAL.beam)),
    block(frame, -top - USUAL.beam - USUAL.boltHead, -top - USUAL.beam, 0.85 * diameter, 'grey'),
  ];
}

/** Two bars of the cage, seen on their ends, with the tie around the body. Their places are not those of the cage. */
function drawCage({ item }: Assembly, frame: SectionFrame): readonly Mark[] {
  const u = item.embedment_mm / 2;
  const radius = USUAL.cageBar / 2;
  const aside = item.bodyDiameter_mm / 2 + radius;
  const round = (side: number) => drawCircle('bar', 'medium', 'grey', pointOn(frame, u, side * aside), radius);
  const tie = [-1, 1].map((side) =>
    drawPath(
      'holding',
      [
        pointOn(frame, u - side * 1.4 * radius, -aside - 1.2 * radius),
        pointOn(frame, u + side * 1.4 * radius, aside + 1.2 * radius),
      ],
      'thin',
    ),
  );
  return [round(-1), round(1), ...tie];
}

/** The cap on the top against mortar, as thick as its part says. */
function drawCap(assembly: Assembly, frame: SectionFrame): readonly Mark[] {
  const cap = findPart(assembly, 'cap');
  if (cap === null || assembly.place !== 'trowelled face') return [];
  const room = assembly.thickness - frame.top[1];
  const height = Math.min(room, cap.height_mm ?? USUAL.cap);
  return height > 0 ? [block(frame, -height, 0, assembly.item.bodyDiameter_mm / 2, 'black')] : [];
}

/** How far in front of the side form a way of holding stands [mm]. */
export function findStandOut({ place, way }: Assembly): number {
  return place === 'edge' && way.method === 'through the side form' ? USUAL.boltHead + 4 : 2;
}

/** What holds an insert in the form, at 1:1. @param reach of the picture to both sides of the axis [mm] */
export function drawHolding(assembly: Assembly, reach: number): readonly Mark[] {
  const frame = findFrame(assembly);
  // A way that does not hold there is told among the findings; there is nothing to draw.
  if (findHoldingStage(assembly.way.method, assembly.place) === null) return [];
  switch (assembly.way.method) {
    case 'nail-on plate':
    case 'stick-on plate':
    case 'magnet':
    case 'recess former':
      return drawInRecess(assembly, frame);
    case 'template board':
      return assembly.place === 'trowelled face' ? drawBeam(assembly, frame, reach) : drawInRecess(assembly, frame);
    case 'through the side form':
      return drawThroughBolt(assembly, frame);
    case 'chair':
      return [...drawChair(assembly), ...drawCap(assembly, frame)];
    case 'bridging bar':
      return drawBeam(assembly, frame, reach);
    case 'tied to the cage':
      return [...drawCage(assembly, frame), ...drawCap(assembly, frame)];
  }
}
