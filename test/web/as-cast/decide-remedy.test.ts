import { describe, expect, it } from 'vitest';
import type { AsCastConnection, Remedy, RemedyKind } from '../../../src/assess/as-cast/as-cast-report.ts';
import { ENGINE_VERSION } from '../../../src/engine/version.ts';
import { bodiesAfter } from '../../../src/records/bodies-after.ts';
import type { Person } from '../../../src/records/person.ts';
import { draftRemedy, mayDecideRemedy } from '../../../src/web/pieces/as-cast/decide-remedy.ts';
import { castOf, connectionOf, reportOn, surveyed } from '../../assess/as-cast/casts.ts';

const tablet = castOf('P01');
const survey = tablet.write('checker', null, surveyed(tablet.sample, { 13: { dx: 12, dy: 5 } }));
const report = reportOn(tablet.sample, tablet.known.values());
const found = connectionOf(report, 'C03');
const piece = { id: tablet.sample.plan.piece, plan: tablet.sample.plan };

function remedyOf({ remedies }: AsCastConnection, kind: RemedyKind): Remedy {
  return remedies.find((one) => one.kind === kind)!;
}

function person(roles: Person['roles'], registration: string | null = null): Person {
  return { id: 'personofatest', name: 'H. Nobody (invented)', roles, registration };
}

const ENGINEER = person(['design engineer'], 'invented no. 2');

describe('who decides about a connection as cast', () => {
  it('slotting is for a design engineer with a registration', () => {
    const slotted = remedyOf(found, 'holes slotted');
    expect(mayDecideRemedy(ENGINEER, found, slotted)).toEqual({ may: true, as: 'design engineer' });
    for (const other of [person(['design engineer']), person(['qa', 'foreman', 'installer']), null]) {
      expect(mayDecideRemedy(other, found, slotted).may).toBe(false);
      if (other !== null) expect(draftRemedy(piece, found, slotted, other, 'because')).toBeNull();
    }
  });

  it('what leaves the design as it is may be decided on site', () => {
    const onSite = { act: 'decide on site' } as const;
    expect(mayDecideRemedy(person(['installer']), found, onSite)).toEqual({ may: true, as: 'installer' });
    expect(mayDecideRemedy(person(['setter']), found, onSite).may).toBe(false);
  });

  it('nobody decides on nothing: without a survey there is nothing that it could rest on', () => {
    const permission = mayDecideRemedy(ENGINEER, { rests: [] }, { act: 'change the design' });
    expect(permission).toEqual({ may: false, why: 'nothing is surveyed that it could rest on' });
  });
});

describe('the record of a decision', () => {
  const slotted = remedyOf(found, 'holes slotted');
  const draft = draftRemedy(piece, found, slotted, ENGINEER, 'agreed with the steel designer')!;

  it('is one that can be kept, rests on the survey, and holds what was computed', () => {
    expect(bodiesAfter['remedy-decided'].parse(draft.body)).toEqual(draft.body);
    expect(draft).toMatchObject({
      kind: 'remedy-decided',
      piece: piece.id,
      item: null,
      body: {
        connection: found.connection.key,
        connectionMark: 'C03',
        about: [survey.id],
        remedy: 'holes slotted',
        words: slotted.words,
        role: 'design engineer',
        registration: 'invented no. 2',
        reason: 'agreed with the steel designer',
        computed: {
          state: slotted.verdict,
          ratio: slotted.ratio,
          clearance_mm: slotted.clearance!.margin,
          engine: ENGINE_VERSION,
        },
      },
    });
  });

  it('has no registration of somebody who decides in another role', () => {
    const both = person(['foreman', 'design engineer'], 'invented no. 2');
    const onSite = { ...slotted, act: 'decide on site' } as const;
    expect(draftRemedy(piece, found, onSite, both, 'because')?.body).toMatchObject({
      role: 'foreman',
      registration: null,
    });
  });

  it('of a ratio without limit keeps none', () => {
    const infinite = { ...slotted, ratio: Number.POSITIVE_INFINITY };
    expect(draftRemedy(piece, found, infinite, ENGINEER, 'because')?.body).toMatchObject({ computed: { ratio: null } });
  });
});
