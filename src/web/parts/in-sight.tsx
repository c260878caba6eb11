import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';

/** How far from what is seen something is drawn already. */
const NEAR = '300px';

/** Whether an element has come near what is seen, once and for all. */
export function useSeen(box: RefObject<Element>): boolean {
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        setSeen(true);
        watch.disconnect();
      },
      { rootMargin: NEAR },
    );
    watch.observe(element);
    // The printer sees all.
    const show = () => setSeen(true);
    addEventListener('beforeprint', show, { once: true });
    return () => {
      watch.disconnect();
      removeEventListener('beforeprint', show);
    };
  }, []);
  return isSeen;
}

/** Keeps room for a drawing and draws it when it comes near what is seen. */
export function InSight({
  aspect,
  children,
}: {
  /** Width over height of the room. */
  readonly aspect: number;
  readonly children: () => ComponentChildren;
}) {
  const box = useRef<HTMLDivElement>(null);
  const isSeen = useSeen(box);
  useLayoutEffect(() => {
    box.current?.style.setProperty('aspect-ratio', isSeen ? 'auto' : String(aspect));
  }, [isSeen, aspect]);
  return <div ref={box}>{isSeen ? children() : null}</div>;
}
