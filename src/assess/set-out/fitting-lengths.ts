import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { type AssemblyQuestion, showLength } from './assembly-question.ts';
import { findFootLayer, type HoldingSite } from './holding-site.ts';

/** Whether an insert may be taken for this one: same thread, and rated for the role where only a rating lets it be used. */
function isAlike({ castIn, item }: AssemblyQuestion, other: CatalogueItem): boolean {
  if (other.thread !== item.thread) return false;
  const { role } = castIn;
  if (role === 'brace' || role === 'lifting') return other.ratedLoads.some((rated) => rated.role === role);
  return other.ratedLoads.length === 0;
}

/** Concrete behind the foot of an insert [mm]; null where its foot does not stand within one structural layer, or it comes through. */
export function findBehindFoot(
  site: HoldingSite,
  top: number,
  { length_mm, embedment_mm }: Pick<CatalogueItem, 'length_mm' | 'embedment_mm'>,
): number | null {
  const end = top + length_mm;
  if (site.edge !== null) return site.edge.width > end ? site.edge.width - end : null;
  const { layer } = findFootLayer(site, top + embedment_mm, end);
  return layer === null ? null : layer.to - end;
}

/**
 * Names the inserts of the catalogue that would fit in place of one that does not: same thread, foot in one structural layer with the cover that
 * the rules want behind it. Whether they carry the load is for the check to say.
 */
export function tellFittingLengths(question: AssemblyQuestion, site: HoldingSite, top: number): string {
  const { catalogue, item, rules } = question;
  const fitting = catalogue.filter((other) => {
    const behind = isAlike(question, other) ? findBehindFoot(site, top, other) : null;
    return behind !== null && behind >= rules.cover.behindFoot_mm;
  });
  if (fitting.length === 0)
    return `no ${item.thread} of the catalogue fits there: another place, less recess or more thickness is needed`;
  const byLength = [...fitting].sort((a, b) => a.length_mm - b.length_mm || (a.id < b.id ? -1 : 1));
  const list = byLength.map(({ id, length_mm }) => `${showLength(length_mm)} (${id})`).join(', ');
  return `${item.thread} of the catalogue that fit: ${list}; check again with the one taken`;
}
