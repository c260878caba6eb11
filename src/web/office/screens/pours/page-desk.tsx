import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Drawing, Mark, TextMark } from '../../../../drawing/drawing.ts';
import { drawArea, rectangle } from '../../../../drawing/marks.ts';
import { placeMarks } from '../../../../drawing/place.ts';
import { measureText } from '../../../../drawing/text-size.ts';
import type { PdfPage } from '../../../../files/pdf/write-pdf.ts';
import { Button } from '../../../parts/button.tsx';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { useSeen } from '../../../parts/in-sight.tsx';
import { useCommands } from '../../state/commands.ts';
import styles from './folder-view.module.css';

/** A line of text as the grey bar that it is from afar. */
function blur({ at, text, size, weight, align, baseline, turn }: TextMark): Mark {
  const length = measureText(text, size, weight);
  const height = 0.55 * size;
  const left = align === 'start' ? 0 : align === 'middle' ? -length / 2 : -length;
  const low = baseline === 'bottom' ? 0 : baseline === 'middle' ? -height / 2 : -height;
  const bar = drawArea('text', null, weight === 'bold' ? 'black' : 'grey', rectangle(left, low, length, height));
  return placeMarks([bar], { turn, move: at })[0] ?? bar;
}

/** How far something lies beyond the room that it is seen in, before its start (less than 0) or behind its end. */
function past(start: number, end: number, from: number, to: number): number {
  if (start < from) return start - from;
  return end > to ? end - to : 0;
}

/** A page as small as a stamp: texts as bars, without what nobody could see. */
function thin({ width, height, marks }: Drawing): Drawing {
  const seen = marks.filter((mark) => !('pen' in mark && mark.pen === 'hair'));
  return { width, height, marks: seen.map((mark) => (mark.kind === 'text' ? blur(mark) : mark)) };
}

/** A small page, drawn when it comes into sight. */
function Thumb({
  page,
  number,
  isHere,
  onPress,
}: {
  readonly page: PdfPage;
  readonly number: number;
  readonly isHere: boolean;
  readonly onPress: () => void;
}) {
  const box = useRef<HTMLButtonElement>(null);
  const isSeen = useSeen(box);
  useEffect(() => {
    const thumb = box.current;
    const row = thumb?.parentElement;
    if (!isHere || !thumb || !row) return;
    // The row alone: the screen stays where the person has it.
    const [at, around] = [thumb.getBoundingClientRect(), row.getBoundingClientRect()];
    row.scrollBy({
      left: past(at.left, at.right, around.left, around.right),
      top: past(at.top, at.bottom, around.top, around.bottom),
    });
  }, [isHere]);
  const small = useMemo(() => (isSeen ? thin(page.drawing) : null), [page.drawing, isSeen]);
  return (
    <button ref={box} type="button" class={styles.thumb} aria-current={isHere ? 'page' : undefined} onClick={onPress}>
      <span class={styles.paper}>
        {small !== null && <DrawingView drawing={small} title={`Page ${number}, small`} isPaper />}
      </span>
      <span>
        {number} {page.bookmark}
      </span>
    </button>
  );
}

/** Pages beside each other as stamps, and one of them large. */
export function PageDesk({ pages }: { readonly pages: readonly PdfPage[] }) {
  const at = useSignal(0);
  // A folder made anew may have fewer pages.
  const here = Math.min(at.value, Math.max(0, pages.length - 1));
  const page = pages[here];
  const show = (next: number) => {
    at.value = Math.min(Math.max(0, pages.length - 1), Math.max(0, next));
  };
  useCommands('Pages of the folder', [
    { name: 'Next page', key: 'PageDown', isAllowed: () => here < pages.length - 1, run: () => show(here + 1) },
    { name: 'Page before', key: 'PageUp', isAllowed: () => here > 0, run: () => show(here - 1) },
  ]);
  return (
    <div class={`${styles.desk} not-printed`}>
      <nav class={styles.small} aria-label="Pages">
        {pages.map((one, k) => (
          <Thumb key={`${k} ${one.bookmark}`} page={one} number={k + 1} isHere={k === here} onPress={() => show(k)} />
        ))}
      </nav>
      <figure class={styles.large}>
        <figcaption class={styles.turn}>
          <Button
            kind="quiet"
            name="Page before"
            shortcut="PageUp"
            isDisabled={here === 0}
            onPress={() => show(here - 1)}
          >
            ‹
          </Button>
          <span>{page === undefined ? '' : `${here + 1} of ${pages.length}: ${page.bookmark}`}</span>
          <Button
            kind="quiet"
            name="Next page"
            shortcut="PageDown"
            isDisabled={here >= pages.length - 1}
            onPress={() => show(here + 1)}
          >
            ›
          </Button>
        </figcaption>
        {page === undefined ? (
          <div class={styles.blank}>The sheets are drawn …</div>
        ) : (
          <DrawingView drawing={page.drawing} title={`Page ${here + 1}: ${page.bookmark}`} isPaper />
        )}
      </figure>
    </div>
  );
}
