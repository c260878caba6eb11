import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { listLengths, mayReplace } from '../../job/may-replace.ts';
import type { AssemblyQuestion } from './assembly-question.ts';
import { findFootLayer, type HoldingSite } from './holding-site.ts';

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
  const { catalogue, castIn, item, rules } = question;
  const fitting = catalogue.filter((other) => {
    const behind = mayReplace(castIn, item, other) ? findBehindFoot(site, top, other) : null;
    return behind !== null && behind >= rules.cover.behindFoot_mm;
  });
  if (fitting.length === 0)
    return `no ${item.thread} of the catalogue fits there: another place, less recess or more thickness is needed`;
  return `${item.thread} of the catalogue that fit: ${listLengths(fitting)}; check again with the one taken`;
}
