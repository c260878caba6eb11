import type { Signal } from '@preact/signals';
import { type ComponentChildren, createContext } from 'preact';
import { useContext, useLayoutEffect } from 'preact/hooks';

/** Where a screen draws the keys of what it asks for; null in it while it asks nothing. */
export const KeysSlot = createContext<Signal<ComponentChildren> | null>(null);

/** Keys of a part of a screen that asks for something: they stand where the keys of every screen stand, and take the place of them. */
export function FrameKeys({ children }: { readonly children: ComponentChildren }) {
  const slot = useContext(KeysSlot);
  if (slot === null) throw new Error('keys without a frame; expected inside a screen of the yard');
  useLayoutEffect(() => {
    slot.value = children;
  });
  useLayoutEffect(
    () => () => {
      slot.value = null;
    },
    [slot],
  );
  return null;
}
