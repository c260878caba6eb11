import { type BagLabel, type BenchLine, describePanels, listBagLabels, listBench } from '../../assess/parts/bench.ts';
import { addUpJob } from '../../assess/parts/job-parts.ts';
import type { KindNeed } from '../../assess/parts/needs.ts';
import type { PartLine } from '../../assess/parts/part-kind.ts';
import { answerParts, type PartsAnswer, type PartsScope, type YardLists } from '../../assess/parts/parts-answer.ts';
import { planPour } from '../../assess/set-out/plan-pour.ts';
import { setOutPanel } from '../../assess/set-out/set-out-panel.ts';
import { listBenchRows, listLabelRows, listPartRows } from '../../drawing/lists/part-rows.ts';
import { writeBench, writeLabels, writeParts } from '../../files/csv/write-parts.ts';
import type { JobIndex } from '../../job/job-index.ts';

/** A pour with what is laid out for it. */
export interface PourPartsView {
  readonly id: string;
  readonly date: string;
  readonly bed: string;
  readonly panels: readonly { readonly mark: string; readonly serials: readonly string[] }[];
  readonly bench: readonly (Pick<BenchLine, 'kind' | 'count' | 'spares'> & { readonly panels: string })[];
  readonly labels: readonly BagLabel[];
  /** Bolts and washers, which go to the site with the panels. */
  readonly site: readonly PartLine[];
}

/** One casting of a panel, as a pour casts it; pour null: none does. */
export interface CastingView {
  readonly pour: string | null;
  readonly serials: readonly string[];
  readonly lines: readonly PartLine[];
}

/** The parts of a job as a screen shows them: without the set-outs that they were counted from, and what pours and panels take by themselves. */
export interface PartsView {
  readonly today: string;
  readonly state: PartsAnswer['state'];
  readonly needs: readonly KindNeed[];
  readonly shortages: PartsAnswer['shortages'];
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

/** What one pour takes. Throws Error where the job has no such pour. */
export function viewPourParts(index: JobIndex, id: string): PourPartsView {
  const [pour] = addUpJob(index, [planPour(index, id)], []).pours;
  if (pour === undefined) throw new Error(`pour ${id} has no parts`);
  return {
    id: pour.plan.pour.id,
    date: pour.plan.pour.date,
    bed: pour.plan.bed.name,
    panels: pour.panels.map(({ parts: { mark }, serials }) => ({ mark, serials })),
    bench: listBench(pour, index.file.library.yard.spares).map(({ kind, count, spares, panels }) => ({
      kind,
      count,
      spares,
      panels: describePanels(panels),
    })),
    labels: listBagLabels(pour),
    site: pour.lines.filter(({ kind }) => kind.neededAt === 'site'),
  };
}

/** What one casting of a panel takes, in each pour that casts it: on another bed it may take other parts. */
export function viewPanelParts(index: JobIndex, mark: string): readonly CastingView[] {
  const pours = index.file.job.pours.filter(({ pieces }) => pieces.some(({ panel }) => panel === mark));
  if (pours.length === 0) {
    const [own] = addUpJob(index, [], [setOutPanel(index, mark, null)]).unplanned;
    return own === undefined ? [] : [{ pour: null, serials: [], lines: own.parts.lines }];
  }
  const plans = pours.map(({ id }) => planPour(index, id));
  return addUpJob(index, plans, []).pours.flatMap(({ plan, panels }) =>
    panels
      .filter(({ parts }) => parts.mark === mark)
      .map(({ parts, serials }) => ({ pour: plan.pour.id, serials, lines: parts.lines })),
  );
}

/** Counts the parts of a whole job. */
export function viewParts(index: JobIndex, lists: YardLists): PartsView {
  const answer = answerParts(index, WHOLE, lists);
  return {
    today: answer.today,
    state: answer.state,
    needs: answer.needs,
    shortages: answer.shortages,
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
