import type { FixtureHole } from '../../job/documents/fixture.ts';
import { type ChangedPlate, type PlateQuestion, tryPlate } from './changed-plate.ts';
import { findNoRoom } from './plate-room.ts';

/** A template is drilled to tenths of a millimetre. */
const TENTHS = 10;

/** A plate drilled to where its bolts stand: the same plate with new holes beside the old ones, or a new plate. */
export type RedrilledPlate =
  | { readonly kind: 'same plate' | 'new plate'; readonly plate: ChangedPlate; readonly notSame: string | null }
  | { readonly kind: 'not this way'; readonly why: string };

/**
 * Holes drilled anew where the bolts stand, the plate lying where it was drawn. In the same plate those alone whose bolts do not go in, each clear
 * of the old holes, which stay open; where that has no room, in a new plate: all at their bolts, none of the old ones there.
 */
export function redrillHoles(question: PlateQuestion): RedrilledPlate {
  const { fixture, bolts } = question;
  const moveHole = (hole: FixtureHole): FixtureHole => {
    const [x, y] = bolts.find((one) => one.hole.id === hole.id)!.bolt; // asked for holes that are used
    return { ...hole, at_mm: [Math.round(x * TENTHS) / TENTHS, Math.round(y * TENTHS) / TENTHS] };
  };
  const used = fixture.holes.filter(({ id }) => bolts.some(({ hole }) => hole.id === id));
  const off = used.filter((hole) => {
    const one = bolts.filter((each) => each.hole.id === hole.id);
    const alone = tryPlate({ ...question, bolts: one }, []);
    return alone === null || Math.hypot(...alone.move.shift) > 0;
  });
  if (off.length === 0) return { kind: 'not this way', why: 'every bolt goes in where the plate was drawn' };
  const inSame = off.map(moveHole);
  const same = tryPlate(question, inSame);
  const noRoom = same === null ? null : findNoRoom(fixture, inSame, fixture.holes);
  if (same !== null && noRoom === null) return { kind: 'same plate', plate: same, notSame: null };
  const all = used.map(moveHole);
  const fresh = tryPlate(question, all);
  if (fresh === null) return { kind: 'not this way', why: 'a hole is narrower than its bolt: no place helps' };
  const rest = fixture.holes.filter((hole) => !used.includes(hole));
  const crowded = findNoRoom(fixture, all, rest);
  if (crowded !== null) return { kind: 'not this way', why: crowded };
  return { kind: 'new plate', plate: fresh, notSame: noRoom };
}
