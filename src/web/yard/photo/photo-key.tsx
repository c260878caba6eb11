import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { BigKey, type KeyKind } from '../parts/big-key.tsx';
import { openPicture } from './shrink-photo.ts';

export interface PhotoKeyProps {
  readonly children: ComponentChildren;
  readonly more?: ComponentChildren;
  readonly kind?: KeyKind;
  readonly isDisabled?: boolean;
  /** Gets the picture upright; it is closed when this resolves. */
  readonly onPicture: (picture: ImageBitmap) => Promise<void>;
  /** Gets why there is none, in words. */
  readonly onFault: (words: string) => void;
}

/** A key that asks the device for a picture: its own camera on a tablet, a file at a desk. */
export function PhotoKey({ onPicture, onFault, ...key }: PhotoKeyProps) {
  const ref = useRef<HTMLInputElement>(null);
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    // The same file once more is a change too.
    input.value = '';
    if (file === undefined) return;
    try {
      const picture = await openPicture(file);
      try {
        await onPicture(picture);
      } finally {
        picture.close();
      }
    } catch (error) {
      onFault(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <BigKey {...key} onPress={() => ref.current?.click()} />
      <input
        ref={ref}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        tabIndex={-1}
        aria-hidden="true"
        onChange={({ currentTarget }) => void take(currentTarget)}
      />
    </>
  );
}
