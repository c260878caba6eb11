import type { FactRecord } from '../record.ts';

function countFalse(...answers: readonly boolean[]): number {
  return answers.filter((answer) => !answer).length;
}

/** How bad it is what a record says, 0 the best. Of kinds in one slot only; of measured lengths nobody can say it without the plan. */
function rateRecord(record: FactRecord): number {
  switch (record.kind) {
    case 'cleared':
      return record.body.condition === null ? 0 : 1;
    case 'override':
      return 2;
    case 'held':
      return 3;
    case 'placed':
      return countFalse(record.body.type, record.body.face, record.body.firm);
    case 'screed-checked':
      return countFalse(record.body.level, record.body.plumb, record.body.cap);
    case 'uncovered': {
      const { plateOff, mortarOut, thread, capBack } = record.body;
      return countFalse(plateOff, mortarOut, thread, capBack);
    }
    case 'cap':
      return record.body.is === 'missing' ? 1 : 0;
    case 'decision':
      return { accepted: 0, 'to be moved': 1, rejected: 2 }[record.body.verdict];
    case 'stripped':
      return record.body.plates.reduce((sum, { out, back }) => sum + Math.max(0, out - back), 0);
    case 'delivered':
      return countFalse(record.body.caps, record.body.threads);
    case 'offered':
      return { 'as designed': 0, 'shifted or turned': 1, no: 2 }[record.body.wentOn];
    case 'remedy-decided':
      return record.body.remedy === 'not usable' ? 1 : 0;
    default:
      return 0;
  }
}

/**
 * Of records of one slot that did not know of each other the one that counts until a person has settled it: held before an override before a
 * condition before cleared, more wrong before less, a plate missing before all back. The first by id where they are equally bad, and of measured places and forms,
 * whose worst only the plan can tell.
 * @param records not empty, as `SlotState.latest`
 */
export function worseOf<Record extends FactRecord>(records: readonly Record[]): Record {
  return records.reduce((worst, record) => {
    const by = rateRecord(record) - rateRecord(worst);
    return by > 0 || (by === 0 && record.id < worst.id) ? record : worst;
  });
}
