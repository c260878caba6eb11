import type { PanelSetOut, SetOutItem } from '../../../src/assess/set-out/set-out.ts';

/** Reads a set-out as a person does who knows nothing of how it was made: printed whole numbers, the yard's words, which face is down. */

type Vector = readonly [number, number, number];

/** The plan place that printed numbers mean, from above, with its height above the bed [mm]. */
export function readBack(setOut: PanelSetOut, item: SetOutItem): Vector {
  const { words, form } = setOut;
  const [endWords, railWords] = setOut.datumWords.split(' / ');
  const fromEnd = (value: number) => (endWords === words.start ? value : form.length - value);
  const fromRail = (value: number) => (railWords === words.railA ? value : form.width - value);
  const { printed } = item;
  if (printed.kind === 'plan') {
    const height = item.place === 'mould face' ? 0 : form.depth;
    return [fromEnd(printed.x), fromRail(printed.y), height];
  }
  const { along, from, aboveBed } = printed;
  const measured = from === words.finish ? form.length - along : from === words.railB ? form.width - along : along;
  if (item.side === words.railA) return [measured, 0, aboveBed];
  if (item.side === words.railB) return [measured, form.width, aboveBed];
  if (item.side === words.start) return [0, measured, aboveBed];
  if (item.side === words.finish) return [form.length, measured, aboveBed];
  const corners = /^the side from corner (\d+) to corner (\d+)$/.exec(item.side ?? '');
  if (corners === null) throw new Error(`a side in words that nobody knows: ${item.side}`);
  const [a, b] = [Number(corners[1]) - 1, Number(corners[2]) - 1];
  const start = Number(/^corner (\d+)$/.exec(from)?.[1]) - 1;
  const [p, q] = [setOut.outline[start]!, setOut.outline[start === a ? b : a]!];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return [p[0] + ((q[0] - p[0]) * along) / length, p[1] + ((q[1] - p[1]) * along) / length, aboveBed];
}

/** The same place in the body of the panel as designed: x and y of the drawing, z out of the drawn face toward the reader. */
function designed({ panel }: PanelSetOut, { castIn }: SetOutItem): Vector {
  if (castIn.face !== 'edge')
    return [castIn.x_mm, castIn.y_mm, castIn.face === panel.drawnFace ? 0 : -panel.thickness_mm];
  const p = panel.outline_mm[castIn.edge!]!;
  const q = panel.outline_mm[(castIn.edge! + 1) % panel.outline_mm.length]!;
  const share = castIn.x_mm / Math.hypot(q[0] - p[0], q[1] - p[1]);
  const depth = panel.drawnFace === 'outside' ? castIn.y_mm : panel.thickness_mm - castIn.y_mm;
  return [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1]), -depth];
}

/**
 * The panel laid down as a body: turned over about its y axis if its drawn face goes down (a rotation, so that no hand is lost), then turned
 * on the bed, then pushed against both zero lines with its lower face on the bed.
 */
function layDown(setOut: PanelSetOut, points: readonly Vector[]): readonly Vector[] {
  const { panel } = setOut;
  const isOver = panel.drawnFace === panel.faceDown;
  const angle = (panel.inForm.turn_deg * Math.PI) / 180;
  const [c, s] = [Math.round(Math.cos(angle)), Math.round(Math.sin(angle))];
  const turn = ([x, y, z]: Vector): Vector => {
    const [u, v, w] = isOver ? [-x, y, -z] : [x, y, z];
    return [c * u - s * v, s * u + c * v, w];
  };
  const corners = panel.outline_mm.flatMap(([x, y]) => [turn([x, y, 0]), turn([x, y, -panel.thickness_mm])]);
  const least = [0, 1, 2].map((k) => Math.min(...corners.map((corner) => corner[k]!)));
  return points.map((point) => {
    const [x, y, z] = turn(point);
    return [x - least[0]!, y - least[1]!, z - least[2]!];
  });
}

/** The largest difference along an axis between what is printed and what was designed [mm]. Throws Error when nothing is printed to compare. */
export function worstError(setOut: PanelSetOut, read = readBack): number {
  if (setOut.items.length === 0) throw new Error(`panel ${setOut.panel.mark}: no item to read back`);
  const laid = layDown(
    setOut,
    setOut.items.map((item) => designed(setOut, item)),
  );
  return Math.max(
    ...setOut.items.map((item, i) => {
      const printed = read(setOut, item);
      return Math.max(...printed.map((value, k) => Math.abs(value - laid[i]![k]!)));
    }),
  );
}
