import type { FixtureAction, FixtureBolt } from '../../engine/fixture/fixture-forces.ts';
import { findLeverArm } from '../../engine/fixture/stand-off.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { findWidestHole } from '../../engine/hardware/clearance-holes.ts';
import type { Thread } from '../../engine/hardware/threads.ts';
import { elasticModulus } from '../../engine/material/concrete-class.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Combination, Connection } from '../documents/connection.ts';
import type { Fixture, FixtureHole } from '../documents/fixture.ts';
import { type FaceFrame, placeOnFace, turnVector } from '../face-frame.ts';
import { showLength } from './local-member-type.ts';
import type { ResolvedPlate } from './resolved-connection.ts';
import { toNewton, toNewtonMillimetre } from './units.ts';

/** n = E_s/E_cm, E_s of EN 1992-1-1, 3.2.7 [MPa]. */
function modularRatio(strength: number): number {
  return 200_000 / elasticModulus(strength);
}

function takesShear(hole: FixtureHole, turn_deg: number): FixtureBolt['takesShear'] {
  if (!hole.takesShear) return false;
  if (hole.slot_mm === 0) return true;
  return { onlyAlong: turnVector([0, 1], hole.slotAngle_deg + turn_deg) };
}

/** The plate and its bolts (where the inserts are) on the face; inserts and positions in the same order. */
export function resolvePlate(
  connection: Connection,
  fixture: Fixture,
  frame: FaceFrame,
  bolts: readonly { readonly castIn: CastIn; readonly hole: FixtureHole; readonly thread: Thread }[],
  strength: number,
): ResolvedPlate {
  const place = (local: Point): Point => placeOnFace(frame, connection.origin_mm, connection.turn_deg, local);
  return {
    outline: fixture.outline_mm.map(place),
    thickness: fixture.thickness_mm,
    yield: fixture.yield_MPa,
    attachment: fixture.attachment_mm?.map(place) ?? null,
    modularRatio: modularRatio(strength),
    bolts: bolts.map(({ castIn, hole, thread }) => {
      const [x, y] = frame.toFace([castIn.x_mm, castIn.y_mm]);
      return { id: castIn.id, x, y, stressArea: thread.stressArea, takesShear: takesShear(hole, connection.turn_deg) };
    }),
  };
}

/** A load combination on the face: vectors turned with the plate, moments in N mm. */
export function resolveAction(connection: Connection, frame: FaceFrame, load: Combination): FixtureAction {
  const [Vx, Vy] = turnVector([toNewton(load.Vx_kN), toNewton(load.Vy_kN)], connection.turn_deg);
  const [Mx, My] = turnVector([toNewtonMillimetre(load.Mx_kNm), toNewtonMillimetre(load.My_kNm)], connection.turn_deg);
  return {
    at: placeOnFace(frame, connection.origin_mm, connection.turn_deg, load.at_mm),
    N: toNewton(load.N_kN),
    Vx,
    Vy,
    Mx,
    My,
    T: toNewtonMillimetre(load.T_kNm),
  };
}

/** Holes too wide for the inserts to share a shear as the plate's equilibrium assumes. */
export function findWideHoles(holes: readonly FixtureHole[], thread: Thread): readonly string[] {
  const limit = findWidestHole(thread);
  return holes
    .filter((hole) => hole.takesShear && hole.diameter_mm > limit)
    .map(
      (hole) =>
        `hole ${hole.id} of ${hole.diameter_mm} mm is wider than ${limit} mm, up to which bolts ${thread.name} share a shear (EN 1992-4, Table 6.1)`,
    );
}

/** The lever arm of the shear as the engine takes it, and why there is one or none. */
export interface ResolvedLeverArm {
  readonly leverArm: { readonly length: number; readonly restraint: number; readonly sectionModulus: number } | null;
  readonly assumptions: readonly string[];
}

/** Finds the lever arm from how the fixture sits on the face. */
export function resolveLeverArm(
  connection: Connection,
  fixture: Fixture | null,
  thread: Thread,
  recess: number,
): ResolvedLeverArm {
  const { packers_mm, isFilled } = connection;
  const arm = findLeverArm({
    boltDiameter: thread.diameter,
    fixtureThickness: fixture?.thickness_mm ?? 0,
    packers: isFilled ? 0 : packers_mm,
    mortar: isFilled && packers_mm > 0 ? { thickness: packers_mm, strength: 30 } : null,
    recess: { depth: recess, isFilled },
    isClampedAtFace: false,
    bearsOnHalfThickness: true,
    isSteelFixture: true,
  });
  if (arm.kind === 'none') return { leverArm: null, assumptions: [`no lever arm: ${arm.why}`] };
  const restraint = connection.isHeldAgainstTurning ? 2 : 1;
  const stressDiameter = (thread.pitchDiameter + thread.externalMinor) / 2;
  return {
    leverArm: { length: arm.length, restraint, sectionModulus: (Math.PI / 32) * stressDiameter ** 3 },
    assumptions: [
      `lever arm ${showLength(arm.length)}, a_3 ${showLength(arm.a3)} and e_1 ${showLength(arm.e1)} from the face to the middle of the fixture: ${arm.why}; restraint ${restraint}`,
    ],
  };
}
