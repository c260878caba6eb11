import { useEffect, useState } from 'preact/hooks';

/** Between two looks at the clock [ms]. */
const APART = 20_000;

/** The moment [ms since 1970], anew every 20 s: for what is told as an age. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), APART);
    return () => clearInterval(timer);
  }, []);
  return now;
}
