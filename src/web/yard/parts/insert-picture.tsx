import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import { drawAssemblyBare } from '../../../drawing/assembly-section.ts';
import { drawInsertSmall } from '../../../drawing/insert-section.ts';
import { describeType } from '../../../drawing/sheets/words.ts';
import { DrawingView } from '../../parts/drawing-view.tsx';
import styles from './insert-picture.module.css';
import { LiftingWord } from './lifting-word.tsx';

/** An insert as it must stand in the form, to scale, the mould face below; whether it may be lifted by is said with it. */
export function InsertPicture({ setOut, item }: { readonly setOut: PanelSetOut; readonly item: SetOutItem }) {
  const assembly = setOut.assemblies.find(({ letter }) => letter === item.assembly);
  const drawing =
    assembly !== undefined
      ? drawAssemblyBare(assembly, setOut.bed, setOut.faceDown)
      : item.item !== null
        ? drawInsertSmall(item.item)
        : null;
  return (
    <figure class={styles.picture}>
      <figcaption>
        <LiftingWord role={item.castIn.role} />
      </figcaption>
      {drawing === null ? (
        <p class={styles.none}>No picture: {item.castIn.description ?? item.castIn.role}</p>
      ) : (
        <div class={styles.drawing}>
          <DrawingView drawing={drawing} title={`${describeType(item)} as it stands in the form, mould face below`} />
        </div>
      )}
    </figure>
  );
}
