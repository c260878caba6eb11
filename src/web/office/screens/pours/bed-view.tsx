import { useSignal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { BedPiece, BedPlan } from '../../../../assess/set-out/plan-bed.ts';
import type { Point } from '../../../../engine/geometry/point.ts';
import { units, writeQuantity, writeValue } from '../../../parts/units.ts';
import styles from './bed-view.module.css';

/** Steps of a drag and of an arrow key, with Shift, in mm: whole ones of the person's units. */
const STEPS = { metric: { drag: 50, key: 100, far: 1000 }, US: { drag: 50.8, key: 101.6, far: 1016 } } as const;
/** Height of letters [px]. */
const LETTERS = 13;
const LEAST_LETTERS = 11;
/** A grid line every so much along the bed [mm]. */
const GRID = { metric: 5000, US: 6096 } as const;

export interface BedViewProps {
  readonly plan: BedPlan;
  /** Null: only to look at. */
  readonly onMove: {
    /** While it is under the hand. */
    readonly preview: (index: number, along: number | null) => void;
    readonly drop: (index: number, along: number) => void;
  } | null;
}

const path = (ring: readonly Point[], top: number) => `M${ring.map(([x, y]) => `${x} ${top - y}`).join('L')}Z`;

/** A bed from above, to scale: its start to the left, rail A below; what is cast on it that day. */
export function BedView({ plan, onMove }: BedViewProps) {
  const { bed, pieces, others } = plan;
  const drawing = useRef<SVGSVGElement>(null);
  const width = useSignal(1000);
  const held = useSignal<{ readonly index: number; readonly from: number; readonly x: number } | null>(null);
  useLayoutEffect(() => {
    const box = drawing.current;
    if (box === null) return;
    const follow = new ResizeObserver(() => {
      width.value = box.clientWidth;
    });
    follow.observe(box);
    return () => follow.disconnect();
  }, []);
  const perPx = bed.length_mm / Math.max(1, width.value);
  const letters = LETTERS * perPx;
  const small = LEAST_LETTERS * perPx;
  const foot = small * 1.7;
  const steps = STEPS[units.value];

  const keep = ({ length }: BedPiece, along: number, step: number) =>
    Math.min(Math.max(0, bed.length_mm - length), Math.max(0, Math.round(along / step) * step));
  const grid = Array.from(
    { length: Math.floor(bed.length_mm / GRID[units.value]) + 1 },
    (_, k) => k * GRID[units.value],
  );

  const drag = (piece: BedPiece, along: number) => {
    if (onMove === null) return {};
    return {
      onPointerDown: (event: PointerEvent & { readonly currentTarget: Element }) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        held.value = { index: piece.index, from: along, x: event.clientX };
      },
      onPointerMove: (event: PointerEvent) => {
        const at = held.value;
        if (at?.index !== piece.index) return;
        onMove.preview(piece.index, keep(piece, at.from + (event.clientX - at.x) * perPx, steps.drag));
      },
      onPointerUp: () => {
        if (held.value?.index !== piece.index) return;
        const isMoved = along !== held.value.from;
        held.value = null;
        if (isMoved) onMove.drop(piece.index, along);
        else onMove.preview(piece.index, null);
      },
      onPointerCancel: () => {
        held.value = null;
        onMove.preview(piece.index, null);
      },
      onKeyDown: (event: KeyboardEvent) => {
        const way = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
        if (way === 0) return;
        event.preventDefault();
        const step = event.shiftKey ? steps.far : steps.key;
        onMove.drop(piece.index, keep(piece, along + way * step, step === steps.far ? steps.key : step));
      },
    };
  };

  const draw = (piece: BedPiece, isOther: boolean) => {
    const along = piece.piece.along_mm;
    if (along === null) return null;
    const isHeld = !isOther && held.value?.index === piece.index;
    const name = `${piece.piece.panel} no. ${piece.piece.serial}`;
    const canMove = onMove !== null && !isOther;
    // A mark that has no room in its panel stands on it.
    const isLow = piece.width < letters * 1.8;
    return (
      <g
        key={`${piece.pour} ${piece.index}`}
        class={`${styles.piece} ${isOther ? styles.other : ''} ${canMove ? styles.movable : ''} ${isHeld ? styles.held : ''}`}
        transform={`translate(${along} 0)`}
        {...(canMove
          ? {
              role: 'slider',
              tabIndex: 0,
              'aria-label': `${name}, place along the bed`,
              'aria-valuemin': 0,
              'aria-valuemax': Math.round(bed.length_mm - piece.length),
              'aria-valuenow': Math.round(along),
              'aria-valuetext': `${writeQuantity('length', along)} from ${bed.names.start}`,
              ...drag(piece, along),
            }
          : {})}
      >
        <path
          class={styles.panel}
          fill-rule="evenodd"
          d={[piece.outline, ...piece.openings].map((ring) => path(ring, bed.width_mm)).join('')}
        />
        <text
          class={`${styles.mark} ${isLow ? styles.onBed : ''}`}
          // Near its corner: openings are mostly in the middle.
          x={letters * 0.6}
          y={bed.width_mm - (isLow ? piece.width + small * 0.4 : letters * 0.6)}
          font-size={letters}
        >
          {piece.piece.panel}
          {piece.length > letters * 5 && piece.openings.length === 0 && (
            <tspan font-weight="400" font-size={small}>
              {` no. ${piece.piece.serial}`}
            </tspan>
          )}
        </text>
        {isHeld && (
          <text class={styles.place} x={0} y={bed.width_mm + small * 1.25} font-size={letters}>
            {writeQuantity('length', along)}
          </text>
        )}
      </g>
    );
  };

  return (
    <div class={styles.frame}>
      <div class={styles.sides}>
        <span>{bed.names.start}</span>
        <span>{bed.names.railB}</span>
        <span>{bed.names.finish}</span>
      </div>
      <svg
        ref={drawing}
        class={styles.drawing}
        viewBox={`0 0 ${bed.length_mm} ${bed.width_mm + foot}`}
        role={onMove === null ? 'img' : 'group'}
        aria-label={`${bed.name} from above, ${writeQuantity('length', bed.length_mm)} long: ${pieces
          .map(({ piece }) => piece.panel)
          .join(', ')}`}
      >
        <rect class={styles.bed} x="0" y="0" width={bed.length_mm} height={bed.width_mm} />
        {grid.map((at) => (
          <g key={at}>
            <line class={styles.grid} x1={at} y1={0} x2={at} y2={bed.width_mm + foot * 0.3} />
            {held.value === null && (
              <text
                class={styles.figure}
                x={at}
                y={bed.width_mm + small * 1.3}
                font-size={small}
                text-anchor={at === 0 ? 'start' : at > bed.length_mm - 4 * small ? 'end' : 'middle'}
              >
                {at === 0 ? writeQuantity('length', at) : writeValue('length', at)}
              </text>
            )}
          </g>
        ))}
        {others.map((piece) => draw(piece, true))}
        {pieces.map((piece) => draw(piece, false))}
      </svg>
      <div class={styles.sides}>
        <span>{bed.names.railA}, from above; where a panel lies across the bed is not planned</span>
      </div>
    </div>
  );
}
