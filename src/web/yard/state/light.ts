import { effect, signal } from '@preact/signals';

/** The light that one stands in: `sun` is black on white with the boldest lines, whatever the system has. */
export type Light = 'shed' | 'sun' | 'night';

const KEPT = 'onepour-light';

function readLight(): Light {
  const kept = localStorage.getItem(KEPT);
  return kept === 'sun' || kept === 'night' ? kept : 'shed';
}

export const light = signal<Light>(readLight());

/** Keeps the page in the chosen light; the tokens follow `data-theme` and `data-light`. */
export function followLight(): void {
  effect(() => {
    localStorage.setItem(KEPT, light.value);
    document.documentElement.dataset.theme = light.value === 'night' ? 'dark' : 'light';
    document.documentElement.dataset.light = light.value;
  });
}
