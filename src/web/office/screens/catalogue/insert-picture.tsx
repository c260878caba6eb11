import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { Drawing } from '../../../../drawing/drawing.ts';
import { drawInsertDimensioned, drawInsertSmall } from '../../../../drawing/insert-section.ts';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { units, writeValue } from '../../../parts/units.ts';
import styles from './catalogue.module.css';

/** A millimetre of paper on the screen. */
const MM = '3.78px';

/** A drawing at its own size, or as wide as the place where that is narrower. */
function AtSize({ drawing, title }: { readonly drawing: Drawing; readonly title: string }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    box.current?.style.setProperty('width', `min(100%, calc(${drawing.width} * ${MM}))`);
  }, [drawing.width]);
  return (
    <div ref={box}>
      <DrawingView drawing={drawing} title={title} />
    </div>
  );
}

/** An insert at 1:5, hanging from the face of the concrete. */
export function SmallPicture({ item }: { readonly item: CatalogueItem }) {
  const drawing = useMemo(() => drawInsertSmall(item), [item]);
  return <AtSize drawing={drawing} title={`Section of ${item.id} at 1:5`} />;
}

/** An insert with its dimensions in the units of this person. */
export function LargePicture({ item }: { readonly item: CatalogueItem }) {
  const { drawing, scale } = useMemo(
    () => drawInsertDimensioned(item, (length) => writeValue('length', length)),
    [item, units.value],
  );
  return (
    <div class={styles.drawing}>
      <AtSize drawing={drawing} title={`Section of ${item.id} with dimensions`} />
      <p class={styles.scale}>
        Section at 1:{scale}, lengths in {units.value === 'metric' ? 'mm' : 'in'}; the face of the concrete above
      </p>
    </div>
  );
}
