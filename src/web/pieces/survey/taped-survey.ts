import { tapeDeviation } from '../../../engine/form/tape-error.ts';
import type { Point } from '../../../engine/geometry/point.ts';
import { SurveyError } from '../../../engine/survey/survey-error.ts';
import { adjustNetwork, type NetworkDistance, type TapedNetwork } from '../../../engine/survey/tape-network.ts';
import type { CastIn } from '../../../job/documents/cast-in.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import type { BodyOf } from '../../../records/record.ts';
import { endsOfSide } from './tape-edges.ts';
import type { TapeDraft, TapeEntry } from './tape-entries.ts';

type Survey = BodyOf<'surveyed'>;

/** A common tape. Common practice. */
const TAPE = 'II';

function deviationOf(distance: number): number {
  return Number(tapeDeviation(TAPE, distance).toFixed(2));
}

function listTapes(panel: Panel, entries: readonly TapeEntry[]): Survey['tapes'] {
  return entries.flatMap((entry): Survey['tapes'][number][] => {
    if (entry.kind === 'side' && entry.typed !== null) {
      const [from_mm, end_mm] = endsOfSide(panel, entry.edge).map(([x, y]): [number, number] => [x, y]) as [
        [number, number],
        [number, number],
      ]; // a pair stays one
      return [
        {
          item: entry.item,
          to: { kind: 'edge', from_mm, end_mm },
          distance_mm: entry.typed,
          sigma_mm: deviationOf(entry.typed),
        },
      ];
    }
    if (entry.kind === 'between' && entry.typed !== null)
      return [
        {
          item: entry.item,
          to: { kind: 'insert', item: entry.other },
          distance_mm: entry.typed,
          sigma_mm: deviationOf(entry.typed),
        },
      ];
    return [];
  });
}

function listStances(entries: readonly TapeEntry[]): Survey['stances'] {
  const items = [...new Set(entries.map(({ item }) => item))];
  return items.flatMap((item) => {
    const depth = entries.findLast((entry) => entry.kind === 'depth' && entry.item === item);
    const tilt = entries.findLast((entry) => entry.kind === 'tilt' && entry.item === item);
    const depth_mm = depth?.kind === 'depth' ? depth.typed : null;
    const leans = tilt?.kind === 'tilt' ? { x_mm: tilt.x, y_mm: tilt.y, over_mm: tilt.over } : null;
    return depth_mm === null && leans === null ? [] : [{ item, depth_mm, tilt: leans }];
  });
}

/** What a record says of what was taped. Null: nothing was. */
export function makeTapedSurvey(
  panel: Panel,
  { basis, entries }: Pick<TapeDraft, 'basis' | 'entries'>,
  tool: Survey['tool'],
  note: string | null,
): Survey | null {
  const [tapes, stances] = [listTapes(panel, entries), listStances(entries)];
  if (tapes.length === 0 && stances.length === 0) return null;
  return { basis, file: null, tool, controls: [], points: [], tapes, stances, note };
}

/** Where taped inserts lie in the drawing, by key; or why that cannot be told, in words. */
export type TapedPlaces =
  | { readonly kind: 'found'; readonly places: ReadonlyMap<string, Point>; readonly network: TapedNetwork }
  | { readonly kind: 'open'; readonly why: string };

/** Adjusts what was taped of some inserts together; those without a tape are left out. */
export function findTapedPlaces(panel: Panel, castIns: readonly CastIn[], entries: readonly TapeEntry[]): TapedPlaces {
  const taped = listTapes(panel, entries);
  const set = castIns.filter(({ key }) =>
    taped.some(({ item, to }) => item === key || (to.kind === 'insert' && to.item === key)),
  );
  const indexOf = (key: string) => set.findIndex((castIn) => castIn.key === key);
  const distances = taped.flatMap(({ item, to, distance_mm: distance, sigma_mm: deviation }): NetworkDistance[] => {
    const of = indexOf(item);
    if (of < 0) return [];
    if (to.kind === 'edge')
      return [{ of, to: { kind: 'edge', from: to.from_mm, end: to.end_mm }, distance, deviation }];
    const other = indexOf(to.item);
    return other < 0 ? [] : [{ of, to: { kind: 'insert', other }, distance, deviation }];
  });
  try {
    const network = adjustNetwork(
      distances,
      set.map(({ x_mm, y_mm }): Point => [x_mm, y_mm]),
    );
    return {
      kind: 'found',
      places: new Map(set.map(({ key }, i) => [key, network.places[i]!.at])),
      network,
    };
  } catch (error) {
    if (error instanceof SurveyError) return { kind: 'open', why: 'Not enough is taped yet to say where they are.' };
    throw error;
  }
}
