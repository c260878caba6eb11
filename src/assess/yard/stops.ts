import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';
import { planAsks } from './digit-asks.ts';
import type { CheckStop } from './piece-plan.ts';

/** As many single inserts as are taken in with one look. */
const MOST_SINGLES = 6;

/** Where a person stands who looks at it: at which side form, or at which of the two rails. */
function standAt({ width }: PanelSetOut, { place, side, at }: SetOutItem): string {
  return side ?? `${place} ${at[1] > width / 2 ? 'back' : 'out'}`;
}

/**
 * What is looked at with one look, in walking order: the members of a connection that are built alike, or single inserts of one assembly on one
 * side. Only neighbours of the walk: nobody is sent back.
 */
export function planStops(setOut: PanelSetOut, piece: string): readonly CheckStop[] {
  const asks = planAsks(setOut, piece);
  const groups = new Set(setOut.groups.filter(({ members }) => members.length > 1).map(({ connection }) => connection));
  const groupOf = ({ connection }: SetOutItem) => (connection !== null && groups.has(connection) ? connection : null);
  const looks: SetOutItem[][] = [];
  for (const item of setOut.items) {
    const look = looks.at(-1);
    const last = look?.at(-1);
    const isAlike =
      last !== undefined &&
      // Inserts of one assembly, and of one face, are of one stage.
      last.assembly === item.assembly &&
      last.castIn.role === item.castIn.role &&
      groupOf(last) === groupOf(item) &&
      (groupOf(item) !== null ||
        // Things without an assembly are each something else.
        (item.assembly !== null && standAt(setOut, last) === standAt(setOut, item) && look!.length < MOST_SINGLES));
    if (isAlike) look!.push(item);
    else looks.push([item]);
  }
  return looks.map((members): CheckStop => {
    const [first] = members as [SetOutItem, ...SetOutItem[]]; // a look begins with an item
    const numbers = new Set(members.map(({ number }) => number));
    return {
      stage: first.stage,
      members,
      connection: members.every(({ connection }) => connection === first.connection) ? first.connection : null,
      assembly: first.assembly,
      asks: asks.filter(({ number }) => numbers.has(number)),
    };
  });
}
