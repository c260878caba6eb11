import { useSignal } from '@preact/signals';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { keepPicture } from '../../photo/keep-photo.ts';
import { PhotoKey } from '../../photo/photo-key.tsx';

/** A photo of an insert that is not as it must be. */
export function InsertPhotoKey({ piece, item }: { readonly piece: OpenPiece; readonly item: SetOutItem }) {
  const { device } = useYard();
  const told = useSignal('what it looks like');
  const keep = async (picture: ImageBitmap) => {
    const body = await keepPicture(device, picture, 'insert');
    await device.write({
      kind: 'photo',
      body,
      piece: piece.id,
      item: item.castIn.key,
      checkKey: piece.plan.keys.get(item.castIn.key) ?? null,
      measuredAt: null,
      measuredBy: null,
    });
    told.value = 'kept on this device';
  };
  return (
    <PhotoKey more={told.value} onPicture={keep} onFault={(words) => (told.value = words)}>
      Photo
    </PhotoKey>
  );
}
