import { netSectionAtCrossHole } from '../../engine/hardware/cross-hole.ts';
import { findStripLoads } from '../../engine/hardware/engagement.ts';
import { findBoltSteel } from '../../engine/hardware/property-classes.ts';
import { diametralAllowance } from '../../engine/hardware/thread-shear.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import { tubeSection } from '../../engine/hardware/tightening.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { workOut } from '../assess-connection.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';

const N_PER_KN = 1000;

/** What pull tests of inserts of one type in one panel are planned from. Forces kN, lengths mm. */
export interface PullBasis {
  readonly item: CatalogueItem;
  readonly concrete: string;
  /** Inserts of this type in this concrete, in all pieces that pours of the job plan. */
  readonly lot: number;
  /** Greatest design tension of one insert over all combinations; null: nothing pulls at them, or it cannot be computed. */
  readonly design: number | null;
  /** What the least of bolt, body and thread yields at. */
  readonly steelYield: number;
  /** Deepest start of a cone below the face. */
  readonly depth: number;
}

/** Why no pull test can be planned of some inserts. */
export type NoBasis = 'none chosen' | 'a type is not known' | 'several types' | 'not for pulling';

/** Inserts of a type in a concrete, over every piece that a pour plans. */
function countLot({ file, panels, castInsOf }: JobIndex, type: string, concrete: string): number {
  let count = 0;
  for (const { pieces } of file.job.pours)
    for (const { panel } of pieces)
      if (panels.get(panel)?.concrete === concrete)
        count += castInsOf(panel).filter(({ item }) => item === type).length;
  return count;
}

/** Greatest design tension of each insert of a panel by its key [N]. */
function findTensions(index: JobIndex, connections: readonly Connection[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const connection of connections) {
    const { worked } = workOut(resolveConnection(index, connection));
    if (worked === null) continue;
    for (const { combination } of worked.cases) {
      if (combination.kind === 'unsolved') continue;
      for (const [k, { key }] of worked.resolved.source.castIns.entries())
        found.set(key, Math.max(found.get(key) ?? 0, combination.actions.inserts[k]!.N));
    }
  }
  return found;
}

/** What the least of bolt, insert body (around the thread, at its cross hole) and threads yields at [N]. */
function findSteelYield({ file }: JobIndex, item: CatalogueItem, connections: readonly Connection[]): number {
  const { defaults } = file.library.rules;
  const thread = findThread(item.thread);
  const classes = new Set([defaults.boltClass, ...connections.map(({ boltClass }) => boltClass ?? defaults.boltClass)]);
  const bolt = Math.min(...[...classes].map((one) => findBoltSteel(one).yield));
  const allowance = diametralAllowance(thread, item.threadClass);
  const { bodyDiameter_mm: body, crossHole, steel } = item;
  const wall = tubeSection(body, thread.diameter + allowance).area;
  const net =
    crossHole === null ? wall : netSectionAtCrossHole(body, crossHole.boreThere_mm, crossHole.diameter_mm).area;
  const strip = findStripLoads(
    { thread, allowance, bodyDiameter: body },
    Math.min(item.threadDepth_mm, defaults.engagement_d * thread.diameter),
    { bolt, insert: steel.yield_MPa },
  );
  return Math.min(
    thread.stressArea * bolt,
    Math.min(wall, net) * steel.yield_MPa,
    ...(strip === null ? [] : [strip.bolt, strip.insert]),
  );
}

/**
 * What pull tests of some inserts of a panel are planned from; they must be of one type, and none for lifting: a lifting insert is tested by its maker's rules.
 */
export function findPullBasis(
  index: JobIndex,
  { setOut }: PiecePlan,
  items: readonly SetOutItem[],
): PullBasis | NoBasis {
  const [first] = items;
  if (first === undefined) return 'none chosen';
  if (items.some(({ castIn }) => castIn.role === 'lifting')) return 'not for pulling';
  const { item } = first;
  if (item === null || items.some((one) => one.item === null)) return 'a type is not known';
  if (items.some((one) => one.item?.id !== item.id)) return 'several types';
  const { panel } = setOut;
  const own = index
    .connectionsOf(panel.mark)
    .filter(({ inserts }) => inserts.some(({ insert }) => items.some(({ castIn }) => castIn.id === insert)));
  const tensions = findTensions(index, own);
  const design = Math.max(0, ...items.map(({ castIn }) => tensions.get(castIn.key) ?? 0));
  return {
    item,
    concrete: panel.concrete,
    lot: Math.max(items.length, countLot(index, item.id, panel.concrete)),
    design: design > 0 ? design / N_PER_KN : null,
    steelYield: findSteelYield(index, item, own) / N_PER_KN,
    depth: item.embedment_mm + Math.max(...items.map(({ castIn }) => castIn.recess_mm)),
  };
}
