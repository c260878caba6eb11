import type { AsCastInsert, CountedStrength, Remedy } from '../assess/as-cast/as-cast-report.ts';
import type { CarriesAsCast, NonConformance } from '../assess/non-conformance/non-conformance.ts';
import { ROLE_WORDS } from '../assess/yard/rights.ts';
import { findThread } from '../engine/hardware/threads.ts';
import type { StandardName } from '../engine/standards/standard-name.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import type { Combination } from '../job/documents/connection.ts';
import type { Panel } from '../job/documents/panel.ts';
import type { Rules } from '../job/documents/rules.ts';
import { plainLength, signedLength } from './bolt-up-words.ts';
import { CAUTIONS } from './cautions.ts';
import { NEVER_ALONE, nameFace, tellPlateMove } from './fit-words.ts';
import { findGoverningClause } from './governing-clause.ts';
import { showLimit, showRatio } from './numbers.ts';
import { countOf } from './part-words.ts';
import { nameMode, STATE_WORDS } from './words.ts';

/** What a sheet is made from beside its connection. */
export interface NonConformanceGround {
  readonly panel: Panel;
  readonly serial: string;
  readonly revision: string;
  readonly project: string;
  readonly rules: Rules;
  readonly strength: CountedStrength;
  /** Who decided, by the person's id; null: his name is not known. */
  readonly nameOf: (person: string) => string | null;
  readonly writeMoment: (moment: string) => string;
}

const ASSUMED = ' (assumed)';

/** More of them stand in the survey itself. */
const MOST_NAMED = 4;

/** A clearance with a true minus sign. */
function writeRoom(mm: number): string {
  return plainLength(mm).replace('-', '−');
}

function listSome(words: readonly string[]): string {
  const rest = words.length - MOST_NAMED;
  return rest > 0 ? `${words.slice(0, MOST_NAMED).join('; ')}; ${rest} more` : words.join('; ');
}

/** Where inserts are, against their design: in the axes in which the job gives them. */
function sayPlaces(members: readonly AsCastInsert[]): string {
  return listSome(
    members.map(({ item, place, state }) =>
      place === null || state === 'not surveyed'
        ? `${item.number}: as designed${ASSUMED}`
        : `${item.number}: x ${signedLength(place.dx)}, y ${signedLength(place.dy)}`,
    ),
  );
}

function sayDepths(members: readonly AsCastInsert[]): string {
  return listSome(
    members.map(({ item, place }) => {
      if (place === null || place.depth === null) return `${item.number}: as designed${ASSUMED}`;
      return place.depth < 0
        ? `${item.number}: ${plainLength(-place.depth)} PROUD`
        : `${item.number}: ${plainLength(place.depth)}`;
    }),
  );
}

const BASES = {
  instrument: 'with an instrument',
  tape: 'by tape',
  scaffold: 'by tape from where it stands',
  'taped in the form': 'taped in the form, before the pour',
} as const;

function saySurvey(members: readonly AsCastInsert[], ground: NonConformanceGround): string {
  const found = members.flatMap(({ place }) => place ?? []);
  const [first] = found;
  if (first === undefined) return `nobody measured: as designed${ASSUMED}`;
  const worst = Math.max(...found.flatMap(({ sigma }) => sigma));
  return `${BASES[first.basis]}, ${ground.writeMoment(first.record.measuredAt)}, ±${plainLength(worst)} mm (1 σ)`;
}

function sayAction({ found }: NonConformance): string {
  const { actions } = found.connection;
  switch (actions.kind) {
    case 'none':
      return 'not given: strength not checked';
    case 'required':
      return `each insert N ${actions.N_kN} kN, V ${actions.V_kN} kN`;
    case 'loads': {
      const { combinations } = actions;
      const most = (read: (one: Combination) => number) => Math.max(...combinations.map(read));
      const N = most(({ N_kN }) => N_kN);
      const V = most(({ Vx_kN, Vy_kN }) => Math.hypot(Vx_kN, Vy_kN));
      return `${countOf(combinations.length, 'combination')}; most N ${plainLength(N)} kN, most V ${plainLength(V)} kN`;
    }
  }
}

