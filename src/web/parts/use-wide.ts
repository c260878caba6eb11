import { useEffect, useState } from 'preact/hooks';

/** From here on things stand beside each other; style sheets say 60rem. */
const WIDE = '(min-width: 60.01rem)';

/** Whether the screen is wide enough for rows of many columns. */
export function useWide(): boolean {
  const [isWide, setWide] = useState(() => matchMedia(WIDE).matches);
  useEffect(() => {
    const query = matchMedia(WIDE);
    const tell = () => setWide(query.matches);
    query.addEventListener('change', tell);
    return () => query.removeEventListener('change', tell);
  }, []);
  return isWide;
}
