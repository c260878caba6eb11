import { type BagLabel, type BenchLine, describePanels, listBagLabels, listBench } from '../../assess/parts/bench.ts';
import type { KindNeed } from '../../assess/parts/needs.ts';
import type { PartLine } from '../../assess/parts/part-kind.ts';
import { answerParts, type PartsAnswer, type PartsScope, type YardLists } from '../../assess/parts/parts-answer.ts';
import { listBenchRows, listLabelRows, listPartRows } from '../../drawing/lists/part-rows.ts';
import { writeBench, writeLabels, writeParts } from '../../files/csv/write-parts.ts';
import type { JobIndex } from '../../job/job-index.ts';

/** A pour with what is laid out for it. */
export interface PourPartsView {
  readonly id: string;
  readonly date: string;
  readonly bed: string;
  readonly panels: readonly { readonly mark: string; readonly serials: readonly string[] }[];
  readonly inserts: number;
  readonly bench: readonly (Pick<BenchLine, 'kind' | 'count' | 'spares'> & { readonly panels: string })[];
  readonly labels: readonly BagLabel[];
  /** Bolts and washers, which go to the site with the panels. */
  readonly site: readonly PartLine[];
}

/** The parts of a job as a screen shows them: without the set-outs that they were counted from. */
export interface PartsView {
  readonly today: string;
  readonly state: PartsAnswer['state'];
  readonly needs: readonly KindNeed[];
  readonly shortages: PartsAnswer['shortages'];
  readonly pours: readonly PourPartsView[];
  /** One casting of each panel. */
  readonly panels: readonly {
    readonly mark: string;
    readonly pour: string | null;
    readonly serials: readonly string[];
    readonly lines: readonly PartLine[];
  }[];
  readonly unplanned: readonly string[];
  readonly lookAlikes: readonly string[];
  readonly open: readonly string[];
  readonly errors: readonly string[];
  readonly notes: readonly string[];
  /** Counts of drawing and schedule that do not agree, and holes without an insert. */
  readonly differences: readonly string[];
  readonly loose: readonly string[];
}

const WHOLE: PartsScope = { pour: null, panel: null };

function listDifferences({ counts: { rows, holes } }: PartsAnswer): readonly string[] {
  const ofRows = rows.flatMap(({ kind, differences }) => differences.map((difference) => `${kind.id}: ${difference}`));
  return [...ofRows, ...holes];
}

/** Counts the parts of a whole job. */
export function viewParts(index: JobIndex, lists: YardLists): PartsView {
  const answer = answerParts(index, WHOLE, lists);
  const rule = index.file.library.yard.spares;
  return {
    today: answer.today,
    state: answer.state,
    needs: answer.needs,
    shortages: answer.shortages,
    pours: answer.parts.pours.map((pour) => ({
      id: pour.plan.pour.id,
      date: pour.plan.pour.date,
      bed: pour.plan.bed.name,
      panels: pour.panels.map(({ parts: { mark }, serials }) => ({ mark, serials })),
      inserts: pour.lines.reduce((sum, { kind, count }) => (kind.group === 'inserts' ? sum + count : sum), 0),
      bench: listBench(pour, rule).map(({ kind, count, spares, panels }) => ({
        kind,
        count,
        spares,
        panels: describePanels(panels),
      })),
      labels: listBagLabels(pour),
      site: pour.lines.filter(({ kind }) => kind.neededAt === 'site'),
    })),
    panels: answer.castings.map(({ pour, serials, parts }) => ({
      mark: parts.mark,
      pour,
      serials,
      lines: parts.lines,
    })),
    unplanned: answer.parts.unplanned.map(({ parts: { mark } }) => mark),
    lookAlikes: answer.lookAlikes.map(({ text, panels }) =>
      panels.length === 0 ? `${text} (in different panels of one pour)` : `${text} (in ${panels.join(', ')})`,
    ),
    open: answer.open,
    errors: answer.errors,
    notes: answer.notes,
    differences: listDifferences(answer),
    loose: answer.counts.loose,
  };
}

/** Lists that can be taken along as CSV. */
export type PartsList = 'parts' | 'bench' | 'labels';

/** One of the lists as CSV, of the whole job or of what is asked for. */
export function writePartsList(index: JobIndex, list: PartsList, scope: PartsScope, lists: YardLists): string {
  const answer = answerParts(index, scope, lists);
  switch (list) {
    case 'parts':
      return writeParts(listPartRows(answer));
    case 'bench':
      return writeBench(listBenchRows(answer.pours, index.file.library.yard.spares));
    case 'labels':
      return writeLabels(listLabelRows(answer));
  }
}
