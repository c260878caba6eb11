import { describe, expect, it } from 'vitest';
import type { AsCastConnection, Remedy } from '../../../src/assess/as-cast/as-cast-report.ts';
import type { PieceReport } from '../../../src/assess/yard/piece-report.ts';
import type { BodyOf, KindAndBody } from '../../../src/records/record.ts';
import { correctionOf } from '../../records/writing.ts';
import { PieceTablet, type Who } from '../yard/yard-sample.ts';
import { castOf, connectionOf, reportOn, surveyed } from './casts.ts';

type Role = BodyOf<'remedy-decided'>['role'];

function decideOn(
  found: AsCastConnection,
  remedy: Remedy,
  role: Role,
  registration: string | null = role === 'design engineer' ? 'No. 1, Nowhere' : null,
): KindAndBody {
  return {
    kind: 'remedy-decided',
    body: {
      connection: found.connection.key,
      connectionMark: found.connection.mark,
      about: found.rests.map(({ id }) => id),
      remedy: remedy.kind,
      change: remedy.change,
      words: remedy.words,
      role,
      registration,
      reason: 'computed',
      computed: {
        state: remedy.verdict,
        ratio: remedy.ratio,
        clearance_mm: remedy.clearance?.margin ?? null,
        engine: '1',
      },
    },
  };
}

const tightened = ({ connection, members }: AsCastConnection): KindAndBody => ({
  kind: 'tightened',
  body: {
    connection: connection.key,
    connectionMark: connection.mark,
    how: 'snug',
    torque_Nm: null,
    tool: null,
    bolts: members.map(({ item }) => ({ item: item.castIn.key, length_mm: 40, turns: null, packers_mm: 0 })),
    lubricated: false,
    note: null,
  },
});

function surveyedOff(): PieceTablet {
  const tablet = castOf('P13');
  tablet.write('checker', null, surveyed(tablet.sample, { 12: { dx: 7 } }));
  return tablet;
}

/** What it comes to: every tablet that surveys the same writes the same record. */
const OFF = now(surveyedOff());

/** C41 of P13 with no. 12 off by 7 mm: it wants a slot. */
function off(): { readonly tablet: PieceTablet; readonly found: AsCastConnection } {
  return { tablet: surveyedOff(), found: OFF };
}

function now(tablet: PieceTablet): AsCastConnection {
  return connectionOf(reportOn(tablet.sample, tablet.known.values()), 'C41');
}

function remedyOf({ remedies }: AsCastConnection, kind: Remedy['kind']): Remedy {
  return remedies.find((one) => one.kind === kind)!;
}

function decideAs(who: Who, role: Role, kind: Remedy['kind'] = 'holes slotted', registration?: string | null) {
  const { tablet, found } = off();
  tablet.write(who, null, decideOn(found, remedyOf(found, kind), role, registration));
  return { tablet, found: now(tablet) };
}

const kindsOf = ({ flags }: PieceReport) => flags.map(({ kind }) => kind);

