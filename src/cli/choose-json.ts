import type {
  Changes,
  ChooseOptions,
  ConnectionChoice,
  PassingInsert,
  RejectedInsert,
} from '../assess/choose/choice.ts';
import type { JobChoice, LookAt } from '../assess/choose/choose-job.ts';
import { toJsonNumber } from '../calc/json-number.ts';

function writeChanges({ move, holes, boltThread, boltClass }: Changes): object {
  return {
    move: move === null ? null : { dx_mm: move.dx, dy_mm: move.dy, beyondLeast_mm: move.beyond },
    holes: holes === null ? null : { ids: holes.ids, from_mm: holes.from, to_mm: holes.to },
    boltThread,
    boltClass,
  };
}

function writePassing(insert: PassingInsert, rank: number): object {
  const {
    item,
    ratio,
    governing,
    changes,
    isAsDesigned,
    inPanel,
    inJob,
    delivery,
    lookAlikes,
    cost,
    consequences,
    notes,
  } = insert;
  return {
    rank,
    item: item.id,
    thread: item.thread,
    length_mm: item.length_mm,
    finish: item.finish,
    ratio: toJsonNumber(ratio),
    governing,
    isAsDesigned,
    changes: writeChanges(changes),
    inPanel,
    inJob,
    delivery,
    lookAlikes,
    cost,
    consequences,
    notes,
  };
}

function writeRejected({ item, why, reasons, ratio, governing, tried }: RejectedInsert): object {
  return { item: item.id, why, reasons, ratio: toJsonNumber(ratio), governing, tried };
}

function writeChoice(
  { before, present, outcome, ranked, rejected, checks }: ConnectionChoice,
  lookAt: LookAt | undefined,
): object {
  const { plate, ...answer } = before;
  return {
    ...answer,
    ratio: toJsonNumber(before.ratio),
    present,
    outcome,
    ranked: ranked.map((insert, i) => writePassing(insert, i + 1)),
    lookAt: lookAt === undefined ? [] : [...lookAt.brought, ...lookAt.kept],
    rejected: rejected.map(writeRejected),
    checks,
  };
}

/** The choices for a job as JSON. */
export function writeChoices(job: JobChoice, options: ChooseOptions, applied: string | null): object {
  const { move, drills, strongerBolts, daysToPour } = options;
  return {
    options: { move_mm: move, drill: drills, boltClass: strongerBolts, daysToPour },
    connections: job.choices.map((choice) => writeChoice(choice, job.lookAt.get(choice.before.mark))),
    passing: job.passing,
    withoutAction: job.withoutAction,
    applied,
    checks: job.checks,
  };
}
