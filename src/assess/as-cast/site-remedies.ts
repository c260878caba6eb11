import type { Point } from '../../engine/geometry/point.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { turnVector } from '../../job/face-frame.ts';
import { MOST_TURN } from '../yard/fit-plate.ts';
import type { Remedy } from './as-cast-report.ts';
import { findTightest, fitBolts, NO_CHANGE, type RemedyQuestion, type StandingBolt, standBolts } from './attempt.ts';
import { completeRemedy, refuseRemedy } from './complete-remedy.ts';
import { type DepthNeeds, findDepthNeeds, keepBolts, packUp, tellDepthNeeds } from './depth-needs.ts';
import { movePlate, type RecordedMove, recordMove } from './plate-place.ts';
import { tellShift } from './tell-shift.ts';

/** A plate turned by more than an installer may is a change of the design, up to this [degrees]: beyond it no turn is looked for. Common practice. */
const MOST_TURN_BY_DESIGN = 5;

export const NO_PLATE = 'no plate is drawn: nothing can be moved or drilled';

/** A plate where it goes on best. */
export interface MovedPlate {
  readonly placed: Connection;
  readonly move: RecordedMove;
  readonly provenWithin: number;
  readonly fits: boolean;
}

function middleOf(bolts: readonly StandingBolt[]): Point {
  const sum = (axis: 0 | 1) => bolts.reduce((total, { hole }) => total + hole.at_mm[axis], 0);
  return [sum(0) / bolts.length, sum(1) / bolts.length];
}

/**
 * Where a plate goes on best: turned by no more than an installer may, where it does then; else by as much as is looked for.
 * @param connection with the packers and inserts that it gets
 * @param holes of the plate as they would be
 */
export function moveToBest(
  question: Pick<RemedyQuestion, 'cast' | 'fixture'>,
  connection: Connection,
  fixture: Fixture,
  holes: readonly FixtureHole[],
): MovedPlate {
  const bolts = standBolts(question, connection, holes);
  const small = fitBolts(bolts, MOST_TURN);
  const fit = small.fits ? small : fitBolts(bolts, MOST_TURN_BY_DESIGN);
  const { turn, shift } = fit.fits ? fit.move : small.move;
  const move = recordMove(fixture, middleOf(bolts), (turn * 180) / Math.PI, shift);
  return {
    placed: movePlate(question.cast.panel, connection, fixture, move),
    move,
    provenWithin: (fit.fits ? fit : small).provenWithin,
    fits: fit.fits,
  };
}

/** A movement as one makes it who stands in front of the plate. */
export function tellMove(
  { cast, connection }: Pick<RemedyQuestion, 'cast' | 'connection'>,
  move: RecordedMove,
): string {
  const shift = tellShift(turnVector([move.dx_mm, move.dy_mm], connection.turn_deg), connection.face, cast.panel);
  const turned = Math.abs(move.turn_deg);
  const turn =
    turned < 0.005 ? '' : `turn it ${turned.toFixed(2)}° ${move.turn_deg > 0 ? 'counter-clockwise' : 'clockwise'}`;
  if (shift === null && turn === '') return 'Leave the plate where it is drawn';
  if (shift === null) return `T${turn.slice(1)}`.replace('it', 'the plate');
  return `Shift the plate ${shift}${turn === '' ? '' : ` and ${turn}`}`;
}

/** As drawn, with bolts of the designed length. */
export function tryAsIs(question: RemedyQuestion): Remedy {
  const { connection, fixture } = question;
  const needs = findDepthNeeds(question, connection);
  const kept = keepBolts(question, needs);
  const proud = needs.proud.map(
    ({ insert: { item }, proud: by }) =>
      `the plate does not lie on the concrete: no. ${item.number} stands ${by.toFixed(1)} mm out of the face`,
  );
  return completeRemedy(question, {
    kind: 'as is',
    words: 'As it is: plate, holes and bolts as drawn.',
    placed: kept.connection,
    holes: fixture?.holes ?? null,
    change: NO_CHANGE,
    conditions: [],
    faults: [...proud, ...kept.faults],
    provenWithin: 0,
  });
}

function changeFor(needs: DepthNeeds, move: RecordedMove | null): Remedy['change'] {
  return { ...NO_CHANGE, move, packers_mm: needs.packers };
}

export function tryMove(question: RemedyQuestion): Remedy {
  const { connection, fixture } = question;
  if (fixture === null) return refuseRemedy(question, 'plate moved', 'Shift or turn the plate.', [NO_PLATE]);
  const needs = findDepthNeeds(question, connection);
  const packed = packUp(connection, needs);
  if ((findTightest(standBolts(question, packed, fixture.holes))?.room ?? 0) >= 0)
    return refuseRemedy(question, 'plate moved', 'Shift or turn the plate.', [
      'not needed: it goes on where it is drawn',
    ]);
  const { placed, move, provenWithin } = moveToBest(question, packed, fixture, fixture.holes);
  return completeRemedy(question, {
    kind: 'plate moved',
    words: `${tellMove(question, move)}.`,
    placed,
    holes: fixture.holes,
    change: changeFor(needs, move),
    conditions: tellDepthNeeds(needs),
    faults: [],
    provenWithin,
  });
}

/** Packers over what stands out, longer bolts into what lies too deep; the plate as drawn where it goes on so, else where it goes on best. */
export function tryPackers(question: RemedyQuestion): Remedy {
  const { connection, fixture } = question;
  const needs = findDepthNeeds(question, connection);
  const what = tellDepthNeeds(needs);
  if (what.length === 0)
    return refuseRemedy(question, 'packers or other bolts', 'Packers, or bolts of another length.', [
      'not needed: no insert stands out of the face or lies too deep, as far as depths were taken',
    ]);
  const packed = packUp(connection, needs);
  const bolts = fixture === null ? [] : standBolts(question, packed, fixture.holes);
  const goesOn = (findTightest(bolts)?.room ?? 0) >= 0;
  const moved = goesOn || fixture === null ? null : moveToBest(question, packed, fixture, fixture.holes);
  const [first = '', ...rest] = what;
  const shift = moved === null ? [] : [tellMove(question, moved.move).toLowerCase()];
  return completeRemedy(question, {
    kind: 'packers or other bolts',
    words: `${first[0]!.toUpperCase()}${[first.slice(1), ...rest, ...shift].join('; ')}.`,
    placed: moved?.placed ?? packed,
    holes: fixture?.holes ?? null,
    change: changeFor(needs, moved?.move ?? null),
    conditions: [],
    faults: [],
    provenWithin: moved?.provenWithin ?? 0,
  });
}
