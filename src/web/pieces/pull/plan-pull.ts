import { findPullBasis, type NoBasis, type PullBasis } from '../../../assess/proof-load/pull-basis.ts';
import { type ProofLoadPlan, planProofLoad } from '../../../assess/proof-load/test-plan.ts';
import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { BodyOf } from '../../../records/record.ts';
import type { OpenPiece } from '../read-piece.ts';

const S_PER_MIN = 60;

/** What a person asks of pull tests; null: common practice. */
export interface AskedPull {
  readonly items: readonly SetOutItem[];
  readonly load_kN: number | null;
  readonly hold_min: number | null;
  readonly movement_mm: number | null;
}

/** A plan as it would be, or why there is none. */
export type PlannedPull =
  | { readonly kind: 'none'; readonly why: NoBasis }
  /** No action is known of these inserts: the load must be given. */
  | { readonly kind: 'no load'; readonly basis: PullBasis }
  | { readonly kind: 'planned'; readonly basis: PullBasis; readonly plan: ProofLoadPlan; readonly usualCount: number };

/** Inserts that may be pulled at all: threaded ones of a known type that are not for lifting. */
export function listPullable({ plan }: Pick<OpenPiece, 'plan'>): readonly SetOutItem[] {
  return plan.setOut.items.filter(({ item, castIn }) => item !== null && castIn.role !== 'lifting');
}

/** Plans pull tests as they are asked for; the load never goes beyond what the steel may see. */
export function planPull(
  { context, plan }: Pick<OpenPiece, 'context' | 'plan'>,
  { items, load_kN, hold_min, movement_mm }: AskedPull,
): PlannedPull {
  const basis = findPullBasis(context.index, plan, items);
  if (typeof basis === 'string') return { kind: 'none', why: basis };
  const design = load_kN ?? basis.design;
  if (design === null) return { kind: 'no load', basis };
  const given = {
    lot: basis.lot,
    design,
    steelYield: basis.steelYield,
    depth: basis.depth,
    // Where the feet stand is measured at each pull.
    support: Number.POSITIVE_INFINITY,
    factor: load_kN === null ? null : 1,
    hold: hold_min === null ? null : hold_min * S_PER_MIN,
    displacement: movement_mm,
  };
  return {
    kind: 'planned',
    basis,
    plan: planProofLoad({ ...given, count: items.length }),
    usualCount: planProofLoad({ ...given, count: null }).count.value,
  };
}

/** What is written down of a plan. A load is cut to hundredths of a kN: it is never rounded up. */
export function draftPull(
  { plan }: Extract<PlannedPull, { kind: 'planned' }>,
  items: readonly SetOutItem[],
  by: Pick<BodyOf<'proof-planned'>, 'role' | 'reason'>,
): BodyOf<'proof-planned'> {
  return {
    items: items.map(({ castIn }) => castIn.key),
    load_kN: Math.floor(plan.load.value * 100 + 1e-9) / 100,
    hold_min: plan.hold.value / S_PER_MIN,
    movement_mm: plan.displacement.value,
    ...by,
  };
}