function sayGiven(about: NonConformance, ground: NonConformanceGround) {
  const { found, remedy } = about;
  const { connection, members } = found;
  const item = members[0]?.item.item ?? null;
  const roles = [...new Set(members.map(({ item: { castIn } }) => castIn.role))].join(', ');
  const plate = remedy?.holes ?? null;
  const holes = [
    ...new Set(
      (plate ?? []).map(
        ({ diameter_mm, slot_mm }) => `${diameter_mm}${slot_mm > 0 ? ` × ${plainLength(diameter_mm + slot_mm)}` : ''}`,
      ),
    ),
  ];
  const bolt = connection.boltThread ?? item?.thread ?? null;
  const given: readonly (readonly [string, string])[] = [
    [
      'Inserts',
      item === null ? 'type not known' : `${members.length} × ${item.id}, ${item.thread} × ${item.length_mm}`,
    ],
    ['Role', roles],
    ['Face', nameFace(connection)],
    ['Found less designed [mm]', sayPlaces(members)],
    ['Top below the face [mm]', sayDepths(members)],
    ['Measured', saySurvey(members, ground)],
    ['Panel thickness', `${plainLength(ground.panel.thickness_mm)} mm, as designed`],
    [
      'Concrete, cylinder',
      `${plainLength(ground.strength.cylinder_MPa)} MPa, ${ground.strength.from === 'measured' ? 'measured' : `of the design${ASSUMED}`}`,
    ],
    ['Holes of the plate', holes.length === 0 ? 'no plate known' : `${holes.join(', ')} mm`],
    [
      'Bolts',
      bolt === null
        ? 'not known'
        : `${findThread(bolt).name}, class ${connection.boltClass ?? ground.rules.defaults.boltClass}`,
    ],
    ['Packers', `${plainLength(remedy?.connection.packers_mm ?? connection.packers_mm)} mm`],
    ['Action (design values)', sayAction(about)],
  ];
  return given;
}

function sayWhy(mode: CarriesAsCast['tension']['mode'], standard: StandardName): string {
  if (mode === null) return 'nothing computed here limits it';
  const clause = mode === 'plate-bending' ? null : findGoverningClause(standard, mode);
  return clause === null ? nameMode(mode) : `${nameMode(mode)}: ${clause}`;
}

function sayLimits({ carries }: NonConformance, standard: StandardName) {
  if (carries.kind === 'refused') return [];
  const { tension, toward, away } = carries.value;
  const edge = toward?.direction?.edge ?? null;
  const rows = [
    ['Tension N, on all inserts together', tension] as const,
    ...(toward === null
      ? []
      : [[`Shear V toward the edge${edge === null ? '' : ` at ${plainLength(edge)} mm`}`, toward] as const]),
    ...(away === null ? [] : [['Shear V away from it', away] as const]),
  ];
  return rows.map(([words, { total, mode, reasons }]) => ({
    words,
    most: total === null ? 'no limit found' : `${showLimit(total)} kN`,
    why: reasons.length === 0 ? sayWhy(mode, standard) : `${sayWhy(mode, standard)}; NOT COVERED: ${reasons[0]}`,
  }));
}

const VERDICTS: Readonly<Record<Remedy['verdict'], string>> = {
  works: 'works',
  'does not work': 'DOES NOT WORK',
  'not known': 'NOT KNOWN',
};

/** The answer in one sentence. Only what was decided by who may and works is no stop. */
function sayVerdict({ found, remedy, answer }: NonConformance): { readonly verdict: string; readonly isStop: boolean } {
  const isFixing = found.members.every(({ item }) => item.castIn.role === 'fixing');
  if (!isFixing)
    return {
      verdict:
        'STOP. A lifting or brace insert in the wrong place is not answered here: ask its designer and its maker, in writing.',
      isStop: true,
    };
  const strength = `${STATE_WORDS[answer.state]}${answer.ratio === null ? '' : `, ${showRatio(answer.ratio)}`}${answer.governing === null ? '' : ` (${nameMode(answer.governing.mode)})`}`;
  const how = remedy === null ? 'as it came out' : `"${remedy.kind}"`;
  if (found.state === 'not usable') return { verdict: 'NOT USABLE: do not bolt, do not load.', isStop: true };
  if (found.state === 'conflict')
    return { verdict: 'Surveys differ: measure again before anything is decided.', isStop: true };
  if (found.decision === null)
    return {
      verdict: `NOT DECIDED. Strength ${how}: ${strength}. Do not bolt or load until somebody who may has decided.`,
      isStop: true,
    };
  return {
    verdict: `Decided: ${found.decision.body.remedy}. As computed today it ${remedy === null ? 'is NOT KNOWN whether it works' : VERDICTS[remedy.verdict]}; strength ${strength}.`,
    isStop: remedy?.verdict !== 'works',
  };
}

