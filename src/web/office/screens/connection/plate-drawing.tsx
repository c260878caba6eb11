import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type {
  ConnectionSketch,
  SketchArea,
  SketchDistance,
  SketchInsert,
} from '../../../../drawing/sketch/connection-sketch.ts';
import { unitOf, writeQuantity, writeValue } from '../../../parts/units.ts';
import styles from './plate-drawing.module.css';
import { layArrow, type ScreenView, viewExtent, writeHole, writeRing } from './plate-marks.ts';

/** Longest and shortest arrow of an action, and of its share on one insert [px]. */
const ARROW = { most: 78, least: 26, share: 34 };
/** Inserts nearer to each other than this leave no room for figures [px]; how the plate shares the load says them. */
const ROOM = 70;
/** A force below this says nothing [N]. */
const NOTHING = 0.5;

const AREA_WORDS: Readonly<Record<SketchArea['kind'], string>> = {
  cone: 'cone in tension, on the face',
  splitting: 'splitting, on the face',
  edge: 'toward the edge in shear, on the side of the panel',
};

function Text({
  at,
  text,
  kind,
  anchor = 'middle',
}: {
  readonly at: readonly [number, number];
  readonly text: string;
  readonly kind?: 'loadText' | 'faint';
  readonly anchor?: 'start' | 'middle' | 'end';
}) {
  const [x, y] = at;
  return (
    <text class={`${styles.text} ${kind === undefined ? '' : styles[kind]}`} x={x} y={y} text-anchor={anchor}>
      {text}
    </text>
  );
}

function Distance({
  view,
  distance: { from, to, length },
}: {
  readonly view: ScreenView;
  readonly distance: SketchDistance;
}) {
  const [[x0, y0], [x1, y1]] = [view.put(from), view.put(to)];
  const size = Math.hypot(x1 - x0, y1 - y0);
  if (size < 1) return null;
  const [nx, ny] = [(-(y1 - y0) / size) * 5, ((x1 - x0) / size) * 5];
  // Near the edge, where nothing else is written.
  const middle = [x0 + (x1 - x0) * 0.62 + Math.abs(nx) * 0.4, y0 + (y1 - y0) * 0.62 - Math.abs(ny) - 1] as const;
  return (
    <>
      <path class={styles.dimension} d={`M${x0} ${y0}L${x1} ${y1}M${x1 - nx} ${y1 - ny}L${x1 + nx} ${y1 + ny}`} />
      <Text
        at={middle}
        text={writeQuantity('length', length)}
        anchor={Math.abs(nx) > Math.abs(ny) ? 'start' : 'middle'}
      />
    </>
  );
}

function Insert({
  view,
  insert,
  largest,
  hasRoom,
}: {
  readonly view: ScreenView;
  readonly insert: SketchInsert;
  readonly largest: number;
  /** For its force in figures. */
  readonly hasRoom: boolean;
}) {
  const [x, y] = view.put(insert.at);
  const { load } = insert;
  const shear = load === null ? 0 : Math.hypot(load.Vx, load.Vy);
  const arrow =
    load === null || shear < NOTHING
      ? null
      : layArrow([x, y], [load.Vx, load.Vy], 14 + (ARROW.share * shear) / Math.max(largest, shear), 7);
  const body = (insert.body / 2) * view.scale;
  return (
    <>
      <circle class={styles.foot} cx={x} cy={y} r={(insert.foot / 2) * view.scale} />
      <circle class={styles.body} cx={x} cy={y} r={Math.max(2.5, body * 0.55)} />
      {arrow !== null && (
        <>
          <path class={styles.share} d={arrow.line} />
          <path class={styles.tip} d={arrow.head} />
        </>
      )}
      <Text at={[x - body - 5, y - 6]} text={insert.id} anchor="end" />
      {hasRoom && load !== null && load.N > NOTHING && (
        <Text
          at={[x + body + 5, y + 16]}
          text={`N ${writeValue('force', load.N / 1000)}`}
          kind="loadText"
          anchor="start"
        />
      )}
    </>
  );
}

