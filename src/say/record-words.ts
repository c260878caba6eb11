import { ROLE_WORDS } from '../assess/yard/rights.ts';
import type { BodyOf, FactRecord, KindAndBody, RecordKind } from '../records/record.ts';
import { placesOf } from './number-runs.ts';
import { showRatio } from './numbers.ts';
import { countOf } from './part-words.ts';
import { add, type RecordNames, type Teller, type Told, tellLevel, tellSights } from './record-tellers.ts';
import { TELLERS_AFTER } from './record-words-after.ts';

/** Stages of checking in words that go into a sentence. */
const STAGE_WORDS: Readonly<Record<1 | 2, string>> = { 1: 'before the cage', 2: 'before the pour' };

const BASIS_WORDS: Readonly<Record<BodyOf<'measured'>['basis'], string>> = {
  tape: '',
  sheet: ', typed from the sheet',
  chosen: ', the one found right of several',
};

const PHOTO_WORDS: Readonly<Record<BodyOf<'photo'>['of'], string>> = {
  insert: 'it',
  piece: 'the whole piece',
  sheet: 'the sheet filled in by pencil',
  defect: 'a defect',
  mark: 'the mark',
};

const VERDICT_WORDS: Readonly<Record<BodyOf<'decision'>['verdict'], (what: string) => string>> = {
  accepted: (what) => `accepted ${what} as placed`,
  'to be moved': (what) => `wants ${what} moved`,
  rejected: (what) => `rejected ${what}`,
};

/** Type, face and firmness beside what the sheet shows. */
function tellShown({ type, face, firm }: Readonly<Record<'type' | 'face' | 'firm', boolean>>): string {
  if (type && face && firm) return 'type, face, firm as shown';
  return tellSights([
    [type, 'type as shown', 'WRONG TYPE'],
    [face, 'face as shown', 'WRONG FACE'],
    [firm, 'firm', 'NOT FIRM'],
  ]);
}

/** Every kind in one sentence without its subject. A new kind does not compile until it has its words here. */
const TELLERS: { readonly [Kind in RecordKind]: Teller<Kind> } = {
  'piece-started': ({ mark, serial, pour, bed, recastOf }, { names }) => {
    const where = [...(pour === null ? [] : [`for pour ${pour}`]), ...(bed === null ? [] : [`on bed ${bed}`])];
    const instead = recastOf === null ? '' : `, cast in place of ${names.piece(recastOf) ?? 'another piece'}`;
    return `began ${[`${mark} no. ${serial}`, ...where].join(' ')}${instead}`;
  },
  're-marked': ({ mark, serial, reason }) => `marked it ${mark} no. ${serial}: ${reason}`,
  scrapped: ({ reason }) => `scrapped it: ${reason}`,
  located: ({ place }) => `set down where it stands: ${place}`,
  'form-checked': ({ measures }, { names: { write } }) =>
    `measured the form: ${measures.map(({ what, measured_mm }) => `${what}: ${write.length(measured_mm)}`).join(', ')}`,
  placed: ({ stage, type, face, firm, note }, { what }) =>
    `checked ${what} ${STAGE_WORDS[stage]}: ${tellShown({ type, face, firm })}${add(note)}`,
  measured: ({ stage, x_mm, y_mm, level_mm, basis }, { what, names: { write } }) => {
    const read = [
      ...(x_mm === null ? [] : [`x ${write.length(x_mm)}`]),
      ...(y_mm === null ? [] : [`y ${write.length(y_mm)}`]),
      ...(level_mm === null ? [] : [tellLevel(level_mm, write)]),
    ];
    const places = read.length === 0 ? 'nothing could be taken' : read.join(', ');
    return `measured ${what} ${STAGE_WORDS[stage]}: ${places}${BASIS_WORDS[basis]}`;
  },
  photo: ({ of, note }, { what, isOfInsert }) =>
    `photographed ${of === 'insert' && isOfInsert ? what : `${PHOTO_WORDS[of]}${isOfInsert ? ` at ${what}` : ''}`}${add(note)}`,
  comment: ({ text }, { what }) => `wrote about ${what}: ${text}`,
  correction: ({ of, reason }, { names }) => {
    const target = names.record(of);
    return target === null
      ? `withdrew a record that has not arrived here: ${reason}`
      : `withdrew “${nameSubject(target, names)} ${tellAct([target], names)}”: ${reason}`;
  },
  decision: ({ verdict, role, registration, reason, computed }, { what, isOfInsert }) => {
    const by = `, as ${ROLE_WORDS[role]}${add(registration, ', registration ')}: ${reason}`;
    // Of no insert: of the form, of which nothing is computed.
    if (!isOfInsert) return `${verdict === 'accepted' ? 'accepted the form as it is' : `${verdict}: the form`}${by}`;
    const ratio = computed.ratio === null ? '' : `, ${showRatio(computed.ratio)}`;
    return `${VERDICT_WORDS[verdict](what)}${by}; computed as placed then: ${computed.state}${ratio}`;
  },
  cleared: ({ role, condition, frozen }) =>
    `cleared the piece as ${ROLE_WORDS[role]} by revision ${frozen.revision.letter}${add(condition, ', on the condition: ')}`,
  held: ({ reason }) => `held the piece: ${reason}`,
  override: ({ role, reason, frozen: { revision, open } }) =>
    `let it be poured on an override as ${ROLE_WORDS[role]} by revision ${revision.letter}, with ${countOf(open.length, 'open point')}: ${reason}`,
  poured: ({ reason }) => `poured it${add(reason, ': ')}`,
  'screed-checked': ({ level, plumb, cap, level_mm, note }, { what, names: { write } }) => {
    const seen = tellSights([
      [level, 'level', 'NOT level'],
      [plumb, 'plumb', 'NOT plumb'],
      [cap, 'cap on', 'cap NOT on'],
    ]);
    const off = level_mm === null ? '' : `; ${tellLevel(level_mm, write)}`;
    return `checked ${what} after screeding: ${seen}${off}${add(note)}`;
  },
  stripped: ({ plates }) => {
    const out = plates.reduce((sum, plate) => sum + plate.out, 0);
    const missing = plates.filter((plate) => plate.back < plate.out);
    const counted =
      out === 0 ? '' : `, fixing plates ${plates.reduce((sum, { back }) => sum + back, 0)} of ${out} back`;
    const lacks = missing.map((plate) => `${plate.out - plate.back} ${plate.part}`).join(', ');
    return `stripped it${counted}${lacks === '' ? '' : `; MISSING ${lacks}`}`;
  },
  uncovered: ({ plateOff, mortarOut, thread, turns, capBack, note }, { what }) => {
    const seen = tellSights([
      [plateOff, 'plate off', 'plate NOT off'],
      [mortarOut, 'mortar out', 'mortar NOT out'],
      [thread, 'thread runs by hand', 'thread does NOT run by hand'],
      [capBack, 'cap back in', 'cap NOT back in'],
    ]);
    const counted = turns === null ? '' : `; ${countOf(turns, 'turn')} by hand`;
    return `opened up ${what}: ${seen}${counted}${add(note)}`;
  },
  cap: ({ is }, { what }) => (is === 'back in' ? `put the cap back in ${what}` : `found NO CAP in ${what}`),
  'strength-result': ({ specimen, age_hours, values_MPa, report }, { names: { write } }) =>
    `entered ${specimen} strengths at ${age_hours} h: ${values_MPa.map((value) => write.strength(value)).join(', ')}${add(report, ', report ')}`,
  'lot-taken': ({ item, lot, count }) => `took ${count} ${item} of lot ${lot}`,
  docket: ({ number, mix }) => `took the docket of the concrete: no. ${number}${add(mix, ', mix ')}`,
  ...TELLERS_AFTER,
};

