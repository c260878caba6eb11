import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type {
  ConnectionSketch,
  SketchArea,
  SketchDistance,
  SketchInsert,
} from '../../../../drawing/sketch/connection-sketch.ts';
import { unitOf, writeValue } from '../../../parts/units.ts';
import styles from './plate-drawing.module.css';
import { labelPlate, layAction, layShare, NOTHING, type PlacedLabel } from './plate-labels.ts';
import { type ScreenView, viewExtent, writeHole, writeRing } from './plate-marks.ts';

const AREA_WORDS: Readonly<Record<SketchArea['kind'], string>> = {
  cone: 'cone in tension, on the face',
  splitting: 'splitting, on the face',
  edge: 'toward the edge in shear, on the side of the panel',
};

function Text({ label: { at, text, kind, anchor } }: { readonly label: PlacedLabel }) {
  const [x, y] = at;
  return (
    <text class={`${styles.text} ${kind === 'load' ? styles.loadText : ''}`} x={x} y={y} text-anchor={anchor}>
      {text}
    </text>
  );
}

function Distance({ view, distance: { from, to } }: { readonly view: ScreenView; readonly distance: SketchDistance }) {
  const [[x0, y0], [x1, y1]] = [view.put(from), view.put(to)];
  const size = Math.hypot(x1 - x0, y1 - y0);
  if (size < 1) return null;
  const [nx, ny] = [(-(y1 - y0) / size) * 5, ((x1 - x0) / size) * 5];
  return <path class={styles.dimension} d={`M${x0} ${y0}L${x1} ${y1}M${x1 - nx} ${y1 - ny}L${x1 + nx} ${y1 + ny}`} />;
}

function Insert({
  view,
  insert,
  largest,
}: {
  readonly view: ScreenView;
  readonly insert: SketchInsert;
  readonly largest: number;
}) {
  const [x, y] = view.put(insert.at);
  const arrow = layShare(view, insert, largest);
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
    </>
  );
}

/** What the plate puts on the panel: the shear as an arrow, tension as a tip that comes toward one, pressure as its feathers. */
function Action({ view, sketch }: { readonly view: ScreenView; readonly sketch: ConnectionSketch }) {
  const { action } = sketch;
  if (action === null) return null;
  const [x, y] = view.put(action.at);
  const arrow = layAction(view, sketch);
  return (
    <>
      {arrow !== null && (
        <>
          <path class={styles.load} d={arrow.line} />
          <path class={styles.tip} d={arrow.head} />
        </>
      )}
      {Math.abs(action.N) > NOTHING && (
        <>
          <circle class={styles.hole} cx={x} cy={y} r="9" />
          <circle class={styles.share} cx={x} cy={y} r="9" />
          {action.N > 0 ? (
            <circle class={styles.tip} cx={x} cy={y} r="3.5" />
          ) : (
            <path class={styles.share} d={`M${x - 6} ${y - 6}l12 12M${x + 6} ${y - 6}l-12 12`} />
          )}
        </>
      )}
    </>
  );
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
            <Insert key={insert.id} view={view} insert={insert} largest={sketch.largestShear} />
          ))}
          <Action view={view} sketch={sketch} />
          {labelPlate(view, sketch).map((label, i) => (
            <Text key={i} label={label} />
          ))}
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
      <li>Concrete that counts, each where it is used most in any combination:</li>
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
