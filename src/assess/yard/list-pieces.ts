import type { JobIndex } from '../../job/job-index.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { findAfterPhase } from './after-phase.ts';
import { findHead, listPlanned, type PieceHead } from './piece-head.ts';
import type { PiecePhase } from './piece-report.ts';
import { readSlots } from './piece-slots.ts';

/** How far a piece has come by its facts alone. Whether it is cleared takes its plan and the rights of people: `reportPiece`. */
export type FactPhase = Exclude<PiecePhase, 'cleared' | 'held'>;

/** A piece in a list. */
export interface ListedPiece {
  readonly head: PieceHead;
  /** A pour of the job plans it; else records alone name it. */
  readonly isPlanned: boolean;
  readonly phase: FactPhase;
  /** Other pieces that go by the same mark and serial: one of them is marked wrong. */
  readonly sameMark: readonly string[];
  /** Pieces that are made in place of it. */
  readonly recastAs: readonly string[];
}

function findFactPhase(index: JobIndex, { mark }: PieceHead, state: PieceState | undefined): FactPhase {
  if (state === undefined || state.history.length === 0) return 'not started';
  const slots = readSlots(state);
  if (slots.of(null, 'scrapped') !== null) return 'scrapped';
  const after = findAfterPhase(index, mark, state, slots);
  if (after !== null) return after;
  if (slots.of(null, 'uncovered') !== null) return 'opened up';
  if (slots.of(null, 'stripped') !== null) return 'stripped';
  return slots.of(null, 'poured') === null ? 'in the form' : 'poured';
}

/** The head of a piece as its records and its pour say; null: neither names it. */
function headOf(piece: string, planned: PieceHead | null, state: PieceState | undefined): PieceHead | null {
  return state === undefined ? planned : findHead({ ...state, piece }, planned);
}

function groupBy(heads: readonly PieceHead[], nameOf: (head: PieceHead) => string): ReadonlyMap<string, PieceHead[]> {
  const groups = new Map<string, PieceHead[]>();
  for (const head of heads) groups.set(nameOf(head), [...(groups.get(nameOf(head)) ?? []), head]);
  return groups;
}

/**
 * Every piece that a pour plans or that records name, pour by pour as the job has them, those of no pour last. Nothing is left out: a scrapped piece
 * stays, and so does one that no revision plans any more.
 * @param job id of the job in the store
 * @param states by id of the piece
 */
export function listPieces(
  job: string,
  index: JobIndex,
  states: ReadonlyMap<string, PieceState>,
): readonly ListedPiece[] {
  const planned = listPlanned(job, index);
  const heads = [...new Set([...planned.keys(), ...states.keys()])].flatMap((piece) => {
    const head = headOf(piece, planned.get(piece) ?? null, states.get(piece));
    return head === null ? [] : [head];
  });
  const called = ({ panelKey, serial }: PieceHead) => JSON.stringify([panelKey, serial]);
  const byName = groupBy(heads, called);
  const recast = groupBy(heads, ({ recastOf }) => recastOf ?? '');
  const pours = new Map(index.file.job.pours.map(({ id }, place) => [id, place]));
  const placeOf = ({ pour }: PieceHead) => (pour === null ? pours.size : (pours.get(pour) ?? pours.size));
  const order = new Intl.Collator('en', { numeric: true });
  return heads
    .map((head) => ({
      head,
      isPlanned: planned.has(head.piece),
      phase: findFactPhase(index, head, states.get(head.piece)),
      sameMark: byName
        .get(called(head))!
        .filter((other) => other.piece !== head.piece)
        .map(({ piece }) => piece),
      recastAs: (recast.get(head.piece) ?? []).map(({ piece }) => piece),
    }))
    .sort(
      ({ head: a }, { head: b }) =>
        placeOf(a) - placeOf(b) ||
        order.compare(a.mark, b.mark) ||
        order.compare(a.serial, b.serial) ||
        (a.piece < b.piece ? -1 : 1),
    );
}