describe('a decision', () => {
  it('by a design engineer who is registered counts, and is computed again by its own numbers', () => {
    const { tablet, found } = decideAs('engineer', 'design engineer');
    expect(found.state).toBe('decided');
    expect(found.fallen).toHaveLength(0);
    const slotted = remedyOf(found, 'holes slotted');
    expect(found.decided!.verdict).toBe('works');
    expect(found.decided!.ratio).toBeCloseTo(slotted.ratio!, 9);
    expect(found.decided!.clearance!.margin).toBeCloseTo(slotted.clearance!.margin, 6);
    expect(kindsOf(tablet.report())).not.toContain('decided on other numbers');
  });

  it.each([
    ['checker', 'checker', undefined],
    ['qa', 'qa', undefined],
    ['qa', 'design engineer', undefined],
    ['unregistered', 'design engineer', null],
    ['engineer', 'design engineer', null],
  ] as const)('to slot a plate by %s as %s does not count, and is flagged', (who, role, registration) => {
    const { tablet, found } = decideAs(who, role, 'holes slotted', registration);
    expect(found.decision).toBeNull();
    expect(found.state).toBe('needs a remedy');
    expect(found.fallen).toHaveLength(1);
    expect(kindsOf(tablet.report())).toContain('decided without the right');
  });

  it('that does not work is never one for somebody on site', () => {
    expect(decideAs('qa', 'qa', 'as is').found.decision).toBeNull();
    expect(decideAs('engineer', 'design engineer', 'as is').found.state).toBe('decided');
  });

  it('on site counts where it works within the limits that the design engineer set', () => {
    const tablet = castOf('P13');
    const all = Object.fromEntries([12, 13, 14, 15].map((number) => [number, { dx: 7 }]));
    tablet.write('checker', null, surveyed(tablet.sample, all));
    const found = now(tablet);
    tablet.write('foreman', null, decideOn(found, remedyOf(found, 'plate moved'), 'foreman'));
    expect(now(tablet).state).toBe('decided');
    tablet.write('setter', null, decideOn(found, remedyOf(found, 'plate moved'), 'setter'));
    expect(now(tablet).decision!.person).toContain('foreman');
  });

  it('falls when a survey of one of its inserts comes that it had not seen', () => {
    const { tablet } = decideAs('engineer', 'design engineer');
    tablet.write('checker', null, surveyed(tablet.sample, { 12: { dx: 6.5 } }, [12]));
    const found = now(tablet);
    expect(found.state).toBe('needs a remedy');
    expect(found.fallen[0]!.why).toContain('a survey of its inserts came');
    expect(found.decision).toBeNull();
  });

  it('stands when a survey comes of others', () => {
    const { tablet } = decideAs('engineer', 'design engineer');
    tablet.write('checker', null, surveyed(tablet.sample, {}, [1, 2, 3, 9]));
    expect(now(tablet).state).toBe('decided');
  });

  it('that cuts into the plate or leaves a bolt out is not one for somebody on site, whatever a record calls it', () => {
    for (const kind of ['holes slotted', 'fewer inserts'] as const) {
      const { tablet, found } = off();
      const disguised = { ...remedyOf(found, kind), kind: 'as is' } as const;
      tablet.write('foreman', null, decideOn(found, disguised, 'foreman'));
      expect(now(tablet).decision).toBeNull();
      expect(now(tablet).withoutRight).toHaveLength(1);
    }
  });

  it('about inserts that nobody surveyed is not one for somebody on site', () => {
    const tablet = castOf('P13');
    tablet.write('checker', null, surveyed(tablet.sample, {}, [12, 13, 14]));
    const found = now(tablet);
    tablet.write('foreman', null, decideOn(found, remedyOf(found, 'as is'), 'foreman'));
    expect(now(tablet).state).toBe('not surveyed');
    expect(now(tablet).decision).toBeNull();
  });

  it('about an insert of which only the depth was surveyed is not one for somebody on site', () => {
    const tablet = castOf('P13');
    const all = surveyed(tablet.sample, {});
    if (all.kind !== 'surveyed') throw new Error('a survey');
    const { key } = tablet.sample.plan.setOut.items.find(({ number }) => number === 15)!.castIn;
    const points = all.body.points.filter(({ item }) => item !== key);
    tablet.write('checker', null, { ...all, body: { ...all.body, points } });
    const found = now(tablet);
    expect(found.members.every(({ place }) => place !== null)).toBe(true);
    expect(remedyOf(found, 'as is').verdict).toBe('works');
    expect(remedyOf(found, 'as is').act).toBe('change the design');
  });

  it('that leaves fewer than two bolts, or none, does not work', () => {
    for (const count of [3, 4]) {
      const { tablet, found } = off();
      const { change, ...rest } = remedyOf(found, 'fewer inserts');
      const unused = found.members.slice(0, count).map(({ item }) => item.castIn.key);
      const few = { ...rest, change: { ...change, unused } };
      tablet.write('engineer', null, decideOn(found, few, 'design engineer'));
      expect(now(tablet).decided!.verdict).toBe('does not work');
      expect(now(tablet).decided!.why.join()).toContain('no plate is left on fewer than two');
      tablet.write('foreman', null, tightened(found));
      expect(kindsOf(tablet.report())).toContain('decided on other numbers');
    }
  });

  it('about a hole or an insert that is not drawn any more does not work', () => {
    const { tablet, found } = off();
    const { change, ...rest } = remedyOf(found, 'plate drilled anew');
    const gone = {
      ...rest,
      change: { ...change, holes: [...change.holes, { ...change.holes[0]!, id: 'gone' }], unused: ['gone'] },
    };
    tablet.write('engineer', null, decideOn(found, gone, 'design engineer'));
    expect(now(tablet).decided!.verdict).toBe('does not work');
    expect(now(tablet).decided!.why.filter((one) => one.includes('as drawn now'))).toHaveLength(2);
  });

  it('taken back was never there', () => {
    const { tablet } = decideAs('engineer', 'design engineer');
    const decision = tablet.written.at(-1)!;
    tablet.write('engineer', null, correctionOf(decision.id));
    expect(now(tablet).state).toBe('needs a remedy');
    expect(now(tablet).decision).toBeNull();
  });

  it('of two that did not know of each other the one that gives up more counts, as a conflict', () => {
    const { tablet, found } = off();
    const other = new PieceTablet(2, tablet.sample);
    other.learn(tablet);
    tablet.write('engineer', null, decideOn(found, remedyOf(found, 'holes slotted'), 'design engineer'));
    other.write('engineer', null, decideOn(found, remedyOf(found, 'fewer inserts'), 'design engineer'));
    tablet.learn(other);
    expect(now(tablet).state).toBe('conflict');
    expect(now(tablet).decision!.body.remedy).toBe('fewer inserts');
    tablet.write('engineer', null, decideOn(found, remedyOf(found, 'holes slotted'), 'design engineer'));
    expect(now(tablet).state).toBe('decided');
  });

  it('to give a connection up is never green', () => {
    const { found } = decideAs('engineer', 'design engineer', 'not usable');
    expect(found.state).toBe('not usable');
    expect(found.decided!.verdict).toBe('does not work');
  });
});

