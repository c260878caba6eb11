import { placeOnEdge } from '../../engine/form/edge-place.ts';
import type { MouldView } from '../../engine/form/mould-view.ts';
import { wholeMillimetres } from '../../engine/form/whole-millimetres.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { HoldingWay } from '../../job/documents/holding-parts.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Bed } from '../../job/documents/yard.ts';
import { panelSide } from '../../job/face-frame.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { askAssembly } from './assembly-question.ts';
import { describeSide } from './describe-side.ts';
import { type AssemblyDraft, findAssembly } from './find-assembly.ts';
import { findScatters } from './find-scatters.ts';
import { findTolerances } from './find-tolerances.ts';
import { findFormCheck } from './form-check.ts';
import { findFormWords, nameDatum } from './form-words.ts';
import { findGroups } from './groups.ts';
import { letterAssemblies } from './letter-assemblies.ts';
import { findPlace, viewPanel } from './panel-view.ts';
import type { FormPlace, FormWords, PanelSetOut, PrintedPlace, SetOutItem } from './set-out.ts';
import type { SetOutProblem } from './set-out-problem.ts';
import { orderWalk, type Stop } from './walking-order.ts';

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

/** Where an item is, before it has a number. */
interface Placed {
  readonly castIn: CastIn;
  readonly way: HoldingWay | null;
  readonly place: FormPlace;
  readonly at: Point;
  readonly plan: Point;
  readonly side: string | null;
  readonly aboveBed: number | null;
  readonly inward: Point | null;
  readonly printed: PrintedPlace;
  readonly taped: Point;
}

function place(view: MouldView, panel: Panel, words: FormWords, castIn: CastIn, way: HoldingWay | null): Placed {
  const base = { castIn, way, place: findPlace(panel, castIn) };
  const { face, edge, x_mm, y_mm } = castIn;
  if (face !== 'edge' || edge === null) {
    const at = view.toForm([x_mm, y_mm]);
    const printed = { kind: 'plan', x: wholeMillimetres(at[0]), y: wholeMillimetres(at[1]) } as const;
    return {
      ...base,
      at,
      plan: view.toPlan([x_mm, y_mm]),
      side: null,
      aboveBed: null,
      inward: null,
      printed,
      taped: at,
    };
  }
  const found = placeOnEdge(view, { edge, along: x_mm, fromOutside: y_mm }, panel.thickness_mm);
  const { side, along, from } = describeSide(view, found, edge, words);
  return {
    ...base,
    at: found.form,
    plan: found.plan,
    side,
    aboveBed: found.aboveForm,
    inward: found.inward,
    printed: { kind: 'edge', along: wholeMillimetres(along), from, aboveBed: wholeMillimetres(found.aboveForm) },
    taped: [along, found.aboveForm],
  };
}

/** The cross bar as the designer or the maker asks for it. */
function findCrossBar(
  view: MouldView,
  panel: Panel,
  castIn: CastIn,
  draft: AssemblyDraft | null,
): SetOutItem['crossBar'] {
  if (draft === null || draft.crossBar === null) return null;
  const { diameter, length } = draft.crossBar;
  const direction = castIn.crossBar?.direction_deg ?? 0;
  if (castIn.face !== 'edge' || castIn.edge === null)
    return { diameter, length, planDirection_deg: view.turnDirection(direction) };
  const isLevel = Math.abs(Math.sin((direction * Math.PI) / 180)) < 1e-9;
  const { along } = panelSide(panel, castIn.edge);
  const drawn = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  return { diameter, length, planDirection_deg: isLevel ? view.turnDirection(drawn) : null };
}

/** The datum corner must be a corner of the concrete, or the tape is hooked on air. */
function checkDatum(panel: Panel, view: MouldView, words: FormWords): SetOutProblem[] {
  if (view.outline.some(([x, y]) => Math.abs(x) < ROUNDING && Math.abs(y) < ROUNDING)) return [];
  const name = nameDatum(words, panel.inForm.datum);
  return [
    {
      severity: 'warning',
      kind: 'datum',
      panel: panel.mark,
      insert: null,
      text: `the datum corner (${name}) is not a corner of the concrete: measure from the rail and the end of the form there, or choose a corner that the panel has`,
    },
  ];
}

