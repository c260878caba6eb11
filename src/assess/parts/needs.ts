import type { JobIndex } from '../../job/job-index.ts';
import { nameKind } from './add-lines.ts';
import { addDays } from './calendar.ts';
import type { JobParts } from './job-parts.ts';
import type { PartKind, PartLine } from './part-kind.ts';
import { followUses, type Use } from './reuse.ts';
import { countPacks, countSpares, roundShareUp, type SparesRule } from './spares.ts';
import { countAtHand, type KindStock, type StockLine, sumStock } from './stock.ts';

/** What must be at hand on the day of one pour, for it and for all from today up to it. */
export interface PourNeed {
  readonly pour: string;
  readonly date: string;
  readonly needed: number;
  /** In stock, or on order and there before that day; null: no stock is given. */
  readonly atHand: number | null;
  readonly short: number;
  /** Day before the pour, when the bench is laid, less the lead time; null: the lead time is not known. */
  readonly orderBy: string | null;
  /** What is short could only have come by an order before today. */
  readonly isTooLate: boolean;
}

/** Need of one kind from today on against what the yard has. */
export interface KindNeed {
  readonly kind: PartKind;
  /** Placed over all castings to come; of a reusable part: its uses. */
  readonly count: number;
  readonly spares: number;
  /** Of a reusable part: the most in use at once, and what is lost over the job. */
  readonly reuse: { readonly atOnce: number; readonly lost: number } | null;
  readonly needed: number;
  /** Null: no stock is given, or it does not keep such things. */
  readonly stock: KindStock | null;
  /** What is neither in stock nor on order, and the whole packs that hold it; all that is needed where no stock is given. */
  readonly toOrder: number;
  readonly packs: number;
  /** Pours from today on that need some. */
  readonly byPour: readonly PourNeed[];
}

interface Setting {
  readonly rule: SparesRule;
  readonly stock: readonly StockLine[] | null;
  /** YYYY-MM-DD; pours before this day are cast, and their parts gone from the stock. */
  readonly today: string;
}

/** A job's counts by the name of the kind, so that asking for each kind stays linear in the size of the job. */
interface Tables {
  readonly pours: readonly {
    readonly id: string;
    readonly date: string;
    readonly counts: ReadonlyMap<string, number>;
  }[];
  readonly unplanned: readonly ReadonlyMap<string, number>[];
}

function tabulate(lines: readonly PartLine[]): ReadonlyMap<string, number> {
  return new Map(lines.map(({ kind, count }) => [nameKind(kind), count]));
}

/** What the pours up to and with each one ask for: placed and spare, or in use and lost. */
function runUp(kind: PartKind, uses: readonly Use[], { rule, today }: Setting): readonly number[] {
  if (kind.reuse !== null) return followUses(uses, kind.reuse, today).map(({ inUse, lost }) => inUse + lost);
  let placed = 0;
  return uses.map(({ date, count }) => {
    if (date >= today) placed += count;
    return placed + countSpares(kind, placed, rule);
  });
}

/**
 * The whole need of a kind. Used up: what is placed, and the spares for that sum (a spare that one pour leaves over is the next one's). Reusable: the
 * most in use at once, and what is lost over all uses. Panels that no pour casts have no day: their uses may come one after another, so
 * at once they count as the one that takes most.
 */
function findWhole(
  kind: PartKind,
  uses: readonly Use[],
  unplanned: readonly number[],
  { rule, today }: Setting,
): Pick<KindNeed, 'count' | 'spares' | 'reuse' | 'needed'> {
  const toCome = uses.filter(({ date }) => date >= today).map((use) => use.count);
  const count = [...toCome, ...unplanned].reduce((sum, one) => sum + one, 0);
  if (kind.reuse === null) {
    const spares = countSpares(kind, count, rule);
    return { count, spares, reuse: null, needed: count + spares };
  }
  const steps = followUses(uses, kind.reuse, today).filter((_, i) => uses[i]!.date >= today && uses[i]!.count > 0);
  const atOnce = Math.max(0, ...steps.map(({ inUse }) => inUse), ...unplanned);
  const lost = roundShareUp(kind.reuse.lossPerUse, count);
  return { count, spares: 0, reuse: { atOnce, lost }, needed: atOnce + lost };
}

function needOf(kind: PartKind, { pours, unplanned }: Tables, setting: Setting): KindNeed {
  const { stock, today } = setting;
  const name = nameKind(kind);
  const uses = pours.map(({ date, counts }) => ({ date, count: counts.get(name) ?? 0 }));
  const whole = findWhole(
    kind,
    uses,
    unplanned.map((counts) => counts.get(name) ?? 0),
    setting,
  );
  const sum = stock === null ? null : sumStock(stock, kind.id);
  // What is described in words only is mostly brought by others: it counts as stock where the stock names it.
  const own = sum !== null && (sum.isListed || kind.group !== 'other cast-ins') ? sum : null;
  const toOrder = Math.max(0, whole.needed - (own === null ? 0 : own.inStock + own.onOrder));
  const running = runUp(kind, uses, setting);
  const byPour = pours.flatMap(({ id, date }, i): PourNeed[] => {
    if (kind.neededAt === 'site' || date < today || uses[i]!.count === 0) return [];
    const needed = running[i]!;
    const atHand = own === null ? null : countAtHand(own, date, today);
    const short = Math.max(0, needed - (atHand ?? needed));
    const orderBy = kind.leadTime === null ? null : addDays(date, -Math.ceil(kind.leadTime) - 1);
    return [
      { pour: id, date, needed, atHand, short, orderBy, isTooLate: short > 0 && orderBy !== null && orderBy < today },
    ];
  });
  return { kind, ...whole, stock: own, toOrder, packs: countPacks(toOrder, kind.packSize), byPour };
}

/** The need of every kind of a job from today on, against stock where it is given. */
export function findNeeds(
  index: JobIndex,
  parts: JobParts,
  stock: readonly StockLine[] | null,
  today: string,
): readonly KindNeed[] {
  const setting: Setting = { rule: index.file.library.yard.spares, stock, today };
  const tables: Tables = {
    pours: parts.pours.map(({ plan: { pour }, lines }) => ({ id: pour.id, date: pour.date, counts: tabulate(lines) })),
    unplanned: parts.unplanned.map((panel) => tabulate(panel.parts.lines)),
  };
  return parts.lines.map(({ kind }) => needOf(kind, tables, setting));
}
