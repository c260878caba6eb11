import type { ComponentChildren } from 'preact';
import { createPortal } from 'preact/compat';
import { useEffect } from 'preact/hooks';
import styles from './print-sheets.module.css';

/** Paper on which sheets are printed: `a3` and `a4` lie on their long side with the sheet's own margin, `standing` is A4 upright. */
export type PrintPaper = 'a3' | 'a4' | 'standing';

/** Prints sheets in place of the screen, then goes. Put on the screen when it shall print. */
export function PrintSheets({
  paper,
  sheets,
  onDone,
}: {
  readonly paper: PrintPaper;
  readonly sheets: readonly ComponentChildren[];
  readonly onDone: () => void;
}) {
  useEffect(() => {
    const { dataset } = document.documentElement;
    dataset.prints = 'sheets';
    addEventListener('afterprint', onDone, { once: true });
    // Drawn first: the printer gets what is there.
    const frame = requestAnimationFrame(() => print());
    return () => {
      delete dataset.prints;
      cancelAnimationFrame(frame);
      removeEventListener('afterprint', onDone);
    };
  }, []);
  return createPortal(
    <div class={`${styles.sheets} ${styles[paper]}`}>
      {sheets.map((sheet, k) => (
        <div key={k} class={styles.sheet}>
          {sheet}
        </div>
      ))}
    </div>,
    document.body,
  );
}
