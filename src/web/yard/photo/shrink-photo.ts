import type { PhotoDraft } from '../../records/record-device.ts';

/** The longer side of a photo that is kept [px]: a tape's millimetres can still be read on a photo of one insert. */
const LONGEST_SIDE = 1600;
const QUALITY = 0.8;

/** What a picture becomes when its longer side may have so many px; never larger than it is. */
function fitSize(width: number, height: number, longest: number): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/**
 * Opens a picture upright: cameras write which way up it was held (EXIF orientation) beside the picture.
 * @throws Error where the file is no picture that this browser can read
 */
export async function openPicture(file: Blob): Promise<ImageBitmap> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    const name = file instanceof File ? `"${file.name}"` : 'what the camera gave';
    throw new Error(`${name} is no picture that this browser can read; expected JPEG, PNG or WebP`);
  }
}

/** Makes a photo small enough to keep and to send: JPEG, upright, without what the camera wrote beside it (place, camera, owner). */
export async function shrinkPhoto(picture: ImageBitmap): Promise<PhotoDraft> {
  const { width, height } = fitSize(picture.width, picture.height, LONGEST_SIDE);
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser gives no place to draw a picture in');
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (blob === null) throw new Error('the picture could not be written as JPEG; take it once more');
  return { blob, width, height };
}
