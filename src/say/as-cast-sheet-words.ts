import type {
  AsCastConnection,
  AsCastInsert,
  AsCastReport,
  RegisteredSurvey,
} from '../assess/as-cast/as-cast-report.ts';
import { ROLE_WORDS } from '../assess/yard/rights.ts';
import { plainLength, signedLength } from './bolt-up-words.ts';
import { AS_CAST_WORDS, tellAsCast } from './fit-words.ts';

/** Names of people and moments as they stand on sheets. */
export interface SheetNames {
  /** Null: the name is not known here. */
  readonly nameOf: (person: string) => string | null;
  readonly writeMoment: (moment: string) => string;
}

const STATES: Readonly<Record<AsCastInsert['state'], string>> = {
  within: 'within',
  off: 'OFF',
  'not surveyed': 'not surveyed',
  conflict: 'SURVEYS DIFFER',
};

/** An insert as it came out, in numbers; what was not taken is no zero. */
export function sayAsCastInsert({ item, place, state }: AsCastInsert) {
  const isTaken = place !== null && state !== 'not surveyed';
  return {
    number: String(item.number),
    dx: isTaken ? signedLength(place.dx) : 'not taken',
    dy: isTaken ? signedLength(place.dy) : 'not taken',
    depth: place === null || place.depth === null ? 'not taken' : plainLength(place.depth),
    tolerance: `± ${plainLength(item.tolerance)}`,
    state: STATES[state],
    isOff: state === 'off' || state === 'conflict',
  };
}

/** A survey with what its known points left over. */
export function saySurveySheet({ record, controls, rms, notes }: RegisteredSurvey, names: SheetNames): string {
  const by = names.nameOf(record.person) ?? 'somebody whose name is not here';
  const left = controls.map(
    ({ name, residual, isUsed, isSuspect }) =>
      `${name} ${plainLength(residual)} mm${isUsed ? '' : ' (left out)'}${isSuspect ? ' (DOES NOT AGREE)' : ''}`,
  );
  const over =
    left.length === 0
      ? ''
      : ` Left over at known points: ${left.join(', ')}${rms === null ? '' : `; root mean square ${plainLength(rms)} mm`}.`;
  const file = record.body.file === null ? '' : `, file ${record.body.file.name}`;
  return `${names.writeMoment(record.measuredAt)}, ${by}${file}.${over}${notes.map((note) => ` ${note}`).join('')}`;
}

/** What was decided about a connection, by whom. */
export function sayDecided({ connection, state, decision, fallen }: AsCastConnection, names: SheetNames) {
  const lost = fallen.map(({ record, why }) => ` Does not count: "${record.body.remedy}", ${why}.`).join('');
  if (decision === null) return { connection: connection.mark, state: AS_CAST_WORDS[state], words: `–${lost}` };
  const { body, person, measuredAt } = decision;
  const who = `${names.nameOf(person) ?? 'somebody whose name is not here'}, ${ROLE_WORDS[body.role]}${body.registration === null ? '' : `, registration ${body.registration}`}`;
  return {
    connection: connection.mark,
    state: AS_CAST_WORDS[state],
    words: `${body.words} ${who}, ${names.writeMoment(measuredAt)}: ${body.reason}.${lost}`,
  };
}

/** How a piece stands as it came out, a line each, and which records that rests on. */
export function sayAsCastSheet(report: AsCastReport) {
  const records = report.connections.flatMap(({ rests, decision }) => [
    ...rests,
    ...(decision === null ? [] : [decision]),
  ]);
  const ids = new Set(records.map(({ id }) => id));
  return {
    standing: [tellAsCast(report), `Concrete: ${report.strength.words}.`],
    records: ids.size === 0 ? 'Rests on no record.' : `Rests on records ${[...ids].join(', ')}.`,
  };
}