function sayFound({ found, remedy, answer, tightest }: NonConformance, panel: Panel): readonly string[] {
  const length = (mm: number) => `${plainLength(mm)} mm`;
  const { before } = found;
  // A reason that stands against the strength is not told twice.
  const against = (remedy?.why ?? []).filter((why) => !answer.reasons.some((reason) => why.includes(reason)));
  const move = remedy === null ? null : tellPlateMove(remedy.change.move, found.connection, panel, length);
  return [
    `As designed: ${STATE_WORDS[before.state]}${before.ratio === null ? '' : `, ${showRatio(before.ratio)}`}.`,
    ...(tightest === null
      ? ['No plate is known, so that nobody can say whether it goes on.']
      : tightest.room < 0
        ? [`The plate does NOT go on: hole ${tightest.hole.id} lacks ${length(-tightest.room)}.`]
        : [`The plate goes on; ${length(tightest.room)} left around the bolt in hole ${tightest.hole.id}.`]),
    ...(move === null ? [] : [`For that the plate is moved ${move}, as seen from its front, top up.`]),
    ...answer.reasons.map((reason) => `No pass, because: ${reason}.`),
    ...against.map((why) => `Against it: ${why}.`),
  ];
}

/** A remedy's answer; where nothing was computed the reason says more than a state. */
function sayAnswer({ kind, verdict, state, ratio, why }: Remedy): string {
  if (kind === 'not usable') return '–';
  if (ratio === null && state === 'cannot be computed')
    return why[0] === undefined
      ? VERDICTS[verdict]
      : `${verdict === 'not known' ? VERDICTS[verdict] : 'no'}: ${why[0]}`;
  return `${VERDICTS[verdict]} · ${STATE_WORDS[state]}`;
}

/** All that was computed; the one that was decided by its own numbers. */
function sayRemedies({ found }: NonConformance) {
  const kind = found.decision?.body.remedy ?? null;
  return found.remedies.map((computed) => {
    const isDecided = computed.kind === kind;
    const remedy = isDecided ? (found.decided ?? computed) : computed;
    return {
      words: isDecided ? (found.decision?.body.words ?? remedy.words) : remedy.words,
      verdict: sayAnswer(remedy),
      ratio: remedy.ratio === null ? '–' : showRatio(remedy.ratio),
      room: remedy.clearance === null ? '–' : `${writeRoom(remedy.clearance.margin)} mm`,
      who: remedy.act === 'change the design' ? 'design engineer' : 'on site',
      isDecided,
    };
  });
}

function sayDecision({ found }: NonConformance, ground: NonConformanceGround): readonly string[] {
  const { decision, fallen } = found;
  const lost = fallen.map(({ record, why }) => `Does not count: "${record.body.remedy}", ${why}.`);
  if (decision === null) return ['Nobody has decided yet.', ...lost];
  const { body, person, measuredAt } = decision;
  const registration = body.registration === null ? '' : `, registration ${body.registration}`;
  return [
    `${body.words} Reason: ${body.reason}.`,
    `By ${ground.nameOf(person) ?? 'somebody whose name is not here'}, ${ROLE_WORDS[body.role]}${registration}, ${ground.writeMoment(measuredAt)}.`,
    ...(found.decided?.conditions ?? []).map((words) => `On condition: ${words}.`),
    ...lost,
  ];
}

/** Everything that the page of a connection that did not come out as drawn says. Lengths in mm, forces in kN, as the records have them. */
export function sayNonConformance(about: NonConformance, ground: NonConformanceGround) {
  const { found } = about;
  const { rules, panel, serial, revision, project } = ground;
  const rests = found.rests.map(({ id }) => id);
  const records = [...new Set([...rests, ...(found.decision === null ? [] : [found.decision.id])])];
  return {
    subject: `${panel.mark} no. ${serial} · connection ${found.connection.mark} · revision ${revision}`,
    project,
    rules: `${rules.standard} · ${rules.id} ${rules.edition} · Onepour ${ENGINE_VERSION}`,
    given: sayGiven(about, ground),
    limits: sayLimits(about, rules.standard),
    ...sayVerdict(about),
    found: sayFound(about, panel),
    remedies: sayRemedies(about),
    decision: sayDecision(about, ground),
    may: [
      'Measure again, photograph with the tape in the picture.',
      'Shift and turn the plate within its holes, pack as far as it stands here.',
      'Leave the brace on and keep away from below.',
    ],
    ask: [
      'Larger holes, slots, another plate, fewer bolts, other packers.',
      'Any load before this is decided.',
      'A decision that is signed with name and registration.',
    ],
    never: [NEVER_ALONE, 'Never lift with it or brace from it. Never glue or drill another in and call it the same.'],
    cautions: CAUTIONS,
    records: records.length === 0 ? 'Rests on no record.' : `Rests on records ${records.join(', ')}.`,
  };
}
