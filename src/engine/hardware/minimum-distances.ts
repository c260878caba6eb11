import type { Point } from '../geometry/point.ts';

/** Least distances of one rule [mm]; null where the rule gives none. */
export interface MinimumDistances {
  /** From an insert's axis to the nearest edge. */
  readonly edge: number | null;
  /** Between the axes of two inserts. */
  readonly spacing: number | null;
  /** Thickness of the concrete. */
  readonly thickness: number | null;
  /** Who asks for it: a clause or a product document. */
  readonly source: string;
}

/** An insert, and how far the nearest edge of its face is [mm]; null: none near. */
export interface PlacedInsert {
  readonly id: string;
  readonly at: Point;
  readonly edgeDistance: number | null;
}

/** One distance that is below what a rule asks for [mm]. */
export interface TooClose {
  readonly kind: 'edge' | 'spacing' | 'thickness';
  /** One insert (edge), two (spacing) or all (thickness). */
  readonly inserts: readonly string[];
  readonly has: number;
  readonly needs: number;
  readonly source: string;
}

/** Coordinates may be off by rounding [mm]. */
const ROUNDING = 1e-6;

/**
 * Lists every edge distance, spacing and thickness below the least of any of the rules, in the order of the rules.
 * A distance equal to the least is enough. Thickness null: not judged.
 */
export function findTooClose(
  inserts: readonly PlacedInsert[],
  thickness: number | null,
  rules: readonly MinimumDistances[],
): readonly TooClose[] {
  return rules.flatMap((rule) => [
    ...findEdgesTooClose(inserts, rule),
    ...findPairsTooClose(inserts, rule),
    ...findTooThin(inserts, thickness, rule),
  ]);
}

function isBelow(has: number, needs: number): boolean {
  return has < needs - ROUNDING;
}

function findEdgesTooClose(inserts: readonly PlacedInsert[], { edge, source }: MinimumDistances): readonly TooClose[] {
  if (edge === null) return [];
  return inserts.flatMap(({ id, edgeDistance }) =>
    edgeDistance !== null && isBelow(edgeDistance, edge)
      ? [{ kind: 'edge' as const, inserts: [id], has: edgeDistance, needs: edge, source }]
      : [],
  );
}

function findPairsTooClose(
  inserts: readonly PlacedInsert[],
  { spacing, source }: MinimumDistances,
): readonly TooClose[] {
  if (spacing === null) return [];
  return inserts.flatMap((one, i) =>
    inserts.slice(i + 1).flatMap((other) => {
      const has = Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]);
      return isBelow(has, spacing)
        ? [{ kind: 'spacing' as const, inserts: [one.id, other.id], has, needs: spacing, source }]
        : [];
    }),
  );
}

function findTooThin(
  inserts: readonly PlacedInsert[],
  thickness: number | null,
  rule: MinimumDistances,
): readonly TooClose[] {
  if (thickness === null || rule.thickness === null || !isBelow(thickness, rule.thickness)) return [];
  const { source } = rule;
  return [{ kind: 'thickness', inserts: inserts.map(({ id }) => id), has: thickness, needs: rule.thickness, source }];
}
