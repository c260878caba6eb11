import type { Finish } from '../material/finish.ts';
import { diametralAllowance, type InternalThreadClass } from './thread-shear.ts';
import type { Thread } from './threads.ts';

/** A bolt and an insert as they are to be put together. */
export interface Pairing {
  readonly thread: Thread;
  readonly insertClass: InternalThreadClass;
  readonly insertFinish: Finish;
  readonly boltFinish: Finish;
  /** Thickness of the bolt's coating [mm]; null where it is not known. */
  readonly boltCoating: number | null;
}

/** Whether the bolt goes in as it should, and what to know about it, a sentence each. */
export interface PairVerdict {
  readonly isAllowed: boolean;
  readonly notes: readonly string[];
}

/**
 * Gives how thick a coating the thread of a 6g bolt may have before it binds in the insert [mm].
 *
 * Source: geometry: on a flank of 60° a coating grows the pitch diameter by four times its thickness, and it may grow from the greatest
 * of 6g (before coating) to the least of the insert's thread. Example: M16 in 6AZ: (0.340 + 0.038)/4 = 0.0945 mm; in 6H 0.0095 mm.
 */
export function findCoatingRoom(thread: Thread, insertClass: InternalThreadClass): number {
  const least = thread.pitchDiameter + diametralAllowance(thread, insertClass);
  return (least - thread.bolt6g.pitchMax) / 4;
}

/** Numbers of a coating [mm] in whole µm, cut off. */
function showMicrometres(thickness: number): string {
  return `${Math.floor(thickness * 1000 + 1e-6)} µm`;
}

/**
 * Judges which bolt goes into which thread.
 *
 * Source: ISO 10684 and AS/NZS 1214 (clause 5.7 seen in an excerpt: internal threads are tapped after galvanising, never a second time):
 * a hot-dip galvanised bolt, 6g before coating, needs a thread 6AZ or 6AX. Lubricant for stainless threads: common practice.
 */
export function judgePair(pair: Pairing): PairVerdict {
  const refusal = findRefusal(pair);
  return {
    isAllowed: refusal === null,
    notes: [...(refusal === null ? [] : [refusal]), ...describeThreads(pair), ...describeContact(pair)],
  };
}

const NEVER_RETAP = 'never tap the insert again: that cuts away thread and zinc (AS/NZS 1214, 5.7)';

function findRefusal({ thread, insertClass, boltFinish, boltCoating }: Pairing): string | null {
  if (boltFinish === 'galvanised' && insertClass === '6H')
    return `a galvanised bolt does not go into a thread 6H: it needs an insert tapped oversize, 6AZ or 6AX; ${NEVER_RETAP}`;
  const room = findCoatingRoom(thread, insertClass);
  if (boltCoating !== null && boltCoating > room)
    return `a coating of ${showMicrometres(boltCoating)} on the bolt binds: ${thread.name} ${insertClass} leaves room for ${showMicrometres(room)}; ${NEVER_RETAP}`;
  return null;
}

function describeThreads({ thread, insertClass, insertFinish, boltFinish }: Pairing): readonly string[] {
  const notes: string[] = [];
  const oversize = diametralAllowance(thread, insertClass);
  if (insertClass !== '6H')
    notes.push(
      boltFinish === 'galvanised'
        ? `galvanised bolt, 6g before coating, in ${insertClass}: ${oversize.toFixed(3)} mm oversize leaves room for ${showMicrometres(findCoatingRoom(thread, insertClass))} of zinc on its thread`
        : `a ${boltFinish} bolt sits loosely in ${insertClass}, tapped ${oversize.toFixed(3)} mm oversize for galvanised bolts; the strip areas take this into account`,
    );
  if (insertFinish === 'galvanised' && insertClass === '6H' && boltFinish !== 'galvanised')
    notes.push(`a galvanised insert with thread 6H takes no galvanised bolt; ${NEVER_RETAP}`);
  if (boltFinish === 'galvanised' && insertClass !== '6H' && thread.diameter <= 10)
    notes.push(
      `galvanised ${thread.name} in an oversize thread: ISO 10684, Annex A, lowers the loads of bolts up to M10`,
    );
  return notes;
}

function describeContact({ insertFinish, boltFinish }: Pairing): readonly string[] {
  const notes: string[] = [];
  const hasZinc = (finish: Finish) => finish === 'zinc' || finish === 'galvanised';
  if (boltFinish === 'stainless' && hasZinc(insertFinish))
    notes.push(
      'stainless bolt in a zinc-coated insert: where the joint stays wet the zinc around the bolt is used up faster',
    );
  if (hasZinc(boltFinish) && insertFinish === 'stainless')
    notes.push(
      'zinc-coated bolt in a stainless insert: where the joint gets wet the small bolt loses its zinc first; take a stainless bolt',
    );
  if (boltFinish === 'plain' && insertFinish === 'stainless')
    notes.push(
      'plain bolt in a stainless insert: where the joint gets wet the small bolt rusts faster; take a stainless bolt',
    );
  if (boltFinish === 'stainless')
    notes.push(
      'stainless thread: lubricate it, turn it slowly by hand, no power tool, or it may seize (common practice)',
    );
  return notes;
}