function notDecided(panel: Panel, castIn: CastIn): SetOutProblem[] {
  if (castIn.role !== 'fixing' || castIn.holding !== null) return [];
  const text = 'how it is held in the form is not decided: choose a way of holding for it';
  return [{ severity: 'warning', kind: 'not decided', panel: panel.mark, insert: castIn.id, text }];
}

/**
 * The set-out of one panel: where each of its cast-in items is as the panel lies in the form seen from above, in the order of a walk, and how
 * each is held.
 * @param bed that it is cast on; null: none is named
 * @throws Error when the job has no panel of that mark
 */
export function setOutPanel(index: JobIndex, mark: string, bed: Bed | null): PanelSetOut {
  const panel = index.panels.get(mark);
  if (panel === undefined) throw new Error(`no panel ${mark}`);
  const { rules, yard } = index.file.library;
  const { datum } = panel.inForm;
  const view = viewPanel(panel);
  const words = findFormWords(bed);
  const connectionOf = new Map(
    index
      .connectionsOf(mark)
      .flatMap(({ mark: name, inserts }) => inserts.map(({ insert }) => [insert, name] as const)),
  );
  const castIns = index.castInsOf(mark);
  const tolerances = findTolerances(index, mark);
  const wayOf = ({ holding }: CastIn): HoldingWay | null =>
    holding === null ? null : (index.ways.get(holding) ?? null);
  const drafts = new Map(
    castIns.map((castIn) => {
      const question = askAssembly(index, panel, castIn, bed);
      return [castIn, question === null ? null : findAssembly(question)] as const;
    }),
  );
  const placed = castIns.map((castIn) => place(view, panel, words, castIn, wayOf(castIn)));
  const stops = new Map<string, Placed[]>();
  for (const entry of placed) {
    const connection = connectionOf.get(entry.castIn.id);
    const stop = connection === undefined ? `insert ${entry.castIn.id}` : `connection ${connection}`;
    stops.set(stop, [...(stops.get(stop) ?? []), entry]);
  }
  const stageOf = ({ castIn, place: where }: Placed): 1 | 2 =>
    drafts.get(castIn)?.stage ?? (where === 'trowelled face' ? 2 : 1);
  const scatters = findScatters([...stops.values()], drafts, yard.tapeClass);
  const walk = orderWalk(
    [...stops.values()].map(
      (members): Stop<Placed> => members.map((what) => ({ what, at: what.at, stage: stageOf(what) })),
    ),
    view.width,
  );
  const lettered = letterAssemblies(walk.map(({ castIn }) => drafts.get(castIn) ?? null));
  const items = walk.map((entry, i): SetOutItem => {
    const { castIn } = entry;
    const draft = drafts.get(castIn) ?? null;
    return {
      ...entry,
      number: i + 1,
      item: castIn.item === null ? null : (index.items.get(castIn.item) ?? null),
      connection: connectionOf.get(castIn.id) ?? null,
      stage: stageOf(entry),
      assembly: lettered.letters[i]!,
      tolerance: tolerances.of(castIn).within,
      agreement: tolerances.of(castIn).agreement,
      scatter: scatters.get(castIn)!,
      crossBar: findCrossBar(view, panel, castIn, draft),
    };
  });
  return {
    panel,
    bed,
    words,
    outline: panel.outline_mm.map(view.toPlan),
    openings: panel.openings_mm.map((opening) => opening.map(view.toPlan)),
    length: view.length,
    width: view.width,
    depth: panel.thickness_mm,
    datum,
    datumAt: view.datumAt,
    datumWords: nameDatum(words, datum),
    faceDown: panel.faceDown,
    isMirrored: view.isMirrored,
    form: findFormCheck(
      panel.outline_mm.map(view.toPlan),
      view.length,
      view.width,
      panel.thickness_mm,
      view.datumAt,
      rules.tolerances.form_mm,
    ),
    items,
    groups: findGroups(items),
    assemblies: lettered.assemblies,
    problems: [
      ...checkDatum(panel, view, words),
      ...tolerances.problems,
      ...castIns.flatMap((castIn) => [...notDecided(panel, castIn), ...(drafts.get(castIn)?.problems ?? [])]),
    ],
  };
}
