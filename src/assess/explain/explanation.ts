import { explainAnchorage, findResistances } from '../../engine/checks/anchorage.ts';
import type { InsertAction } from '../../engine/checks/anchorage-group.ts';
import type { AnchorageResult, InteractionRow, Row } from '../../engine/checks/result.ts';
import { isWithin } from '../../engine/checks/verdict.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Resolution } from '../../job/resolve/resolved-connection.ts';
import { type WorkedConnection, workOut } from '../assess-connection.ts';
import type { ConnectionAnswer, Decisive } from '../connection-answer.ts';
import type { LoadCase } from '../load-cases.ts';

/** One failure mode where it is used most, over all combinations. Forces N, lengths mm, angles rad. */
export interface ExplainedMode {
  readonly mode: Decisive;
  /** Which steel part, or which part of a shear; null where there is one only. */
  readonly part: string | null;
  readonly inserts: readonly string[];
  /** The edge that the concrete breaks out toward, from end to end on the face. */
  readonly edge: { readonly from: Point; readonly to: Point } | null;
  /** Null: the resistance alone, no action is given. */
  readonly combination: string | null;
  readonly action: number | null;
  readonly resistance: number | null;
  /** What it brings to the answer; Infinity where nothing is left to resist, null without an action. */
  readonly ratio: number | null;
  readonly state: 'passes' | 'fails' | 'strength not checked';
  /** Whether it decides the connection. */
  readonly governs: boolean;
  readonly clause: string;
  readonly notes: readonly string[];
  /** Axis of the squares, or the direction toward the edge, counter-clockwise from x. */
  readonly direction: number | null;
}

/** A mode that needs no number, and why. */
export interface SkippedMode {
  readonly mode: Decisive;
  readonly part: string | null;
  readonly reasons: readonly string[];
}

/** One combination as it comes to the inserts; `reason` where it could not be brought there. */
export interface ExplainedLoad {
  readonly name: string;
  readonly inserts: readonly (InsertAction & { readonly id: string })[];
  /** Contact under the plate: force [N], where [mm], and the largest stress [MPa]; null where there is none. */
  readonly contact: { readonly force: number; readonly at: Point; readonly largest: number } | null;
  readonly ratio: number | null;
  readonly reason: string | null;
}

/** The answer of one connection as a screen shows it: modes with the governing one first. */
export interface Explanation {
  readonly answer: ConnectionAnswer;
  readonly modes: readonly ExplainedMode[];
  readonly skipped: readonly SkippedMode[];
  readonly loads: readonly ExplainedLoad[];
}

/** A combination with all rows of its result. */
interface Solved {
  readonly one: LoadCase;
  readonly result: AnchorageResult;
}

/** A mode with the row that it came from, while the worst is looked for. */
type Found = Omit<ExplainedMode, 'governs' | 'state'>;

function ofRow(row: Row, combination: string | null): Found {
  return {
    mode: row.mode,
    part: row.part,
    inserts: row.inserts,
    edge: row.edge,
    combination,
    action: row.action,
    resistance: row.design,
    ratio: row.ratioTogether ?? row.ratio,
    clause: row.clause,
    notes: row.notes,
    direction: row.direction,
  };
}

function ofInteraction({ kind, ratio, clause }: InteractionRow, combination: string): Found {
  return {
    mode: `interaction-${kind}`,
    part: null,
    inserts: [],
    edge: null,
    combination,
    action: null,
    resistance: null,
    ratio,
    clause,
    notes: [],
    direction: null,
  };
}

/** The bending of the plate along its worst line; null where nothing bends it, or it was not checked. */
function ofPlate({ bending, combination }: LoadCase): Found | null {
  if (bending?.kind !== 'checked' || !(bending.ratio > 0)) return null;
  return {
    mode: 'plate-bending',
    part: null,
    inserts: [],
    edge: null,
    combination: combination.name,
    action: null,
    resistance: null,
    ratio: bending.ratio,
    clause: bending.rule,
    notes: bending.limits,
    direction: null,
  };
}

/** What tells one line of the results from another. */
function keyOf({ mode, part, edge }: Found): string {
  return edge === null ? `${mode} ${part}` : `${mode} ${part} ${edge.from} ${edge.to}`;
}

/** Whether a row weighs more than the one known: the first of equal ratios stays; without ratios the least resistance. */
function isWorse(a: Found, b: Found): boolean {
  if (a.ratio !== null || b.ratio !== null) return (a.ratio ?? -1) > (b.ratio ?? -1);
  return (a.resistance ?? Number.POSITIVE_INFINITY) < (b.resistance ?? Number.POSITIVE_INFINITY);
}

