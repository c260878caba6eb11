import { nameKind } from './add-lines.ts';
import type { PourParts } from './job-parts.ts';
import type { PartKind, PartLine } from './part-kind.ts';
import { countSpares, type SparesRule } from './spares.ts';

/** One bin of the bench: what is laid out for a pour the day before. */
export interface BenchLine {
  readonly kind: PartKind;
  /** Built in over all castings of the pour. */
  readonly count: number;
  /** Beside them, in the same bin. */
  readonly spares: number;
  /** Each panel that takes some: how many for one casting, and of which castings. */
  readonly panels: readonly { readonly mark: string; readonly each: number; readonly serials: readonly string[] }[];
}

/** The label of one bag: what one casting takes. */
export interface BagLabel {
  readonly pour: string;
  readonly date: string;
  readonly bed: string;
  readonly panel: string;
  readonly serial: string;
  readonly revision: string;
  readonly inBag: readonly PartLine[];
  /** For the same casting, but too large for a bag or brought by others. */
  readonly beside: readonly PartLine[];
}

/** What the bench of a pour holds, bin by bin. Bolts for the site are not on it. */
export function listBench({ panels, lines }: PourParts, rule: SparesRule): readonly BenchLine[] {
  return lines
    .filter(({ kind }) => kind.neededAt === 'pour')
    .map(({ kind, count }) => ({
      kind,
      count,
      spares: countSpares(kind, count, rule),
      panels: panels.flatMap(({ parts, serials }) => {
        const own = parts.lines.find((line) => nameKind(line.kind) === nameKind(kind));
        return own === undefined ? [] : [{ mark: parts.mark, each: own.count, serials }];
      }),
    }));
}

/** A label for each casting of a pour, in its order; castings that take nothing have none. */
export function listBagLabels({ plan: { pour, bed, pieces }, panels }: PourParts): readonly BagLabel[] {
  const byMark = new Map(panels.map(({ parts }) => [parts.mark, parts]));
  return pieces.flatMap(({ panel, serial, revision }) => {
    const lines = byMark.get(panel)!.lines.filter(({ kind }) => kind.neededAt === 'pour');
    if (lines.length === 0) return [];
    const inBag = lines.filter(({ kind }) => kind.isBagged);
    const beside = lines.filter(({ kind }) => !kind.isBagged);
    return [{ pour: pour.id, date: pour.date, bed: bed.name, panel, serial, revision, inBag, beside }];
  });
}

/** For which panels a bin is: "P1: 4 each, no. 1, 2". */
export function describePanels(panels: BenchLine['panels']): string {
  return panels.map(({ mark, each, serials }) => `${mark}: ${each} each, no. ${serials.join(', ')}`).join('; ');
}
