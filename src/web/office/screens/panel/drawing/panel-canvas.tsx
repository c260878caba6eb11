import { type Signal, useComputed, useSignalEffect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { placeDrawn } from '../../../../../drawing/screen/panel-sight.ts';
import { toScreen } from '../desk/camera.ts';
import type { CanvasView } from '../desk/canvas-view.ts';
import { listDimensions } from '../desk/dimensions.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import type { Placing } from '../place/placing.ts';
import type { CanvasHand } from './canvas-hand.ts';
import type { CanvasKeys } from './canvas-keys.ts';
import styles from './drawing.module.css';
import { GroundLayer } from './ground-layer.tsx';
import { ItemNode } from './item-node.tsx';
import { ConcreteLayer, DimensionsLayer, GuidesLayer } from './over-layers.tsx';
import { ConnectionLabel, PlateNode } from './plate-node.tsx';

/** Radius of symbols [px], as large as the spacing of a usual group leaves room for. */
const SYMBOL = { least: 3.5, most: 8, of: 45 };
/** A length that must be this long on the screen for numbers to have room beside symbols [mm, px]. */
const NEAR = { length: 150, px: 30 };

export interface PanelCanvasProps {
  readonly desk: PanelDesk;
  readonly view: CanvasView;
  readonly hand: CanvasHand;
  readonly keys: CanvasKeys;
  readonly placing: Signal<Placing | null>;
}

/** What of a printed page the drawing has, as panel-screen.module.css gives it: across A4 within common margins, 11 cm high [px at 96 a inch]. */
const PAPER = { width: 680, height: 415 };

/** The panel to scale, under the hand. */
export function PanelCanvas({ desk, view, hand, keys, placing }: PanelCanvasProps) {
  const svg = useRef<SVGSVGElement>(null);
  const { camera } = view;
  useLayoutEffect(() => {
    const box = svg.current;
    if (box === null) return;
    // A drawing that is worked on by keyboard is a stop for it.
    box.tabIndex = 0;
    const followScreen = () => view.resize(box.clientWidth, box.clientHeight, desk.sight.peek().box);
    const followPaper = () => {
      const { width, height } = PAPER;
      view.resize(width, height, desk.sight.peek().box);
      view.fit(desk.sight.peek().box);
    };
    const observer = new ResizeObserver(followScreen);
    observer.observe(box);
    addEventListener('beforeprint', followPaper);
    addEventListener('afterprint', followScreen);
    return () => {
      observer.disconnect();
      removeEventListener('beforeprint', followPaper);
      removeEventListener('afterprint', followScreen);
    };
  }, [desk]);
  useSignalEffect(() => view.fit(desk.sight.value.box));
  useSignalEffect(() => {
    const { scale } = camera.value;
    const symbol = Math.min(SYMBOL.most, Math.max(SYMBOL.least, SYMBOL.of * scale));
    svg.current?.style.setProperty('--mm', String(1 / scale));
    svg.current?.style.setProperty('--symbol', String(symbol));
    svg.current?.classList.toggle(styles.far ?? '', scale * NEAR.length < NEAR.px);
  });
  const matrix = useComputed(() => {
    const { scale, left, top } = camera.value;
    return `matrix(${scale} 0 0 ${-scale} ${left} ${top})`;
  });
  const name = useComputed(() => {
    const { kind } = desk.sight.value;
    return `Panel ${desk.mark}, ${kind === 'form' ? 'in the form, seen from above' : 'as drawn'}`;
  });
  // Which item is in the hand, for readers aloud.
  useSignalEffect(() => {
    const [first] = desk.selection.value.ids;
    if (first === undefined) svg.current?.removeAttribute('aria-activedescendant');
    else svg.current?.setAttribute('aria-activedescendant', `insert-${first}`);
  });
  const dimensions = useComputed(() => listDimensions(desk));
  const marks = desk.index.value.connectionsOf(desk.mark).map(({ mark }) => mark);
  return (
    <div class={styles.frame}>
      <svg
        ref={svg}
        class={`${styles.canvas} ${placing.value === null ? '' : styles.placing}`}
        role="application"
        aria-label={name}
        aria-describedby="canvas-help"
        onPointerEnter={hand.enter}
        onPointerDown={hand.down}
        onPointerMove={hand.move}
        onPointerUp={hand.up}
        onPointerCancel={hand.lost}
        onPointerLeave={hand.leave}
        onWheel={hand.wheel}
        onKeyDown={keys.down}
        onKeyUp={keys.up}
      >
        <g transform={matrix}>
          <GroundLayer desk={desk} />
          <ConcreteLayer desk={desk} />
          {marks.map((mark) => (
            <PlateNode key={mark} desk={desk} mark={mark} />
          ))}
          <GuidesLayer desk={desk} />
          {desk.items.value.map((item) => (
            <ItemNode key={item.castIn.key} desk={desk} item={item} />
          ))}
          <DimensionsLayer dimensions={dimensions} view={view} />
          {marks.map((mark) => (
            <ConnectionLabel key={mark} desk={desk} mark={mark} dimensions={dimensions} />
          ))}
          <Cross hand={hand} desk={desk} />
        </g>
      </svg>
      <p id="canvas-help" class="aloud">
        Arrow keys take the first connection. Tab goes to the next one, arrow keys move it, Enter opens it, Delete
        removes it, Escape lets it go. The table of inserts below holds the same as fields.
      </p>
      <p class="aloud" aria-live="polite">
        {desk.spoken}
      </p>
      <Bubble desk={desk} view={view} />
    </div>
  );
}

/** Lines through the place under the pointer while something is being placed. */
function Cross({ hand, desk }: { readonly hand: CanvasHand; readonly desk: PanelDesk }) {
  const d = useComputed(() => {
    const at = hand.hover.value;
    if (at === null) return '';
    const { minX, minY, maxX, maxY } = desk.sight.value.box;
    return `M${minX} ${at[1]}H${maxX}M${at[0]} ${minY}V${maxY}`;
  });
  return <path class={styles.cross} d={d} />;
}

/** Why something cannot stay where it is held, or was not done, where it happened. */
function Bubble({ desk, view }: { readonly desk: PanelDesk; readonly view: CanvasView }) {
  const said = useComputed(() => {
    const refusal = desk.refusal.value;
    if (refusal !== null) return refusal;
    const held = desk.held.value;
    const [first] = held?.parts.castIns ?? [];
    if (held === null || held.misplaced === null || first === undefined) return null;
    const { toView } = desk.sight.value;
    const at = toScreen(view.camera.value, toView(placeDrawn(desk.live.value.panel, first)));
    return { text: held.misplaced, at };
  });
  if (said.value === null) return null;
  const { text, at } = said.value;
  return (
    <p class={styles.bubble} role="alert" style={at === null ? {} : { '--x': `${at[0]}px`, '--y': `${at[1]}px` }}>
      {text}
    </p>
  );
}
