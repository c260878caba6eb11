import { memo } from 'preact/compat';
import { findRise } from '../../drawing/boxes.ts';
import type { Drawing, Fill, Mark, TextMark } from '../../drawing/drawing.ts';
import { hatchArea } from '../../drawing/hatch.ts';
import { HATCH_SPACING, PENS, type PenName } from '../../drawing/pens.ts';
import { circleRing, expandSymbols, findSweep } from '../../drawing/place.ts';
import { composeText, measureText } from '../../drawing/text-size.ts';
import styles from './drawing-view.module.css';

type Pair = readonly [number, number];

const round = (value: number) => Math.round(value * 1000) / 1000;

function penProps(name: PenName | null) {
  if (name === null) return {};
  const { width, dash, tone } = PENS[name];
  return {
    class: tone === 'grey' ? styles.greyLine : styles.line,
    'stroke-width': width,
    ...(dash.length === 0 ? {} : { 'stroke-dasharray': dash.join(' ') }),
  };
}

const FILL_CLASSES: Readonly<Record<Fill, string>> = {
  none: 'noFill',
  hatch: 'noFill',
  black: 'blackFill',
  grey: 'greyFill',
  light: 'lightFill',
  white: 'whiteFill',
};

function fillProps(pen: PenName | null, fill: Fill) {
  const { class: line, ...rest } = { class: '', ...penProps(pen) };
  return { ...rest, class: `${line} ${styles[FILL_CLASSES[fill]]}` };
}

/** SVG has y downward: heights are measured from the top of the drawing. */
function writePath(points: readonly Pair[], isClosed: boolean, top: number): string {
  return `M${points.map(([x, y]) => `${round(x)} ${round(top - y)}`).join('L')}${isClosed ? 'Z' : ''}`;
}

function Hatching({ rings, top }: { readonly rings: readonly (readonly Pair[])[]; readonly top: number }) {
  const d = hatchArea(rings, HATCH_SPACING)
    .map((piece) => writePath(piece, false, top))
    .join('');
  return d === '' ? null : <path d={d} {...penProps('hair')} />;
}

function Text({ mark, top }: { readonly mark: TextMark; readonly top: number }) {
  const rise = findRise(mark);
  const x = round(mark.at[0] - rise * Math.sin(mark.turn));
  const y = round(top - mark.at[1] - rise * Math.cos(mark.turn));
  return (
    <text
      class={mark.tone === 'grey' ? styles.greyText : styles.text}
      x={x}
      y={y}
      font-size={mark.size}
      font-weight={mark.weight === 'bold' ? 700 : 400}
      text-anchor={mark.align}
      transform={mark.turn === 0 ? undefined : `rotate(${round((-mark.turn * 180) / Math.PI)} ${x} ${y})`}
      textLength={round(measureText(mark.text, mark.size, mark.weight))}
      lengthAdjust="spacingAndGlyphs"
    >
      {composeText(mark.text)}
    </text>
  );
}

function MarkView({ mark, top }: { readonly mark: Mark; readonly top: number }) {
  switch (mark.kind) {
    case 'line':
      return <path d={writePath([mark.from, mark.to], false, top)} {...penProps(mark.pen)} />;
    case 'polyline':
      return <path d={writePath(mark.points, mark.isClosed, top)} {...penProps(mark.pen)} />;
    case 'area':
      return (
        <>
          {mark.fill === 'hatch' && <Hatching rings={mark.rings} top={top} />}
          <path
            d={mark.rings.map((ring) => writePath(ring, true, top)).join('')}
            fill-rule="evenodd"
            {...fillProps(mark.pen, mark.fill)}
          />
        </>
      );
    case 'circle':
      return (
        <>
          {mark.fill === 'hatch' && <Hatching rings={[circleRing(mark.at, mark.radius)]} top={top} />}
          <circle cx={mark.at[0]} cy={top - mark.at[1]} r={mark.radius} {...fillProps(mark.pen, mark.fill)} />
        </>
      );
    case 'arc': {
      const end = (angle: number): Pair => [
        mark.at[0] + mark.radius * Math.cos(angle),
        mark.at[1] + mark.radius * Math.sin(angle),
      ];
      const [x, y] = end(mark.to);
      const isLong = findSweep(mark) > Math.PI ? 1 : 0;
      const d = `${writePath([end(mark.from)], false, top)}A${mark.radius} ${mark.radius} 0 ${isLong} 0 ${round(x)} ${round(top - y)}`;
      return <path d={d} {...penProps(mark.pen)} />;
    }
    case 'text':
      return <Text mark={mark} top={top} />;
    case 'symbol':
      return (
        <>
          {expandSymbols([mark]).map((inner, k) => (
            <MarkView key={k} mark={inner} top={top} />
          ))}
        </>
      );
  }
}

export interface DrawingViewProps {
  readonly drawing: Drawing;
  /** What it shows, for readers aloud. */
  readonly title: string;
  /** On white paper in every theme, as it will be printed. */
  readonly isPaper?: boolean;
}

/** A drawing of the one drawing model on the screen, as wide as the place that it stands in. */
export const DrawingView = memo(function DrawingView({ drawing, title, isPaper = false }: DrawingViewProps) {
  return (
    <svg
      class={`${styles.drawing} ${isPaper ? styles.paper : ''}`}
      viewBox={`0 0 ${round(drawing.width)} ${round(drawing.height)}`}
      role="img"
      aria-label={title}
    >
      {drawing.marks.map((mark, k) => (
        <MarkView key={k} mark={mark} top={drawing.height} />
      ))}
    </svg>
  );
});
