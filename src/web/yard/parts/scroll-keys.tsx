import { useRef } from 'preact/hooks';
import { BigKey, KeyRow } from './big-key.tsx';

/** Of what is seen, so much goes on: the last lines stay in sight. */
const SHARE = 0.8;

/** Pages through a long list, for wet gloves that do not swipe. To be put among the keys of a frame: the content beside them is what moves. */
export function ScrollKeys() {
  const ref = useRef<HTMLDivElement>(null);
  const go = (way: 1 | -1) => {
    const content = ref.current?.closest('main')?.firstElementChild;
    content?.scrollBy({ top: way * SHARE * content.clientHeight });
  };
  return (
    <div ref={ref}>
      <KeyRow>
        <BigKey onPress={() => go(-1)}>Back up</BigKey>
        <BigKey onPress={() => go(1)}>Further</BigKey>
      </KeyRow>
    </div>
  );
}
