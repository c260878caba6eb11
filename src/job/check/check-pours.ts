import type { Panel } from '../documents/panel.ts';
import type { Piece, Pour } from '../documents/pour.ts';
import type { Bed } from '../documents/yard.ts';
import { extentOnBed } from '../extent-on-bed.ts';
import type { DocumentFault } from '../fault.ts';
import type { Entry, Path, SiftedJob } from '../sift.ts';
import { faultAt } from './fault-at.ts';

/** Beyond rounding [mm]. */
const SAME = 1e-6;

/** A bed whose ends and rails cannot be told apart. */
function checkBed({ path, value: bed }: Entry<Bed>): DocumentFault[] {
  const names = Object.entries(bed.names);
  return names.flatMap(([key, name], i) => {
    const first = names.findIndex(([, other]) => other === name);
    if (first === i) return [];
    const text = `${name} is the name of two sides of bed ${bed.id}; expected four names that differ`;
    return [faultAt([...path, 'names', key], name, 'a name of its own', text)];
  });
}

interface Placed {
  readonly path: Path;
  readonly piece: Piece;
  readonly along: number;
}

/** A piece that does not go onto its bed. */
function checkFit({ path, piece, along }: Placed, across: number, bed: Bed): DocumentFault[] {
  const name = `piece ${piece.serial} of panel ${piece.panel}`;
  if (across > bed.width_mm + SAME) {
    const text = `${name} is ${across} mm wide as it lies, bed ${bed.id} ${bed.width_mm} mm; expected a wider bed, or the panel turned`;
    return [faultAt([...path, 'panel'], piece.panel, `at most ${bed.width_mm} mm wide`, text)];
  }
  const start = piece.along_mm ?? 0;
  if (start + along <= bed.length_mm + SAME) return [];
  const place = piece.along_mm === null ? '' : `begins at ${start} mm and `;
  const text = `${name} ${place}is ${along} mm long as it lies, bed ${bed.id} ${bed.length_mm} mm; expected its end on the bed`;
  const key = piece.along_mm === null ? 'panel' : 'along_mm';
  return [faultAt([...path, key], piece[key], `at most ${bed.length_mm} mm in all`, text)];
}

/** Pieces of one bed and day that lie on each other; a place that is not planned lies on none. */
function checkApart(placed: readonly Placed[]): DocumentFault[] {
  return placed.flatMap(({ path, piece, along }, i) => {
    const start = piece.along_mm;
    if (start === null) return [];
    const under = placed
      .slice(0, i)
      .find(
        (other) =>
          other.piece.along_mm !== null &&
          start < other.piece.along_mm + other.along - SAME &&
          other.piece.along_mm < start + along - SAME,
      );
    if (under === undefined) return [];
    const from = under.piece.along_mm ?? 0;
    const text = `piece ${piece.serial} of panel ${piece.panel} lies from ${start} to ${start + along} mm on piece ${under.piece.serial} of panel ${under.piece.panel}, from ${from} to ${from + under.along} mm; expected them apart`;
    return [faultAt([...path, 'along_mm'], start, 'a place of its own', text)];
  });
}

function placePieces(
  { path, value: pour }: Entry<Pour>,
  panels: ReadonlyMap<string, Panel>,
): readonly (Placed & { readonly across: number })[] {
  return pour.pieces.flatMap((piece, i) => {
    const panel = panels.get(piece.panel);
    return panel === undefined ? [] : [{ path: [...path, 'pieces', i], piece, ...extentOnBed(panel) }];
  });
}

/** Beds with four names; pours whose pieces go onto the bed, side by side with those of other pours of the same day. */
export function checkPours(job: SiftedJob): DocumentFault[] {
  const beds = new Map([...job.beds].reverse().map(({ value }) => [value.id, value]));
  const panels = new Map([...job.panels].reverse().map(({ value }) => [value.mark, value]));
  const days = new Map<string, Placed[]>();
  const fits = job.pours.flatMap((pour) => {
    const bed = beds.get(pour.value.bed);
    if (bed === undefined) return [];
    const placed = placePieces(pour, panels);
    const day = JSON.stringify([bed.id, pour.value.date]);
    days.set(day, [...(days.get(day) ?? []), ...placed]);
    return placed.flatMap((piece) => checkFit(piece, piece.across, bed));
  });
  return [...job.beds.flatMap(checkBed), ...fits, ...[...days.values()].flatMap(checkApart)];
}
