import { elementScroll, observeElementOffset, observeElementRect, Virtualizer } from '@tanstack/virtual-core';
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useReducer, useRef, useState } from 'preact/hooks';

/** Rows beyond those in sight, each way: so many are there already when the list is scrolled. */
const BEYOND = 6;

export interface VirtualRowsOptions {
  readonly count: number;
  /** All rows are equally high [px]. */
  readonly rowHeight: number;
  /** What scrolls; the list lies somewhere in it. */
  readonly scroller: () => HTMLElement | null;
  readonly list: RefObject<HTMLElement>;
}

/** The rows that are drawn, and the room of the others before and after them [px]. */
export interface VirtualRows {
  readonly rows: readonly number[];
  readonly before: number;
  readonly after: number;
  /** Brings a row into sight. */
  readonly show: (row: number) => void;
}

/** Draws of a long list only what is in sight, and all of it for the printer. */
export function useVirtualRows({ count, rowHeight, scroller, list }: VirtualRowsOptions): VirtualRows {
  const [, redraw] = useReducer<number, void>((tick) => tick + 1, 0);
  const [margin, setMargin] = useState(0);
  const isPrinted = usePrinting();
  const virtual = useRef<Virtualizer<HTMLElement, HTMLElement> | null>(null);
  const options = {
    count,
    estimateSize: () => rowHeight,
    getScrollElement: scroller,
    observeElementRect,
    observeElementOffset,
    scrollToFn: elementScroll,
    overscan: BEYOND,
    scrollMargin: margin,
    onChange: () => redraw(),
  };
  virtual.current ??= new Virtualizer(options);
  const virtualizer = virtual.current;
  virtualizer.setOptions(options);
  useLayoutEffect(() => virtualizer._didMount(), []);
  useLayoutEffect(() => virtualizer._willUpdate());
  useLayoutEffect(() => virtualizer.measure(), [rowHeight]);
  useLayoutEffect(() => watchMargin(scroller(), list.current, setMargin), [rowHeight]);
  if (isPrinted) return { rows: Array.from({ length: count }, (_, k) => k), before: 0, after: 0, show: () => {} };
  const rows = virtualizer.getVirtualItems().map(({ index }) => index);
  const first = rows[0] ?? 0;
  const last = rows.at(-1) ?? -1;
  return {
    rows,
    before: first * rowHeight,
    after: Math.max(0, count - 1 - last) * rowHeight,
    show: (row) => virtualizer.scrollToIndex(row, { align: 'auto' }),
  };
}

/** Tells how far below the start of the scrolled ground a list begins [px], now and when what stands above it becomes higher or lower. */
function watchMargin(
  outer: HTMLElement | null,
  inner: HTMLElement | null,
  tellMargin: (margin: number) => void,
): (() => void) | undefined {
  if (outer === null || inner === null) return undefined;
  const measure = () =>
    tellMargin(Math.round(inner.getBoundingClientRect().top - outer.getBoundingClientRect().top + outer.scrollTop));
  measure();
  const observer = new ResizeObserver(measure);
  observer.observe(outer);
  // All that lies in the same ground, on the way from the list to what scrolls.
  for (let at: HTMLElement | null = inner; at !== null && at !== outer; at = at.parentElement) {
    observer.observe(at);
    for (const beside of at.parentElement?.children ?? []) observer.observe(beside);
  }
  return () => observer.disconnect();
}

/** Whether the page is being printed at this moment. */
function usePrinting(): boolean {
  const [isPrinted, setPrinted] = useState(false);
  useEffect(() => {
    const begin = () => setPrinted(true);
    const end = () => setPrinted(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  return isPrinted;
}
