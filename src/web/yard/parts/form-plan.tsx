import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Point } from '../../../engine/geometry/point.ts';
import styles from './form-plan.module.css';
import { InsertSign } from './insert-sign.tsx';
import { findTapeDirection, findTapped, layPlan, type PlanLayout, type PlanRoom } from './plan-layout.ts';

/** How an insert stands, as the plan shows it: by colour, by the shape of its field and by a sign. */
export type SpotLook = 'open' | 'again' | 'good' | 'out' | 'accepted' | 'conflict' | 'other';

/** Beside the number, on a field of 16; empty: the number alone. */
const SIGNS: Readonly<Record<SpotLook, string>> = {
  open: '',
  again: 'M13 5a6 6 0 1 0 1 4M13 1v4h-4',
  good: 'M2 8l4 5L14 3',
  out: 'M3 3l10 10M13 3L3 13',
  accepted: 'M8 2l6 6-6 6-6-6z',
  conflict: 'M1 8h14M11 4l4 4-4 4M5 4L1 8l4 4',
  other: '',
};

/** Said aloud. */
const LOOK_WORDS: Readonly<Record<SpotLook, string>> = {
  open: 'open',
  again: 'open again',
  good: 'good',
  out: 'out',
  accepted: 'accepted',
  conflict: 'conflict',
  other: 'not in this stage',
};

/** A way that an insert must go. */
export interface PlanArrow {
  readonly number: number;
  readonly axis: 'x' | 'y';
  /** Found less designed [mm]; it must go the other way. */
  readonly deviation: number;
}

export interface FormPlanProps {
  readonly setOut: PanelSetOut;
  readonly lookOf: (item: SetOutItem) => SpotLook;
  /** Numbers under the hand. */
  readonly lit?: readonly number[];
  readonly arrows?: readonly PlanArrow[];
  /** A tape along the form, in the plan's coordinates [mm]; twice the same point: a depth is taken there. */
  readonly tape?: readonly [Point, Point] | null;
  /** Without it the marks stand alone: numbers are not wanted. */
  readonly hasNumbers?: boolean;
  /** What is seen; a hard panel is no form and has no datum. */
  readonly of?: 'form' | 'panel';
  /** A tap at or near an insert. */
  readonly onPick?: (number: number) => void;
  /** From a keyboard, which points at nothing: show the numbers as keys. */
  readonly onList?: () => void;
}

/** Long enough to be seen from arm's length, whatever it stands for [px]. */
const ARROW = 58;

function write(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}

function Sides({
  layout,
  setOut,
  hasDatum,
}: {
  readonly layout: PlanLayout;
  readonly setOut: PanelSetOut;
  readonly hasDatum: boolean;
}) {
  const { extent, datum, datumOut } = layout;
  const { words } = setOut;
  const middle = [extent.x + extent.width / 2, extent.y + extent.height / 2] as const;
  const [left, right] = [extent.x - 34, extent.x + extent.width + 34];
  // The datum's own word stands beside its mark: the name of a side does not run into it.
  const mark: readonly Point[] = [
    datum,
    [datum[0] + 22 * datumOut[0], datum[1]],
    [datum[0] + 22 * datumOut[0], datum[1] + 22 * datumOut[1]],
    [datum[0], datum[1] + 22 * datumOut[1]],
  ];
  return (
    <>
      <text class={styles.side} x={middle[0]} y={extent.y + extent.height + 34}>
        {words.railA}
      </text>
      <text class={styles.side} x={middle[0]} y={extent.y - 22}>
        {words.railB}
      </text>
      <text class={styles.side} x={left} y={middle[1]} transform={`rotate(-90 ${left} ${middle[1]})`}>
        {words.start}
      </text>
      <text class={styles.side} x={right} y={middle[1]} transform={`rotate(-90 ${right} ${middle[1]})`}>
        {words.finish}
      </text>
      {hasDatum && (
        <>
          <path class={styles.datum} d={write(mark)} />
          <text
            class={styles.datumWord}
            x={datum[0] - 4 * datumOut[0]}
            y={datum[1] + (datumOut[1] > 0 ? 22 : -8)}
            text-anchor={datumOut[0] < 0 ? 'start' : 'end'}
          >
            DATUM
          </text>
        </>
      )}
    </>
  );
}

function Arrow({ from, way, words }: { readonly from: Point; readonly way: Point; readonly words: string }) {
  const [dx, dy] = way;
  const start: Point = [from[0] + 18 * dx, from[1] + 18 * dy];
  const tip: Point = [start[0] + ARROW * dx, start[1] + ARROW * dy];
  const wing = (side: 1 | -1): Point => [tip[0] - 16 * dx + side * 11 * -dy, tip[1] - 16 * dy + side * 11 * dx];
  return (
    <g class={styles.arrow}>
      <path d={`M${start.join(' ')}L${tip.join(' ')}M${wing(1).join(' ')}L${tip.join(' ')}L${wing(-1).join(' ')}`} />
      <text
        x={tip[0] + 14 * dx}
        y={tip[1] + 14 * dy + 6}
        text-anchor={dx > 0.5 ? 'start' : dx < -0.5 ? 'end' : 'middle'}
      >
        {words}
      </text>
    </g>
  );
}

