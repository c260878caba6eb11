import type { CastIn } from '../documents/cast-in.ts';
import type { HoldingPart, HoldingWay } from '../documents/holding-parts.ts';
import type { DocumentFault } from '../fault.ts';
import type { Entry, SiftedJob } from '../sift.ts';
import { faultAt } from './fault-at.ts';

type Parts = ReadonlyMap<string, HoldingPart>;

function checkPart({ path, value: part }: Entry<HoldingPart>): DocumentFault[] {
  if (part.reusable || part.lossPerUse === 0) return [];
  const text = `${part.id} is used up each time, yet ${part.lossPerUse} of it is lost with each use; expected 0, or reusable: true`;
  return [faultAt([...path, 'lossPerUse'], part.lossPerUse, '0', text)];
}

/** A chair is chosen by its height, so each in the list needs one; no other way has any. */
function checkChairs({ path, value: way }: Entry<HoldingWay>, parts: Parts): DocumentFault[] {
  const at = [...path, 'chairs'];
  if (way.method !== 'chair') {
    if (way.chairs.length === 0) return [];
    const text = `${way.id} lists chairs but holds by another method (${way.method}); expected none, or the method chair`;
    return [faultAt(at, way.chairs, 'none', text)];
  }
  if (way.chairs.length === 0)
    return [faultAt(at, [], 'at least one chair', `${way.id} holds on chairs and lists none; expected at least one`)];
  return way.chairs.flatMap((id, i) => {
    const part = parts.get(id);
    if (part === undefined) return [];
    if (part.kind !== 'chair') {
      const text = `${id} is no chair but a ${part.kind}; expected parts of kind chair`;
      return [faultAt([...at, i], id, 'a chair', text)];
    }
    if (part.height_mm !== null && part.height_mm > 0) return [];
    const text = `the chair ${id} has no height; expected height_mm, from the form to the foot that stands on it`;
    return [faultAt([...at, i], id, 'a chair with a height', text)];
  });
}

/** A recess is as deep as what leaves it at most. */
function checkRecess({ path, value: way }: Entry<HoldingWay>, parts: Parts): DocumentFault[] {
  if (way.recess_mm === 0) {
    if (way.recessWidth_mm === null) return [];
    const text = `${way.id} leaves a recess ${way.recessWidth_mm} mm wide and 0 mm deep; expected recess_mm, or no width`;
    return [faultAt([...path, 'recessWidth_mm'], way.recessWidth_mm, 'no width', text)];
  }
  const heights = way.parts.flatMap(({ part }) => {
    const height = parts.get(part)?.height_mm ?? null;
    return height === null || height === 0 ? [] : [height];
  });
  const most = heights.reduce((sum, height) => sum + height, 0);
  if (heights.length === 0 || way.recess_mm <= most) return [];
  const text = `${way.id} keeps the top ${way.recess_mm} mm below the face, but its parts are ${most} mm thick; expected at most ${most} mm`;
  return [faultAt([...path, 'recess_mm'], way.recess_mm, `at most ${most} mm`, text)];
}

function checkPartThreads({ path, value: way }: Entry<HoldingWay>, parts: Parts): DocumentFault[] {
  return way.parts.flatMap(({ part }, i) => {
    const thread = parts.get(part)?.thread ?? null;
    if (way.thread === null || thread === null || thread === way.thread) return [];
    const text = `${part} is for thread ${thread}, the way ${way.id} for ${way.thread}; expected one thread`;
    return [faultAt([...path, 'parts', i, 'part'], part, `a part for ${way.thread}`, text)];
  });
}

/** An insert is held by what screws into its thread. */
function checkThread({ path, value: castIn }: Entry<CastIn>, way: HoldingWay, thread: string): DocumentFault[] {
  if (way.thread === null || way.thread === thread) return [];
  const text = `${way.id} holds thread ${way.thread}, ${castIn.item} has ${thread}; expected a way for ${thread}`;
  return [faultAt([...path, 'holding'], way.id, `a way for ${thread}`, text)];
}

/** Holding parts and ways that contradict themselves, and inserts that their way does not fit. */
export function checkHolding(job: SiftedJob): DocumentFault[] {
  const parts: Parts = new Map(job.parts.map(({ value }) => [value.id, value]));
  const ways = new Map(job.ways.map(({ value }) => [value.id, value]));
  const items = new Map(job.items.map(({ value }) => [value.id, value]));
  return [
    ...job.parts.flatMap(checkPart),
    ...job.ways.flatMap((way) => [
      ...checkChairs(way, parts),
      ...checkRecess(way, parts),
      ...checkPartThreads(way, parts),
    ]),
    ...job.castIns.flatMap((entry) => {
      const way = ways.get(entry.value.holding ?? '');
      const item = items.get(entry.value.item ?? '');
      return way === undefined || item === undefined ? [] : checkThread(entry, way, item.thread);
    }),
  ];
}
