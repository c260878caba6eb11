import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { OpenPiece } from '../../pieces/read-piece.ts';
import { KeysSlot } from '../parts/frame-keys.tsx';
import { ScrollKeys } from '../parts/scroll-keys.tsx';
import styles from './yard-frame.module.css';
import { type FrameHead, YardHead } from './yard-head.tsx';

export interface YardFrameProps extends FrameHead {
  readonly children: ComponentChildren;
  /** Keys of the screen: at the right edge in landscape, below in portrait, where a thumb is. What it asks for brings its own (`FrameKeys`). */
  readonly keys?: ComponentChildren;
  /** Fills the room exactly and does not scroll: a plan that keeps its place. */
  readonly isFixed?: boolean;
}

/** A screen of the yard: its head, what it shows, its keys. */
export function YardFrame({ children, keys, isFixed = false, ...head }: YardFrameProps) {
  const slot = useSignal<ComponentChildren>(null);
  const shown = slot.value ?? keys ?? null;
  return (
    <div class={styles.frame}>
      <YardHead {...head} />
      <main class={`${styles.body} ${shown === null ? styles.alone : ''}`}>
        <div class={`${styles.content} ${isFixed ? styles.fixed : ''}`} tabIndex={isFixed ? undefined : 0}>
          <KeysSlot.Provider value={slot}>{children}</KeysSlot.Provider>
        </div>
        {shown !== null && (
          <div class={styles.keys}>
            {!isFixed && <ScrollKeys />}
            {shown}
          </div>
        )}
      </main>
    </div>
  );
}

/** The head of a screen about a piece. */
export function headOfPiece({
  head: { mark, serial },
  context,
  report,
}: OpenPiece): Pick<FrameHead, 'title' | 'piece'> {
  return {
    title: `${mark} no. ${serial}`,
    piece: { mark, serial, letter: context.revision.letter, phase: report.phase },
  };
}
