import type { Point } from '../../engine/geometry/point.ts';
import { SurveyError } from '../../engine/survey/survey-error.ts';
import { adjustNetwork, type NetworkDistance, type TapedNetwork } from '../../engine/survey/tape-network.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { BodyOf } from '../../records/record.ts';

type Tape = BodyOf<'surveyed'>['tapes'][number];

/** Where taped inserts are on the drawn plane [mm]. */
export interface TapedPlaces {
  readonly places: ReadonlyMap<
    string,
    { readonly x: number; readonly y: number; readonly sigma: readonly [number, number] }
  >;
  /** Keys of inserts of which only the place to each other is known: they are laid where they are nearest to the design. */
  readonly shapeOnly: ReadonlySet<string>;
  /** What a reader must know, in words. */
  readonly notes: readonly string[];
}

/** Inserts that distances join, each set to be adjusted by itself. */
function listSets(castIns: readonly CastIn[], tapes: readonly Tape[]): readonly (readonly CastIn[])[] {
  const sets: Set<string>[] = [];
  for (const { item, to } of tapes) {
    const joined = [item, ...(to.kind === 'insert' ? [to.item] : [])];
    const met = sets.filter((set) => joined.some((key) => set.has(key)));
    for (const set of met) sets.splice(sets.indexOf(set), 1);
    sets.push(new Set([...joined, ...met.flatMap((set) => [...set])]));
  }
  return sets.map((set) => castIns.filter(({ key }) => set.has(key))).filter((set) => set.length > 0);
}

function toDistances(set: readonly CastIn[], tapes: readonly Tape[]): readonly (NetworkDistance & { tape: Tape })[] {
  const indexOf = (key: string) => set.findIndex((castIn) => castIn.key === key);
  return tapes.flatMap((tape) => {
    const [of, other] = [indexOf(tape.item), tape.to.kind === 'insert' ? indexOf(tape.to.item) : 0];
    if (of < 0 || other < 0) return [];
    const to: NetworkDistance['to'] =
      tape.to.kind === 'insert'
        ? { kind: 'insert', other }
        : { kind: 'edge', from: tape.to.from_mm, end: tape.to.end_mm };
    return [{ of, to, distance: tape.distance_mm, deviation: tape.sigma_mm, tape }];
  });
}

/** A distance as people say it. */
function nameTape(castIns: readonly CastIn[], { item, to, distance_mm }: Tape): string {
  const id = (key: string) => castIns.find((castIn) => castIn.key === key)?.id ?? key;
  return `${id(item)} to ${to.kind === 'insert' ? id(to.item) : 'its edge'} (${distance_mm} mm)`;
}

function tell(set: readonly CastIn[], tapes: readonly Tape[], { blunder, freeMoves, isMirrorOpen }: TapedNetwork) {
  const ids = set.map(({ id }) => id).join(', ');
  const notes: string[] = [];
  if (freeMoves > 0)
    notes.push(
      `Insert ${ids}: only how they lie to each other is known, which tells whether a plate goes on; where they are on the panel is taken as designed.`,
    );
  if (isMirrorOpen && set.length > 2)
    notes.push(`Insert ${ids}: the mirror image fits the distances as well; the side of the design is taken.`);
  if (blunder.kind === 'at')
    notes.push(`The distance ${nameTape(set, tapes[blunder.index]!)} does not agree with the others: tape it again.`);
  if (blunder.kind === 'one of')
    notes.push(
      `The distances contradict each other; which of ${blunder.indices.map((i) => nameTape(set, tapes[i]!)).join(', ')} is wrong cannot be told: tape one more.`,
    );
  return notes;
}

/**
 * Where inserts of the large faces are by what was taped on the hard panel, from edges and from each other, each set that distances join adjusted as a
 * whole. Edges and places are those of the drawing, on either face: a distance is the same from both sides.
 */
export function placeByTapes(castIns: readonly CastIn[], tapes: readonly Tape[]): TapedPlaces {
  const places = new Map<string, { x: number; y: number; sigma: readonly [number, number] }>();
  const shapeOnly = new Set<string>();
  const notes: string[] = [];
  const onFaces = castIns.filter(({ face }) => face !== 'edge');
  for (const set of listSets(onFaces, tapes)) {
    const distances = toDistances(set, tapes);
    try {
      const network = adjustNetwork(
        distances,
        set.map(({ x_mm, y_mm }): Point => [x_mm, y_mm]),
      );
      if (set.length === 1 && network.freeMoves > 0) {
        notes.push(`Insert ${set[0]!.id}: what was taped leaves it free along an edge; tape it from another edge too.`);
        continue;
      }
      network.places.forEach(({ at, sigmaX, sigmaY }, i) => {
        places.set(set[i]!.key, { x: at[0], y: at[1], sigma: [sigmaX, sigmaY] });
        if (network.freeMoves > 0) shapeOnly.add(set[i]!.key);
      });
      notes.push(
        ...tell(
          set,
          distances.map(({ tape }) => tape),
          network,
        ),
      );
    } catch (error) {
      if (!(error instanceof SurveyError)) throw error;
      notes.push(`Insert ${set.map(({ id }) => id).join(', ')}: ${error.message}.`);
    }
  }
  return { places, shapeOnly, notes };
}
