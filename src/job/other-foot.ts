import type { CatalogueItem } from './documents/catalogue.ts';

/** The foot of an insert told the other way: a round one by its net bearing area [mm²], an area as the round foot that bears as much [mm]. */
export function findOtherFoot({ foot, bodyDiameter_mm: body }: CatalogueItem): CatalogueItem['foot'] {
  const { thickness_mm, isFullHead } = foot;
  if (foot.kind === 'diameter') {
    const area_mm2 = Math.round((Math.PI / 4) * (foot.diameter_mm ** 2 - body ** 2));
    return { kind: 'area', area_mm2, thickness_mm, isFullHead };
  }
  // Rounded down: never more foot than there is.
  const diameter_mm = Math.floor(10 * Math.sqrt((4 * foot.area_mm2) / Math.PI + body ** 2)) / 10;
  return { kind: 'diameter', diameter_mm, thickness_mm, isFullHead };
}
