import type { PieceState } from '../records/fold/piece-state.ts';
import type { FactRecord } from '../records/record.ts';
import { groupAlike } from './group-alike.ts';
import { writeRuns } from './number-runs.ts';
import type { RecordNames } from './record-tellers.ts';
import { nameSubject, tellAct, tellRecords } from './record-words.ts';

/** One act of a piece's history, as a line of a list. */
export interface HistoryLine {
  readonly records: readonly FactRecord[];
  /** In one sentence, with who did it. */
  readonly words: string;
  /** The same without who. */
  readonly act: string;
  readonly who: string;
  /** Who typed it in, where another measured; null: the same. */
  readonly typedBy: string | null;
  readonly measuredAt: string;
  readonly typedAt: string;
  /** It was typed in later than it was done. */
  readonly isLate: boolean;
  /** Why it does not count any more, by whom it was withdrawn; null: it counts. */
  readonly withdrawn: string | null;
  /** What must be known of the clock it was timed by; null: it went right, as far as was heard. */
  readonly clock: string | null;
  /** Device and its running numbers: `ab12… 7–9`. */
  readonly chain: string;
}

/** Measured and typed further apart than this is told as two times [ms]. */
const LATE = 300_000;

/** A clock that is further off is told [s]. */
const CLOCK_OFF = 300;

/** How far a device's clock was off, in words; null: not worth telling, or never heard. */
export function tellClock(clock_s: number | null): string | null {
  if (clock_s === null || Math.abs(clock_s) < CLOCK_OFF) return null;
  const away = Math.abs(clock_s);
  const [count, unit] =
    away < 7_200
      ? [Math.round(away / 60), 'min']
      : away < 172_800
        ? [Math.round(away / 3_600), 'h']
        : [Math.round(away / 86_400), 'days'];
  return `clock of the device ${count} ${unit} ${clock_s > 0 ? 'slow' : 'fast'}`;
}

/** As many digits of a photo's hash as stand on paper. */
const DIGITS = 12;

/** An act as it stands on paper: with what must be known of its clock, and by which hash its photos are found. */
export function tellPrintedAct({ act, clock, records }: Pick<HistoryLine, 'act' | 'clock' | 'records'>): string {
  const photos = records.flatMap((record) => (record.kind === 'photo' ? [record.body.photo.slice(0, DIGITS)] : []));
  const found = photos.length === 0 ? '' : ` [${photos.length === 1 ? 'photo' : 'photos'} ${photos.join(', ')}]`;
  return `${act}${found}${clock === null ? '' : ` (${clock})`}`;
}

function writeChain(records: readonly FactRecord[]): string {
  const numbers = writeRuns(records.map(({ chain }) => chain.number));
  return `${records[0]?.device.slice(0, 4) ?? ''} ${numbers}`;
}

/** Everything that was recorded of a piece, each after what it knew of, in words; what was withdrawn stays in its place and says so. */
export function listHistory(
  { history, withdrawn }: Pick<PieceState, 'history' | 'withdrawn'>,
  names: RecordNames,
): readonly HistoryLine[] {
  const byId = new Map(history.map((record) => [record.id, record]));
  return groupAlike(history, new Set(withdrawn.keys())).flatMap((records): readonly HistoryLine[] => {
    const [first] = records;
    if (first === undefined) return [];
    const correction = byId.get(withdrawn.get(first.id) ?? '');
    const reason = correction?.kind === 'correction' ? `: ${correction.body.reason}` : '';
    return [
      {
        records,
        words: tellRecords(records, names),
        act: tellAct(records, names),
        who: nameSubject(first, names),
        typedBy: first.measuredBy === null ? null : (names.person(first.person) ?? 'somebody whose name is not here'),
        measuredAt: first.measuredAt,
        typedAt: first.typedAt,
        isLate: Math.abs(Date.parse(first.typedAt) - Date.parse(first.measuredAt)) > LATE,
        withdrawn: correction === undefined ? null : `withdrawn by ${nameSubject(correction, names)}${reason}`,
        clock: tellClock(first.clock_s),
        chain: writeChain(records),
      },
    ];
  });
}
