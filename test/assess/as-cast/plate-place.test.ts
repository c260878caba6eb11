import { describe, expect, it } from 'vitest';
import type { AsCastConnection } from '../../../src/assess/as-cast/as-cast-report.ts';
import { findInPlate, movePlate, recordMove } from '../../../src/assess/as-cast/plate-place.ts';
import type { Connection } from '../../../src/job/documents/connection.ts';
import { frameOf, placeOnFace, turnVector } from '../../../src/job/face-frame.ts';
import { demoFile } from '../yard/yard-sample.ts';
import { castOf, connectionOf, DEMO, type Offs, reportOff } from './casts.ts';

/** Offs that turn the inserts of C41 of P13 about the middle of their places [degrees, as drawn]. */
function turnedBy(angle: number): Offs {
  const { members } = connectionOf(reportOff('P13', {}), 'C41');
  const mean = (axis: 'x_mm' | 'y_mm') =>
    members.reduce((sum, { item }) => sum + item.castIn[axis], 0) / members.length;
  const [cx, cy] = [mean('x_mm'), mean('y_mm')];
  return Object.fromEntries(
    members.map(({ item: { number, castIn } }) => {
      const arm = [castIn.x_mm - cx, castIn.y_mm - cy] as const;
      const [x, y] = turnVector(arm, angle);
      return [number, { dx: x - arm[0], dy: y - arm[1] }];
    }),
  );
}

const movedOf = ({ remedies }: AsCastConnection) => remedies.find(({ kind }) => kind === 'plate moved')!;

describe('where a plate goes', () => {
  it('turned as its inserts are, it goes on as it was drawn: by up to 1° on site', () => {
    const moved = movedOf(connectionOf(reportOff('P13', turnedBy(0.8)), 'C41'));
    expect(moved.clearance!.margin).toBeCloseTo(1, 4);
    // Drawn from outside, the plate on the inside: turned the other way as seen from its front.
    expect(moved.change.move!.turn_deg).toBeCloseTo(-0.8, 3);
    expect(moved.words).toContain('clockwise');
    expect(moved.act).toBe('decide on site');
  });

  it('by more it is the design engineer who decides', () => {
    const moved = movedOf(connectionOf(reportOff('P13', turnedBy(2)), 'C41'));
    expect(moved.clearance!.margin).toBeGreaterThanOrEqual(0);
    expect(moved.act).toBe('change the design');
  });

  it('is the same whichever point its movement is told about', () => {
    const { panel, connection, fixture } = drawn();
    for (const from of [
      [0, 0],
      [40, -30],
      [-150, 80],
    ] as const) {
      const move = recordMove(fixture, from, 0.7, [3, -2]);
      const placed = movePlate(panel, connection, fixture, move);
      for (const { at_mm } of fixture.holes) {
        const [x, y] = turnVector([at_mm[0] - from[0], at_mm[1] - from[1]], 0.7);
        const wanted = [from[0] + x + 3, from[1] + y - 2] as const;
        const frame = frameOf(panel, connection);
        const onFace = placeOnFace(frame, placed.origin_mm, placed.turn_deg, at_mm);
        const seen = findInPlate(panel, connection, frame.toFace(onFace));
        expect(seen[0]).toBeCloseTo(wanted[0], 9);
        expect(seen[1]).toBeCloseTo(wanted[1], 9);
      }
    }
  });

  it('does not depend on the axes that the plate is drawn in', () => {
    const offs: Offs = { 12: { dx: 7 }, 14: { dx: -1, dy: 2 } };
    const [as, turned] = [DEMO, inOtherAxes()].map((file) => connectionOf(reportOff('P13', offs, file), 'C41'));
    expect(turned!.before.ratio).toBeCloseTo(as!.before.ratio!, 9);
    for (const kind of ['as is', 'plate moved', 'fewer inserts', 'plate drilled anew'] as const) {
      const [a, b] = [as!, turned!].map(({ remedies }) => remedies.find((one) => one.kind === kind)!);
      expect(b!.verdict).toBe(a!.verdict);
      expect(b!.clearance!.margin).toBeCloseTo(a!.clearance!.margin, 4);
      expect(b!.ratio).toBeCloseTo(a!.ratio!, 5);
    }
  });
});

function drawn() {
  const { context, plan } = castOf('P13').sample;
  const connection = context.index.connectionsOf('P13').find(({ mark }) => mark === 'C41')!;
  return { panel: plan.setOut.panel, connection, fixture: context.index.fixtureOf(connection)! };
}

/** The demo job with the plate of C41 drawn in axes turned by 90°: the same plate in the same place, under the same loads. */
function inOtherAxes() {
  const { fixture } = drawn();
  const turn = <T extends readonly [number, number]>(at: T) => turnVector(at, -90);
  const plate = {
    ...fixture,
    outline_mm: fixture.outline_mm.map(turn),
    attachment_mm: fixture.attachment_mm?.map(turn) ?? null,
    holes: fixture.holes.map((hole) => ({ ...hole, at_mm: turn(hole.at_mm) })),
  };
  const change = (connection: Connection): Connection => {
    if (connection.mark !== 'C41' || connection.actions.kind !== 'loads') return connection;
    const combinations = connection.actions.combinations.map((load) => {
      const [Vx_kN, Vy_kN] = turn([load.Vx_kN, load.Vy_kN]);
      const [Mx_kNm, My_kNm] = turn([load.Mx_kNm, load.My_kNm]);
      return { ...load, Vx_kN, Vy_kN, Mx_kNm, My_kNm, at_mm: turn(load.at_mm) };
    });
    return {
      ...connection,
      detail: null,
      fixture: plate,
      turn_deg: connection.turn_deg + 90,
      actions: { ...connection.actions, combinations },
    };
  };
  return demoFile((file) => ({ ...file, job: { ...file.job, connections: file.job.connections.map(change) } }));
}
