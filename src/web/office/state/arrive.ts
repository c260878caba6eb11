import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useLocation, useRouter } from 'wouter-preact';
import { nameScreen, writeTitle } from './name-screen.ts';

/** So long a screen that one comes back to may take until it has its height again [ms]. */
const PATIENCE = 1000;
/** How far each screen was scrolled when it was left, by its address; empty on the first screen of a page. */
const left = new Map<string, number>();

/**
 * What is due on each screen that a person comes to: the title of the page tells it, the focus goes to its beginning, and it stands at its top, or
 * where it was left for the one who goes back to it.
 *
 * @param job what the job is called; null outside of one
 * @returns the name of the screen
 */
export function useArrival(main: RefObject<HTMLElement>, job: string | null): string {
  const [location] = useLocation();
  const { parser } = useRouter();
  const name = nameScreen(parser, location);
  const isLink = useRef(false);
  const title = writeTitle(name, job);
  useEffect(() => {
    document.title = title;
  }, [title]);
  useEffect(() => {
    // Told by the routes themselves before they draw the other screen; of a way back one hears only afterwards.
    const note = () => {
      isLink.current = true;
    };
    addEventListener('pushState', note);
    return () => removeEventListener('pushState', note);
  }, []);
  useLayoutEffect(() => {
    const place = main.current;
    if (place === null) return;
    const wanted = isLink.current ? 0 : (left.get(location) ?? 0);
    isLink.current = false;
    // What the screen itself has put the focus on stays so; a page that was just loaded begins where every page does.
    if (left.size > 0 && !place.contains(document.activeElement)) place.focus({ preventScroll: true });
    place.scrollTop = wanted;
    // A script that is still read, rows that are drawn as they come into sight: the room is there a while later.
    const until = performance.now() + PATIENCE;
    const again = () => {
      place.scrollTop = wanted;
      if (place.scrollTop < wanted && performance.now() < until) frame.at = requestAnimationFrame(again);
    };
    const frame = { at: requestAnimationFrame(again) };
    const note = () => left.set(location, place.scrollTop);
    left.set(location, wanted);
    place.addEventListener('scroll', note, { passive: true });
    return () => {
      cancelAnimationFrame(frame.at);
      place.removeEventListener('scroll', note);
    };
  }, [location]);
  return name;
}