function collectRows(solved: readonly Solved[]): Found[] {
  return solved.flatMap(({ one, result }) => {
    const { name } = one.combination;
    const rows = result.rows.filter(({ applies }) => applies).map((row) => ofRow(row, name));
    const plate = ofPlate(one);
    return [...rows, ...result.interaction.map((row) => ofInteraction(row, name)), ...(plate === null ? [] : [plate])];
  });
}

function keepWorst(rows: readonly Found[]): Found[] {
  const worst = new Map<string, Found>();
  for (const row of rows) {
    const key = keyOf(row);
    const known = worst.get(key);
    if (known === undefined || isWorse(row, known)) worst.set(key, row);
  }
  return [...worst.values()];
}

function decideState({ ratio }: Found): ExplainedMode['state'] {
  if (ratio === null) return 'strength not checked';
  return isWithin(ratio) ? 'passes' : 'fails';
}

/** Governing first, then by ratio; by resistance where no action is given. */
function rank(found: readonly Found[], { governing, ratio }: ConnectionAnswer): readonly ExplainedMode[] {
  const first = found.find(
    (row) => row.mode === governing?.mode && row.combination === governing.combination && row.ratio === ratio,
  );
  const rest = found
    .filter((row) => row !== first)
    .sort((a, b) => (isWorse(a, b) ? -1 : isWorse(b, a) ? 1 : 0))
    .map((row) => ({ ...row, state: decideState(row), governs: false }));
  return first === undefined ? rest : [{ ...first, state: decideState(first), governs: true }, ...rest];
}

/** Modes that are needed in no combination, each with its reasons once. */
function collectSkipped(results: readonly AnchorageResult[], modes: readonly Found[]): readonly SkippedMode[] {
  const needed = new Set(modes.map(({ mode }) => mode));
  const skipped = new Map<string, { mode: Decisive; part: string | null; reasons: string[] }>();
  for (const { mode, part, applies, design, notes } of results.flatMap(({ rows }) => rows)) {
    if (applies || design !== null || needed.has(mode)) continue;
    const one = skipped.get(`${mode} ${part}`) ?? { mode, part, reasons: [] };
    skipped.set(`${mode} ${part}`, one);
    for (const reason of notes) if (!one.reasons.includes(reason)) one.reasons.push(reason);
  }
  return [...skipped.values()];
}

function ofLoad({ combination }: LoadCase, result: AnchorageResult | null, ids: readonly string[]): ExplainedLoad {
  const { name } = combination;
  if (combination.kind === 'unsolved')
    return { name, inserts: [], contact: null, ratio: null, reason: combination.reason };
  const { forces, actions } = combination;
  const inserts = actions.inserts.map(({ N, Vx, Vy }, i) => ({ id: ids[i]!, N, Vx, Vy }));
  const contact =
    forces === null || forces.compression === null
      ? null
      : { force: forces.compression.force, at: forces.compression.at, largest: forces.maxContact };
  return { name, inserts, contact, ratio: result?.governing?.ratio ?? null, reason: null };
}

/** A connection that is worked out, mode by mode; no steps, so that it may be asked for at each frame. */
export function explainWorked({ prepared, cases, answer }: WorkedConnection): Explanation {
  const results = cases.map((one) =>
    one.combination.kind === 'unsolved' ? null : explainAnchorage(prepared, one.combination.actions, false),
  );
  const solved = cases.flatMap((one, i) => (results[i] === null ? [] : [{ one, result: results[i]! }]));
  const alone = cases.length === 0 ? [findResistances(prepared, false)] : [];
  const found = keepWorst([
    ...collectRows(solved),
    ...alone.flatMap(({ rows }) => rows.filter(({ applies }) => applies).map((row) => ofRow(row, null))),
  ]);
  return {
    answer,
    modes: rank(found, answer),
    skipped: collectSkipped([...solved.map(({ result }) => result), ...alone], found),
    loads: cases.map((one, i) => ofLoad(one, results[i]!, answer.inserts)),
  };
}

/** The answer of one connection as a screen shows it; without modes where it cannot be computed. */
export function explain(resolution: Resolution): Explanation {
  const { answer, worked } = workOut(resolution);
  return worked === null ? { answer, modes: [], skipped: [], loads: [] } : explainWorked(worked);
}