/** What the plate puts on the panel: the shear as an arrow, tension as a tip that comes toward one, pressure as its feathers. */
function Action({ view, sketch }: { readonly view: ScreenView; readonly sketch: ConnectionSketch }) {
  const { action, largestShear } = sketch;
  if (action === null) return null;
  const [x, y] = view.put(action.at);
  const { N, Vx, Vy } = action;
  const shear = Math.hypot(Vx, Vy);
  // Above a level arrow, where no insert of its row has its own figures.
  const isLevel = Math.abs(Vy) < Math.abs(Vx) / 2;
  const arrow =
    shear < NOTHING ? null : layArrow([x, y], [Vx, Vy], Math.max(ARROW.least, (ARROW.most * shear) / largestShear), 13);
  return (
    <>
      {arrow !== null && (
        <>
          <path class={styles.load} d={arrow.line} />
          <path class={styles.tip} d={arrow.head} />
          <Text
            at={isLevel ? [(x + arrow.tip[0]) / 2, y - 13] : [arrow.tip[0] + 6, arrow.tip[1] + 14]}
            text={`V ${writeQuantity('force', shear / 1000)}`}
            kind="loadText"
            anchor={isLevel ? 'middle' : 'start'}
          />
        </>
      )}
      {Math.abs(N) > NOTHING && (
        <>
          <circle class={styles.hole} cx={x} cy={y} r="9" />
          <circle class={styles.share} cx={x} cy={y} r="9" />
          {N > 0 ? (
            <circle class={styles.tip} cx={x} cy={y} r="3.5" />
          ) : (
            <path class={styles.share} d={`M${x - 6} ${y - 6}l12 12M${x + 6} ${y - 6}l-12 12`} />
          )}
          <Text
            at={[x, y + 26]}
            text={`N ${writeQuantity('force', Math.abs(N) / 1000)} ${N > 0 ? 'out' : 'in'}`}
            kind="loadText"
            anchor="middle"
          />
        </>
      )}
    </>
  );
}

/** The least distance between two inserts; without a second one there is room enough. */
function findSpacing(inserts: readonly SketchInsert[]): number {
  const distances = inserts.flatMap(({ at: [x, y] }, i) =>
    inserts.slice(i + 1).map((other) => Math.hypot(other.at[0] - x, other.at[1] - y)),
  );
  return Math.min(...distances);
}

/** The size of an element as it is on the screen [px]. */
function useSize() {
  const ref = useRef<HTMLDivElement>(null);
  const size = useSignal({ width: 0, height: 0 });
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      size.value = { width: element.clientWidth, height: element.clientHeight };
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, size };
}

/** Plate, holes, inserts, loads and the concrete that counts, to scale, seen from the front of the face. */
export function PlateDrawing({ sketch, title }: { readonly sketch: ConnectionSketch; readonly title: string }) {
  const { ref, size } = useSize();
  const { width, height } = size.value;
  const view = width === 0 ? null : viewExtent(sketch.extent, size.value);
  const { outline, openings, plate, attachment } = sketch;
  const hasRoom = view !== null && findSpacing(sketch.inserts) * view.scale > ROOM;
  return (
    <div class={styles.frame} ref={ref}>
      {view !== null && (
        <svg class={styles.svg} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
          {outline !== null && (
            <path
              class={styles.concrete}
              fill-rule="evenodd"
              d={[outline, ...openings].map((ring) => writeRing(view, ring)).join('')}
            />
          )}
          {sketch.areas.map(({ kind, rings }, i) => (
            <path
              key={i}
              class={styles[kind]}
              fill-rule="evenodd"
              d={rings.map((ring) => writeRing(view, ring)).join('')}
            />
          ))}
          {sketch.others.map(({ id, at, body }) => {
            const [x, y] = view.put(at);
            return <circle key={id} class={styles.other} cx={x} cy={y} r={(body / 2) * view.scale} />;
          })}
          {plate !== null && <path class={styles.plate} d={writeRing(view, plate)} />}
          {attachment !== null && <path class={styles.attachment} d={writeRing(view, attachment)} />}
          {sketch.holes.map((hole) => (
            <path key={hole.id} class={styles.hole} d={writeHole(view, hole)} />
          ))}
          {sketch.distances.map((distance, i) => (
            <Distance key={i} view={view} distance={distance} />
          ))}
          {sketch.inserts.map((insert) => (
            <Insert key={insert.id} view={view} insert={insert} largest={sketch.largestShear} hasRoom={hasRoom} />
          ))}
          <Action view={view} sketch={sketch} />
        </svg>
      )}
    </div>
  );
}

/** What the shaded concrete is, with the area that the check takes. */
export function AreaLegend({ areas }: { readonly areas: readonly SketchArea[] }) {
  if (areas.length === 0) return null;
  return (
    <ul class={styles.legend} aria-label="Concrete that counts">
      {areas.map(({ kind, area }, i) => (
        <li key={i}>
          <svg class={styles.swatch} aria-hidden="true">
            <rect x="1" y="1" width="23" height="11" class={styles[kind]} />
          </svg>
          {AREA_WORDS[kind]}: {writeValue('area', area)} {unitOf('area')}
        </li>
      ))}
    </ul>
  );
}
