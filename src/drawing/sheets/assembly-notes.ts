import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import { writeNumbers } from '../../assess/set-out/write-numbers.ts';
import { findHoldingMethod } from '../../engine/form/holding-methods.ts';
import type { Block } from '../flow.ts';
import { drawBox } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { TYPE } from './paper.ts';
import { layTextBlock } from './text-block.ts';

/** Side of a box to tick beside a line [mm]. */
const TICK = 4;

function layTickLine(words: string, width: number): Block {
  const block = layTextBlock(words, width - TICK - 3, { size: TYPE.body, above: 1, below: 1 });
  const height = Math.max(block.height, TICK + 1.4);
  return {
    ...block,
    height,
    marks: [
      drawBox('frame', [0, -TICK - 0.6], TICK, TICK, 'thin'),
      ...placeMarks(block.marks, { move: [TICK + 3, 0] }),
    ],
  };
}

/** Parts of one insert, or of a group, in words. */
function describeParts({ parts }: Assembly): string {
  if (parts.length === 0) return 'Parts: none listed for this way of holding.';
  const list = parts.map(({ part, count, per }) => `${count} × ${part.name}${per === 'group' ? ' for the group' : ''}`);
  return `Parts: ${list.join(', ')}.`;
}

/** How each section is built: parts, order of work, what is ticked before and after, and what is not known here. */
export function layAssemblyNotes(assemblies: readonly Assembly[], width: number): readonly Block[] {
  return assemblies.flatMap((assembly) => {
    const { letter, way, numbers, checkLines } = assembly;
    const { order, supplied } = findHoldingMethod(way.method);
    return [
      layTextBlock(`Section ${letter}: ${way.name}, for ${writeNumbers(numbers)}`, width, {
        size: TYPE.large,
        weight: 'bold',
        above: 3,
        staysWithNext: true,
      }),
      layTextBlock(`${describeParts(assembly)} Order: ${order.join('; then ')}.`, width, { size: TYPE.body }),
      ...checkLines.map((line) => layTickLine(line, width)),
      ...supplied.map(({ what, who }) =>
        layTextBlock(`Not known here: ${what}. Ask ${who}.`, width, { size: TYPE.body }),
      ),
    ];
  });
}
