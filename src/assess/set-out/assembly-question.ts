import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { HoldingPart, HoldingWay } from '../../job/documents/holding-parts.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Rules } from '../../job/documents/rules.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { findPlace } from './panel-view.ts';
import type { FormPlace } from './set-out.ts';
import type { SetOutProblem } from './set-out-problem.ts';

/** One insert, its place and its way of holding, of which an assembly is to be made. */
export interface AssemblyQuestion {
  readonly panel: Panel;
  readonly castIn: CastIn;
  readonly item: CatalogueItem;
  readonly way: HoldingWay;
  /** Every holding part of the yard by its id. */
  readonly parts: ReadonlyMap<string, HoldingPart>;
  /** That the panel is cast on; null: none is named. */
  readonly bed: Bed | null;
  readonly rules: Rules;
  readonly place: FormPlace;
  /** Among which another length is looked for. */
  readonly catalogue: readonly CatalogueItem[];
}

/**
 * The question of an insert of a job; null where it has no catalogue type or its way of holding is not decided.
 * @param bed that the panel is cast on; null: none is named
 */
export function askAssembly(
  { items, ways, parts, file: { library } }: JobIndex,
  panel: Panel,
  castIn: CastIn,
  bed: Bed | null,
): AssemblyQuestion | null {
  const item = castIn.item === null ? undefined : items.get(castIn.item);
  const way = castIn.holding === null ? undefined : ways.get(castIn.holding);
  if (item === undefined || way === undefined) return null;
  const { rules, catalogue } = library;
  const place = findPlace(panel, castIn);
  return { panel, castIn, item, way, parts, bed, rules, place, catalogue: catalogue.items };
}

/** A finding without the insert that it is about. */
export type Finding = Pick<SetOutProblem, 'severity' | 'kind' | 'text'>;

/** A part that a way names. */
export function findPart({ parts, way }: Pick<AssemblyQuestion, 'parts' | 'way'>, id: string): HoldingPart {
  const part = parts.get(id);
  if (part === undefined) throw new Error(`way of holding ${way.id}: no part ${id} among the holding parts`);
  return part;
}
