import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { BigKey } from './big-key.tsx';
import styles from './scroll-keys.module.css';

/** Of what is seen, so much goes on: the last lines stay in sight. */
const SHARE = 0.8;

/** The part of the screen beside the keys, which is what moves. */
function contentOf(key: HTMLElement | null): HTMLElement | null {
  const content = key?.closest('main')?.firstElementChild;
  return content instanceof HTMLElement ? content : null;
}

/** Pages through what is longer than the screen, for wet gloves that do not swipe; nothing where all is in sight. To be put first among the keys of a frame. */
export function ScrollKeys() {
  const ref = useRef<HTMLDivElement>(null);
  const [isLong, setIsLong] = useState(false);
  useLayoutEffect(() => {
    const content = contentOf(ref.current);
    if (content === null) return;
    const measure = () => setIsLong(content.scrollHeight > content.clientHeight + 1);
    const changes = new MutationObserver(measure);
    changes.observe(content, { childList: true, subtree: true, characterData: true });
    const sizes = new ResizeObserver(measure);
    sizes.observe(content);
    measure();
    return () => {
      changes.disconnect();
      sizes.disconnect();
    };
  }, []);
  const go = (way: 1 | -1) => {
    const content = contentOf(ref.current);
    content?.scrollBy({ top: way * SHARE * content.clientHeight });
  };
  return (
    <div ref={ref} class={styles.pair} hidden={!isLong} data-scroll-keys="">
      <BigKey kind="quiet" onPress={() => go(-1)}>
        Back up
      </BigKey>
      <BigKey kind="quiet" onPress={() => go(1)}>
        Further
      </BigKey>
    </div>
  );
}
