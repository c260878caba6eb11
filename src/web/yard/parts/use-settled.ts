import { useEffect, useState } from 'preact/hooks';

/** A glove that bounces taps twice within this time; nobody reads what a key means now in less [ms]. */
const MOMENT = 350;

/**
 * Whether what a key means has stood long enough to be meant by a tap: where it changes under the finger, a tap that bounces is not a second answer.
 * @param meaning what the key does now; null: it always does the same, and is ready at once
 */
export function useSettled(meaning: string | null): boolean {
  const [settled, setSettled] = useState<string | null>(null);
  useEffect(() => {
    if (meaning === null) return;
    const timer = setTimeout(() => setSettled(meaning), MOMENT);
    return () => clearTimeout(timer);
  }, [meaning]);
  return meaning === null || settled === meaning;
}
