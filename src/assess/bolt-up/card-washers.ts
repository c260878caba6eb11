import type { Thread } from '../../engine/hardware/threads.ts';
import { chooseWasher } from '../../engine/hardware/washer-choice.ts';
import { listWashers } from '../../engine/hardware/washers.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
import type { BodyOf } from '../../records/record.ts';
import type { CardWasher } from './bolt-up-report.ts';

/** Washers of a bolt from its head to the plate, and how thick they are together: nominal, and at most [mm]. */
export interface WasherStack {
  readonly washers: readonly CardWasher[];
  readonly thickness: number;
  readonly thicknessMax: number;
}

/** A flat washer alone, or under it a plate washer that covers the hole. */
function stack(thread: Thread, kind: 'ISO 7089' | 'ISO 7093-1', plate: CardWasher | null): WasherStack {
  const flat = listWashers(thread).find(({ standard }) => standard === kind)!; // of both kinds there is one
  const { outside, thickness, thicknessMax } = flat;
  const under = plate?.thickness ?? 0;
  return {
    washers: [{ kind, outside, thickness }, ...(plate === null ? [] : [plate])],
    thickness: thickness + under,
    thicknessMax: thicknessMax + under,
  };
}

/**
 * The washers of a bolt in its hole: the plate washer that was decided for a changed hole, else what covers the hole wherever in it the bolt stands.
 * @param hole null: no plate is given
 * @param decided null: nothing was decided about the connection
 */
export function findWashers(
  thread: Thread,
  hole: FixtureHole | null,
  decided: BodyOf<'remedy-decided'> | null,
): WasherStack {
  if (hole === null) return stack(thread, 'ISO 7089', null);
  const isChanged = decided?.change.holes.some(({ id }) => id === hole.id) ?? false;
  const washer = decided?.change.washer_mm ?? null;
  if (isChanged && washer !== null)
    return stack(thread, 'ISO 7089', { kind: 'plate', outside: washer.side, thickness: washer.thickness });
  const chosen = chooseWasher(thread, { diameter: hole.diameter_mm, slot: hole.slot_mm });
  if (chosen.kind !== 'plate') return stack(thread, chosen.kind, null);
  return stack(thread, 'ISO 7089', chosen);
}