describe('flags', () => {
  it('say that it was bolted up before anybody decided, even if somebody did later', () => {
    const { tablet, found } = off();
    tablet.write('foreman', null, tightened(found));
    expect(kindsOf(tablet.report())).toContain('bolted up before a decision');
    const other = new PieceTablet(2, tablet.sample);
    other.known.set(tablet.written[0]!.id, tablet.written[0]!);
    other.write('engineer', null, decideOn(found, remedyOf(found, 'holes slotted'), 'design engineer'));
    tablet.learn(other);
    expect(kindsOf(tablet.report())).toContain('bolted up before a decision');
  });

  it('say that it was bolted up though it was given up', () => {
    const { tablet, found } = decideAs('engineer', 'design engineer', 'not usable');
    tablet.write('foreman', null, tightened(found));
    expect(kindsOf(tablet.report())).toContain('tightened though not usable');
  });

  it('say that a decision rests on other numbers than those of now', () => {
    const { tablet, found } = off();
    const decision = decideOn(found, remedyOf(found, 'as is'), 'design engineer');
    if (decision.kind !== 'remedy-decided') throw new Error('a decision');
    const body = { ...decision.body, computed: { ...decision.body.computed, state: 'works' as const } };
    tablet.write('engineer', null, { ...decision, body });
    expect(kindsOf(tablet.report())).toContain('decided on other numbers');
  });

  it('say that caps were missing on delivery', () => {
    const { tablet } = off();
    tablet.write('foreman', 12, { kind: 'delivered', body: { caps: false, threads: true, note: null } });
    expect(kindsOf(tablet.report())).toContain('caps or threads on delivery');
  });

  it('are none of these where all came out well', () => {
    const tablet = castOf('P13');
    tablet.write('checker', null, surveyed(tablet.sample, {}));
    expect(kindsOf(tablet.report())).toEqual([]);
  });
});
