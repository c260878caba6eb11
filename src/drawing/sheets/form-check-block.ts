import type { FormCheck } from '../../assess/set-out/set-out.ts';
import type { Mark } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawBox, drawTextLines } from '../marks.ts';
import { PENCIL_BOX } from '../table.ts';
import { CAP_HEIGHT, LINE_STEP, wrapText } from '../text-size.ts';
import { TYPE } from './paper.ts';

interface Wish {
  readonly words: string;
  readonly nominal: string;
}

const BOX_WIDTH = 22;
const GAP = 3;

/** What is to be measured of a form, with its nominal value. */
function listWishes(form: FormCheck): readonly Wish[] {
  const whole: Wish[] = [
    { words: 'length', nominal: String(form.length) },
    { words: 'width', nominal: String(form.width) },
  ];
  const lines = [...form.sides, ...form.diagonals].map(
    ({ from, to, length }): Wish => ({ words: `${from} to ${to}`, nominal: String(length) }),
  );
  const depths = [1, 2, 3, 4].map((k): Wish => ({ words: `depth ${k}`, nominal: String(form.depth) }));
  return [...whole, ...lines, ...depths];
}

/** Boxes for the measures of the form, a cell each: words, nominal value, box. As many beside each other as fit the width [mm]. */
export function layFormCheck(form: FormCheck, width: number): readonly Block[] {
  const wishes = listWishes(form);
  const across = Math.max(1, Math.floor((width + GAP) / 62));
  const cell = (width + GAP) / across - GAP;
  const rows: Block[] = [];
  for (let i = 0; i < wishes.length; i += across) {
    const marks: Mark[] = [];
    let height = PENCIL_BOX;
    for (const [k, { words, nominal }] of wishes.slice(i, i + across).entries()) {
      const x = k * (cell + GAP);
      const lines = wrapText(words, TYPE.body, 'plain', cell - BOX_WIDTH - 2);
      const textHeight = (lines.length * LINE_STEP + CAP_HEIGHT) * TYPE.body + 1.5;
      height = Math.max(height, textHeight);
      marks.push(
        ...drawTextLines([x, -1], lines, TYPE.body, { baseline: 'top' }),
        ...drawTextLines([x, -1 - lines.length * LINE_STEP * TYPE.body], [nominal], TYPE.large, {
          baseline: 'top',
          weight: 'bold',
        }),
        drawBox('frame', [x + cell - BOX_WIDTH, -PENCIL_BOX], BOX_WIDTH, PENCIL_BOX, 'thin'),
      );
    }
    rows.push({ name: 'a row of the form check', height: height + 2.5, marks });
  }
  return rows;
}
