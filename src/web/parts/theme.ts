import { effect, signal } from '@preact/signals';

/** Light or dark as the system has it, or as this person chose on this device. */
export type Theme = 'system' | 'light' | 'dark';

const KEPT = 'onepour-theme';

function readTheme(): Theme {
  const kept = localStorage.getItem(KEPT);
  return kept === 'light' || kept === 'dark' ? kept : 'system';
}

export const theme = signal<Theme>(readTheme());

/** Keeps the page in the chosen theme, and in the system's as that changes. */
export function followTheme(): void {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const show = () => {
    const isDark = theme.value === 'dark' || (theme.value === 'system' && dark.matches);
    document.documentElement.dataset.theme = isDark ? 'dark' : 'light';
  };
  dark.addEventListener('change', show);
  effect(() => {
    if (theme.value === 'system') localStorage.removeItem(KEPT);
    else localStorage.setItem(KEPT, theme.value);
    show();
  });
}
