import { hashText } from '../../job/fingerprint.ts';
import type { PanelSetOut, SetOutGroup, SetOutItem } from '../set-out/set-out.ts';
import type { DigitAsk } from './piece-plan.ts';

/** Of single inserts one in so many is taped: common practice. */
const ONE_IN = 5;

/**
 * Of a panel with no more inserts than this groups are taped in full, else as little as shows a group that is off: a check that takes longer than the
 * truck waits is filled in afterwards, from the drawing. Common practice: twenty inserts are looked at and taped in ten minutes. A number, not a
 * budget that groups share, so that one insert more does not ask anew for what was taped of another.
 */
const FEW = 8;

type Axis = DigitAsk['axis'];

/** A length to be taped, before its pad is known. */
interface Wanted {
  readonly item: SetOutItem;
  readonly axis: Axis;
  readonly why: DigitAsk['why'];
}

/** The longest length that the tape can show along an axis of an item [mm]. */
export function findLongest({ length, width, depth, words }: PanelSetOut, item: SetOutItem, axis: Axis): number {
  const { place, side } = item;
  if (place !== 'edge') return axis === 'x' ? length : width;
  if (axis === 'y') return depth;
  if (side === words.railA || side === words.railB) return length;
  return side === words.start || side === words.finish ? width : Math.hypot(length, width);
}

/** Digits of the longest length that the tape can show along an axis of an item. */
function countDigits(setOut: PanelSetOut, item: SetOutItem, axis: Axis): number {
  return String(Math.ceil(findLongest(setOut, item, axis))).length;
}

/** Orders by chance, the same on every device: what is drawn for one casting cannot be read off the sheet, and is another for the next. */
function drawBy<T>(piece: string, what: string, entries: readonly T[], nameOf: (entry: T) => string): readonly T[] {
  return entries
    .map((entry) => ({ entry, lot: hashText(`${piece} ${what} ${nameOf(entry)}`) }))
    .sort((a, b) => (a.lot < b.lot ? -1 : 1))
    .map(({ entry }) => entry);
}

function isHeads(piece: string, what: string): boolean {
  return Number.parseInt(hashText(`${piece} ${what}`).slice(0, 1), 16) < 8;
}

/** Which coordinate of the far end shows a turn about the near one: that across the line between them. */
function tellingAxis(near: SetOutItem, far: SetOutItem): Axis {
  const [dx, dy] = [far.taped[0] - near.taped[0], far.taped[1] - near.taped[1]];
  return Math.abs(dx) > Math.abs(dy) ? 'y' : 'x';
}

/**
 * What is taped of a group, or of those of its members that are set in one stage.
 *
 * The least: of one end of the check diagonal the coordinate along the line of the group, of the other end that across it. A shift along either axis
 * shows in one of the two, and so does a turn about any point but one. In full: the other coordinate of the first end, and with it a turn about
 * every point. A board can shift and turn but not deform, so that three coordinates place it; inserts that were taped one by one can each be off
 * by themselves, so that the fourth is wanted too. Which end is the first is drawn for each casting.
 */
function askGroup(
  piece: string,
  members: readonly SetOutItem[],
  { diagonal, hasTemplate }: SetOutGroup,
  isInFull: boolean,
): readonly Wanted[] {
  const at = (number: number | undefined) => members.find((member) => member.number === number);
  const [one, other] = [at(diagonal?.from), at(diagonal?.to)];
  // Ends that are set in two stages are not looked at together: then the first and the last of a stage stand for it.
  const [first, last] = one === undefined || other === undefined ? [members[0]!, members.at(-1)!] : [one, other];
  const [near, far] = isHeads(piece, `end ${first.castIn.key}`) ? [first, last] : [last, first];
  const want = (item: SetOutItem, axis: Axis): Wanted => ({ item, axis, why: 'group corner' });
  if (near === far) return [want(near, 'x'), want(near, 'y')];
  const across = tellingAxis(near, far);
  const along = across === 'x' ? 'y' : 'x';
  const least = [want(near, along), want(far, across)];
  if (!isInFull) return least;
  return hasTemplate ? [...least, want(near, across)] : [...least, want(near, across), want(far, along)];
}

/** Of a stage's single inserts some, and of each one of its two lengths. */
function drawSample(piece: string, stage: 1 | 2, singles: readonly SetOutItem[]): readonly Wanted[] {
  const count = Math.ceil(singles.length / ONE_IN);
  return drawBy(piece, `sample ${stage}`, singles, ({ castIn }) => castIn.key)
    .slice(0, count)
    .map((item) => ({ item, axis: isHeads(piece, `axis ${item.castIn.key}`) ? 'x' : 'y', why: 'sample' }));
}

/** Lifting inserts and braces are always taped, both ways: people stand under them. */
function isAlwaysTaped({ castIn }: SetOutItem): boolean {
  return castIn.role === 'lifting' || castIn.role === 'brace';
}

/**
 * Which lengths are taped in digits, in walking order: of every group its corners, of single inserts a sample. Something without a type is looked
 * at only.
 * @param piece its id, by which lots are drawn
 */
export function planAsks(setOut: PanelSetOut, piece: string): readonly DigitAsk[] {
  const others = setOut.items.filter((item) => !isAlwaysTaped(item) && item.item !== null);
  const grouped = setOut.groups.flatMap((group) =>
    ([1, 2] as const).flatMap((stage) => {
      const members = others.filter((item) => item.connection === group.connection && item.stage === stage);
      return group.members.length < 2 || members.length === 0 ? [] : [{ group, members }];
    }),
  );
  const inGroups = new Set(grouped.flatMap(({ members }) => members));
  const singles = others.filter((item) => !inGroups.has(item));
  const wanted: readonly Wanted[] = [
    ...setOut.items
      .filter(isAlwaysTaped)
      .flatMap((item) => (['x', 'y'] as const).map((axis): Wanted => ({ item, axis, why: 'lifting or brace' }))),
    ...([1, 2] as const).flatMap((stage) =>
      drawSample(
        piece,
        stage,
        singles.filter((item) => item.stage === stage),
      ),
    ),
    ...grouped.flatMap(({ group, members }) => askGroup(piece, members, group, others.length <= FEW)),
  ];
  const asks = wanted.map(
    ({ item, axis, why }): DigitAsk => ({
      number: item.number,
      key: item.castIn.key,
      axis,
      why,
      mostDigits: countDigits(setOut, item, axis),
    }),
  );
  return asks.sort((a, b) => a.number - b.number || (a.axis < b.axis ? -1 : 1));
}
