import type { BodyOf } from '../../../records/record.ts';
import type { RecordDevice } from '../../records/record-device.ts';
import { shrinkPhoto } from './shrink-photo.ts';

export type PhotoBody = BodyOf<'photo'>;

/**
 * Shrinks a picture and keeps it on this device; gives what its record says. Small enough to be kept first: a record never names a photo that is
 * nowhere.
 * @throws Error where there is no room
 */
export async function keepPicture(
  device: Pick<RecordDevice, 'keepPhoto'>,
  picture: ImageBitmap,
  of: PhotoBody['of'],
  note: string | null = null,
): Promise<PhotoBody> {
  const { blob, width, height } = await shrinkPhoto(picture);
  const photo = await device.keepPhoto({ blob, width, height });
  return { photo, type: 'image/jpeg', bytes: blob.size, width, height, of, note };
}
