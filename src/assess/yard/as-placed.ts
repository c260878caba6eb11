import { prepareRegion } from '../../engine/geometry/region.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { overlayPlaces } from '../live/live-connection.ts';
import { assessMoved } from './assess-moved.ts';
import { fitBoard } from './fit-board.ts';
import { fitPlate, listBolts } from './fit-plate.ts';
import { placeCastIn, type SeatQuestion } from './placed-cast-in.ts';
import { findOutOfPlace, findPlacedFindings } from './placed-findings.ts';
import type { AsPlaced, FoundPlace } from './placing-answer.ts';

/** An insert where it was found. */
export interface PlacedQuestion extends SeatQuestion {
  /** Where the other inserts of the panel were found, by their permanent keys. */
  readonly others: ReadonlyMap<string, FoundPlace>;
}

/** The insert computed where it is: its connection, and what else is wrong with it there. */
export interface PlacedAnswer {
  /** Null where it belongs to no connection. */
  readonly asPlaced: AsPlaced | null;
  readonly findings: readonly string[];
}

function tellWhy({ state, governing, reasons }: ConnectionAnswer): string | null {
  return state === 'passes' || state === 'fails' ? (governing?.mode ?? null) : (reasons[0] ?? null);
}

function findConnection({ index, setOut, item }: PlacedQuestion): Connection | undefined {
  return index
    .connectionsOf(setOut.panel.mark)
    .find(({ inserts }) => inserts.some(({ insert }) => insert === item.castIn.id));
}

const NOT_TAPED: FoundPlace = { x: null, y: null, level: null };

/**
 * Where the inserts were found, with what follows for those of the same template board that were not taped: a board does not deform, so that they
 * lie off as those lie that were.
 */
function spreadOverBoards({ setOut, item, found, others }: PlacedQuestion): ReadonlyMap<string, FoundPlace> {
  const places = new Map(others).set(item.castIn.key, found);
  for (const { hasTemplate, members } of setOut.groups) {
    if (!hasTemplate) continue;
    const onBoard = members.flatMap(({ number }) => setOut.items.find((one) => one.number === number) ?? []);
    const lies = fitBoard(onBoard.map(({ castIn, taped }) => ({ taped, found: places.get(castIn.key) ?? NOT_TAPED })));
    if (lies === null) continue;
    for (const { castIn, taped } of onBoard) {
      const { x, y, level } = places.get(castIn.key) ?? NOT_TAPED;
      const at = lies(taped);
      places.set(castIn.key, { x: x ?? at.x, y: y ?? at.y, level });
    }
  }
  return places;
}

/** Of which members of a connection a length is missing, by their numbers. */
function listUnmeasured({ setOut, item, found, others }: PlacedQuestion, connection: Connection): readonly number[] {
  const ids = new Set(connection.inserts.map(({ insert }) => insert));
  return setOut.items
    .filter(({ castIn }) => ids.has(castIn.id))
    .filter(({ castIn }) => {
      const place = castIn.id === item.castIn.id ? found : others.get(castIn.key);
      return place === undefined || place.x === null || place.y === null;
    })
    .map(({ number }) => number);
}

/**
 * Computes an insert where it was found, the other inserts where they were found, and those that nobody measured as designed: the strength of its
 * connection by the engine that checked the design, whether the plate goes on, and what it meets.
 */
export function answerAsPlaced(question: PlacedQuestion): PlacedAnswer {
  const { index, bed, setOut, item, found } = question;
  const { panel } = setOut;
  const places = spreadOverBoards(question);
  const castIns = setOut.items.flatMap((one): CastIn[] => {
    const place = places.get(one.castIn.key);
    return place === undefined ? [] : [placeCastIn({ ...question, item: one, found: place })];
  });
  const moved = overlayPlaces(index, castIns);
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  const isInPlace = (id: string) => {
    const at = moved.castIn(panel.mark, id);
    return at !== undefined && findOutOfPlace(index, panel, region, at) === null;
  };
  const castIn = castIns.find(({ id }) => id === item.castIn.id) ?? item.castIn;
  // What was read beyond the concrete is in nobody's way: most likely it was typed wrong, and is told of that insert itself.
  const around = overlayPlaces(
    index,
    castIns.filter(({ id }) => id === castIn.id || isInPlace(id)),
  );
  const findings = findPlacedFindings({ index, moved: around, bed, setOut, region, item, castIn, level: found.level });
  const connection = findConnection(question);
  if (connection === undefined) return { asPlaced: null, findings };
  const members = connection.inserts.flatMap(({ insert }) => moved.castIn(panel.mark, insert) ?? []);
  const out = members.map((member) => findOutOfPlace(index, panel, region, member)).find((why) => why !== null);
  const before = assessConnection(resolveConnection(index, connection));
  // What stands outside the concrete has no strength to be computed.
  const after = out === undefined ? assessMoved({ index, moved, panel, connection, members }) : null;
  return {
    findings,
    asPlaced: {
      connection: connection.mark,
      before: { state: before.state, ratio: before.ratio },
      after:
        after === null
          ? { state: 'cannot be computed', ratio: null, why: out ?? null }
          : { state: after.state, ratio: after.ratio, why: tellWhy(after) },
      plate: fitPlate(listBolts(index, panel, connection, members)),
      findings,
      unmeasured: listUnmeasured(question, connection),
    },
  };
}
