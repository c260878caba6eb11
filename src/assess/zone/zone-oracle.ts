import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { overlayPlaces } from '../live/live-connection.ts';
import { assessMoved } from '../yard/assess-moved.ts';
import { findObstacle, type Moved } from './find-obstacle.ts';
import type { ZoneSite } from './zone-site.ts';

/** Why a place is not permitted. */
export type ZoneLimit =
  /** Concrete, cover, another insert, a bar: in words without a full stop. */
  | { readonly kind: 'place'; readonly text: string }
  /** The plate does not go on. */
  | { readonly kind: 'plate fit' }
  | { readonly kind: 'strength'; readonly answer: ConnectionAnswer };

const PLATE_DOES_NOT_GO_ON: ZoneLimit = { kind: 'plate fit' };

/** The inserts of a connection where they are tried. */
export function moveMembers(site: ZoneSite, shifts: readonly Point[]): Moved {
  const which: number[] = [];
  const castIns = site.members.map((castIn, at): CastIn => {
    const [dx, dy] = shifts[at]!;
    if (dx === 0 && dy === 0) return castIn;
    which.push(at);
    return { ...castIn, x_mm: castIn.x_mm + dx, y_mm: castIn.y_mm + dy };
  });
  return { castIns, which };
}

/** What speaks against places without computing strength: cheap beside it. */
export function findPlaceLimit(site: ZoneSite, moved: Moved): ZoneLimit | null {
  if (site.plate !== null && !site.plate.goesOn(moved.castIns)) return PLATE_DOES_NOT_GO_ON;
  const text = findObstacle(site, moved);
  return text === null ? null : { kind: 'place', text };
}

/** The strength with the inserts where they are tried: the full check of every combination. */
export function assessAt({ index, panel, connection }: ZoneSite, { castIns }: Moved): ConnectionAnswer {
  return assessMoved({ index, moved: overlayPlaces(index, castIns), panel, connection, members: castIns });
}

/** What speaks against places first, strength last; null: all holds. */
export function findLimit(site: ZoneSite, shifts: readonly Point[]): ZoneLimit | null {
  const moved = moveMembers(site, shifts);
  const limit = findPlaceLimit(site, moved);
  if (limit !== null) return limit;
  const answer = assessAt(site, moved);
  return answer.state === 'passes' ? null : { kind: 'strength', answer };
}