/** Inserts by their numbers, or the piece: `insert 4`, `inserts 4–7, 9`, `an insert that is in no plan now`. */
export function nameItems(items: readonly (string | null)[], number: RecordNames['number']): string {
  const keys = [...new Set(items)].filter((item) => item !== null);
  if (keys.length === 0) return 'the piece';
  const known = keys.map(number).filter((one) => one !== null);
  const lost = keys.length - known.length;
  const gone =
    lost === 0 ? [] : [lost === 1 ? 'an insert that is in no plan now' : `${lost} inserts that are in no plan now`];
  return [...(known.length === 0 ? [] : [placesOf(known)]), ...gone].join(' and ');
}

function tellBody<Kind extends RecordKind>(kind: Kind, body: BodyOf<Kind>, told: Told): string {
  return TELLERS[kind](body, told);
}

/** What was done, without who: `checked inserts 4–7 before the cage: type, face, firm as shown`. All of `records` say the same, see `groupAlike`. */
export function tellAct(records: readonly FactRecord[], names: RecordNames): string {
  const [first] = records;
  if (first === undefined) return '';
  const { kind, body } = first as KindAndBody;
  const what = nameItems(
    records.map(({ item }) => item),
    names.number,
  );
  return tellBody(kind, body, { names, what, isOfInsert: first.item !== null });
}

/** Who did it. Where one measured and another typed it in, who measured. */
export function nameSubject({ person, measuredBy }: FactRecord, names: RecordNames): string {
  return names.person(measuredBy ?? person) ?? 'somebody whose name is not here';
}

/** Records that say the same, in one sentence: `M. Nobody checked inserts 4–7 before the cage: type, face, firm as shown`. */
export function tellRecords(records: readonly FactRecord[], names: RecordNames): string {
  const [first] = records;
  return first === undefined ? '' : `${nameSubject(first, names)} ${tellAct(records, names)}.`;
}

/** One record in one sentence. */
export function tellRecord(record: FactRecord, names: RecordNames): string {
  return tellRecords([record], names);
}

/** Names of kinds for lists: `form checked`, `strength result`. */
export function nameKind(kind: RecordKind): string {
  return kind.replaceAll('-', ' ');
}
