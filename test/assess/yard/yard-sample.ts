import { readFileSync } from 'node:fs';
import { listFormMeasures } from '../../../src/assess/yard/form-measures.ts';
import { listPlanned, type PieceHead } from '../../../src/assess/yard/piece-head.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import type { PieceReport, YardContext } from '../../../src/assess/yard/piece-report.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import { reportPiece } from '../../../src/assess/yard/report-piece.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { fingerprintJob } from '../../../src/job/fingerprint.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { findSeen } from '../../../src/records/fold/find-seen.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { makeRecord } from '../../../src/records/make-record.ts';
import type { Person, Role } from '../../../src/records/person.ts';
import type { FactRecord, KindAndBody } from '../../../src/records/record.ts';
import { makeUuidV7 } from '../../../src/records/uuid-v7.ts';
import { mustRead } from '../../job/read.ts';

export const JOB = 'jobjobjobjob';
const START = Date.UTC(2026, 11, 14, 6);

function person(id: string, name: string, roles: readonly Role[], registration: string | null = null): Person {
  return { id: id.padEnd(12, '0'), name, roles, registration };
}

export const PEOPLE = {
  setter: person('setter', 'S. Setter', ['setter']),
  checker: person('checker', 'C. Checker', ['checker']),
  foreman: person('foreman', 'F. Foreman', ['foreman']),
  qa: person('qa', 'Q. Assurance', ['qa']),
  engineer: person('engineer', 'D. Engineer', ['design engineer'], 'No. 1, Nowhere'),
  unregistered: person('unregister', 'U. Engineer', ['design engineer']),
} as const;

export type Who = keyof typeof PEOPLE;

/** The demo job, or it with what a test changes. */
export function demoFile(change: (file: JobFile) => JobFile = (file) => file): JobFile {
  return change(mustRead(JSON.parse(readFileSync('demo/job.json', 'utf8'))));
}

function contextOf(file: JobFile): YardContext {
  return {
    index: indexJob(file),
    revision: {
      letter: file.job.revision?.letter ?? 'none',
      fingerprint: fingerprintJob(file).padEnd(64, '0'),
    },
    people: Object.values(PEOPLE),
  };
}

export interface SamplePiece {
  readonly context: YardContext;
  readonly head: PieceHead;
  readonly plan: PiecePlan;
}

export function pieceOf(file: JobFile, mark: string, serial: string): SamplePiece {
  const context = contextOf(file);
  const head = [...listPlanned(JOB, context.index).values()].find((one) => one.mark === mark && one.serial === serial);
  if (head === undefined) throw new Error(`no pour plans ${mark} no. ${serial}`);
  const bed = file.library.yard.beds.find(({ id }) => id === head.bed) ?? null;
  return { context, head, plan: planPiece(context.index, { id: head.piece, mark, bed }) };
}

/** A tablet in the hand of somebody: it writes by what it knows of one piece. */
export class PieceTablet {
  readonly known = new Map<string, FactRecord>();
  readonly written: FactRecord[] = [];
  readonly #number: number;
  sample: SamplePiece;

  constructor(number: number, sample: SamplePiece) {
    this.#number = number;
    this.sample = sample;
  }

  /** @param number of the insert on the sheet; null: of the piece */
  write(who: Who, number: number | null, draft: KindAndBody, minute = this.known.size): FactRecord {
    const { context, plan } = this.sample;
    const item = number === null ? null : keyOf(plan, number);
    const { piece } = plan;
    const checkKey = item === null ? (draft.kind === 'form-checked' ? plan.formKey : null) : plan.keys.get(item)!;
    const of = {
      ...draft,
      ...{ job: JOB, piece, item, revision: context.revision, checkKey, measuredAt: null, measuredBy: null },
    };
    const at = START + minute * 60_000;
    const record = makeRecord(of, {
      id: makeUuidV7(at, (bytes) => {
        bytes[15] = this.written.length % 256;
        bytes[14] = Math.floor(this.written.length / 256);
        bytes[13] = this.#number;
      }),
      seen: findSeen(foldPiece(piece, this.known.values()), of),
      now: new Date(at).toISOString(),
      clock_s: 0,
      person: PEOPLE[who].id,
      device: String(this.#number).padStart(16, 'd'),
      app: '1',
      previous: null,
    });
    this.written.push(record);
    this.known.set(record.id, record);
    return record;
  }

  learn(...others: readonly PieceTablet[]): void {
    for (const other of others) for (const record of other.known.values()) this.known.set(record.id, record);
  }

  report(): PieceReport {
    return reportOf(this.sample, this.known.values());
  }
}

export function reportOf({ context, plan, head }: SamplePiece, records: Iterable<FactRecord>): PieceReport {
  return reportPiece(context, plan, foldPiece(plan.piece, records), head);
}

export function keyOf(plan: PiecePlan, number: number): string {
  const item = plan.setOut.items.find((one) => one.number === number);
  if (item === undefined) throw new Error(`no insert no. ${number}`);
  return item.castIn.key;
}

export const sight = (stage: 1 | 2, wrong: { type?: boolean; face?: boolean; firm?: boolean } = {}): KindAndBody => ({
  kind: 'placed',
  body: { stage, type: true, face: true, firm: true, note: null, ...wrong },
});

/** The form taped as it should be, but for what is given. */
export function formCheck({ plan }: SamplePiece, off: Readonly<Record<string, number>> = {}): KindAndBody {
  const measures = listFormMeasures(plan.setOut.form).map(({ what, nominal }) => ({
    what,
    measured_mm: nominal + (off[what] ?? 0),
  }));
  return { kind: 'form-checked', body: { measures } };
}

/** A place taped so far from the designed one. */
export function taped(plan: PiecePlan, number: number, off: { x?: number; y?: number } = {}): KindAndBody {
  const { taped: at, stage } = plan.setOut.items.find((one) => one.number === number)!;
  const lengths = {
    x_mm: Math.round(at[0]) + (off.x ?? 0),
    y_mm: Math.round(at[1]) + (off.y ?? 0),
  };
  return { kind: 'measured', body: { stage, ...lengths, level_mm: null, basis: 'tape' } };
}

/** Everything checked as it must be: form, sight of every insert, the digits that are asked for. */
export function checkAll(tablet: PieceTablet, but: readonly number[] = []): void {
  const { plan } = tablet.sample;
  tablet.write('checker', null, formCheck(tablet.sample));
  for (const { number, stage } of plan.setOut.items) {
    if (but.includes(number)) continue;
    tablet.write('checker', number, sight(stage));
    if (plan.stops.some(({ asks }) => asks.some((ask) => ask.number === number)))
      tablet.write('checker', number, taped(plan, number));
  }
}
