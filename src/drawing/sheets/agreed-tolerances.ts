import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Block } from '../flow.ts';
import { TYPE } from './paper.ts';
import { layTextBlock } from './text-block.ts';

/** Numbers in a row, in words: `3, 4 and 7`. */
function listNumbers(items: readonly SetOutItem[]): string {
  const numbers = items.map(({ number }) => String(number));
  return numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

/** Which tolerances are those of a position zone, and who agreed to them; none where no box stands. */
export function layAgreedTolerances({ items }: PanelSetOut, width: number): readonly Block[] {
  const groups = new Map<number, SetOutItem[]>();
  for (const item of items)
    if (item.agreement !== null) groups.set(item.tolerance, [...(groups.get(item.tolerance) ?? []), item]);
  return [...groups].map(([within, members]) => {
    const { agreedBy, capacity, document, date } = members[0]!.agreement!;
    const text = `± ${within} along and across for no. ${listNumbers(members)} in place of the tolerance of the job: all of a connection may be off by that at once. Agreed by ${agreedBy}, ${capacity}: ${document}, ${date}.`;
    return layTextBlock(text, width, { size: TYPE.body, above: 1 });
  });
}