/** The tape that is laid next. */
function Tape({ from, to }: { readonly from: Point; readonly to: Point }) {
  if (from[0] === to[0] && from[1] === to[1]) return <circle class={styles.ring} cx={from[0]} cy={from[1]} r={16} />;
  return (
    <g class={styles.tape}>
      <path d={`M${from.join(' ')}L${to.join(' ')}`} />
      {[from, to].map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r={9} />
      ))}
    </g>
  );
}

interface PlanKeyProps {
  readonly onPick: FormPlanProps['onPick'] | undefined;
  readonly onList: FormPlanProps['onList'] | undefined;
  readonly layout: PlanLayout;
  readonly told: string;
  readonly children: ComponentChildren;
}

/** The picture, under one key where its inserts can be tapped. */
function PlanKey({ layout, told, onPick, onList, children }: PlanKeyProps) {
  const { width, height } = layout.room;
  return (
    <>
      <svg class={styles.plan} width={width} height={height} role="img" aria-label={told}>
        {children}
      </svg>
      {onPick !== undefined && (
        <button
          type="button"
          class={styles.plan}
          aria-label="Tap an insert in the plan to go to it"
          onClick={({ currentTarget, clientX, clientY, detail }) => {
            if (detail === 0) return onList?.();
            const box = currentTarget.getBoundingClientRect();
            const tapped = findTapped(layout, [clientX - box.left, clientY - box.top]);
            if (tapped !== null) onPick(tapped.number);
          }}
        />
      )}
    </>
  );
}

/** The form from above with its numbered inserts, as it lies, in the yard's own words. It keeps its place from step to step. */
export function FormPlan({
  setOut,
  lookOf,
  lit = [],
  arrows = [],
  tape = null,
  hasNumbers = true,
  of = 'form',
  onPick,
  onList,
}: FormPlanProps) {
  const ref = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<PlanRoom | null>(null);
  useLayoutEffect(() => {
    const place = ref.current;
    if (place === null) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry === undefined) return;
      const { width, height } = entry.contentRect;
      setRoom({ width, height });
    });
    watch.observe(place);
    return () => watch.disconnect();
  }, []);
  const layout = useMemo(() => (room === null ? null : layPlan(setOut, room)), [setOut, room]);
  const told = setOut.items.map((item) => `${item.number} ${LOOK_WORDS[lookOf(item)]}`).join(', ');
  return (
    <div ref={ref} class={styles.place}>
      {layout !== null && (
        <PlanKey
          layout={layout}
          told={`${of === 'form' ? 'The form from above' : 'The panel as you look at it'}: ${told}`}
          onPick={onPick}
          onList={onList}
        >
          <path class={styles.panel} fill-rule="evenodd" d={[layout.outline, ...layout.openings].map(write).join('')} />
          {layout.spots.map(
            ({ item, leader }) =>
              hasNumbers &&
              leader !== null && (
                <path key={item.number} class={styles.leader} d={`M${leader[0].join(' ')}L${leader[1].join(' ')}`} />
              ),
          )}
          <Sides layout={layout} setOut={setOut} hasDatum={of === 'form'} />
          {layout.spots.map(
            ({ item, at }) =>
              lit.includes(item.number) && (
                <circle key={item.number} class={styles.halo} cx={at[0]} cy={at[1]} r={layout.radius + 10} />
              ),
          )}
          {layout.spots.map(({ item, at }) => (
            <g key={item.number} class={lit.includes(item.number) ? styles.isLit : styles[lookOf(item)]}>
              <InsertSign item={item} at={at} radius={layout.radius} />
            </g>
          ))}
          {layout.spots.map(({ item, chip }) => {
            if (chip === null || !hasNumbers) return null;
            const look = lookOf(item);
            const isLit = lit.includes(item.number);
            return (
              <g key={item.number} class={`${styles.chip} ${styles[look]} ${isLit ? styles.isLit : ''}`}>
                <rect {...chip} rx={look === 'good' || look === 'accepted' ? 15 : 2} />
                <text x={chip.x + (SIGNS[look] === '' ? chip.width / 2 : chip.width / 2 - 9)} y={chip.y + 22}>
                  {item.number}
                </text>
                {SIGNS[look] !== '' && (
                  <path
                    class={styles.sign}
                    d={SIGNS[look]}
                    transform={`translate(${chip.x + chip.width - 22} ${chip.y + 7})`}
                  />
                )}
              </g>
            );
          })}
          {tape !== null && <Tape from={layout.put(tape[0])} to={layout.put(tape[1])} />}
          {arrows.map(({ number, axis, deviation }) => {
            const spot = layout.spots.find(({ item }) => item.number === number);
            const way = spot === undefined ? null : findTapeDirection(setOut, spot.item, axis);
            if (spot === undefined || way === null || deviation === 0) return null;
            const back: Point = deviation > 0 ? [-way[0], -way[1]] : way;
            return (
              <Arrow
                key={`${number} ${axis}`}
                from={spot.at}
                way={back}
                words={`${Math.abs(Math.round(deviation))} mm`}
              />
            );
          })}
        </PlanKey>
      )}
    </div>
  );
}
