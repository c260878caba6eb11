/** Pixels in which a code is looked for. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/** Reads the text of the code in a picture; null: none is seen. */
export type CodeReader = (pixels: Pixels) => string | null;

/** Part of a picture, in px of it. */
export interface Cut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** How many px of the picture become one of the cut. */
  readonly scale: number;
}

/** A code is looked for at no more px than these on the longer side: more takes longer and reads no better. */
const LONGEST = 1400;
/** Neighbouring cuts share so much of their side that a code across a border stands whole in one of them. */
const SHARED = 0.4;

/**
 * Where to look in a photograph of a sheet, the whole first: a code of 34 mm on A3 is a twelfth of its width, so that a picture made small shows
 * modules of less than two px. Then halves and thirds of each side, each as sharp as the picture is.
 */
export function planCuts(width: number, height: number): readonly Cut[] {
  return [1, 2, 3].flatMap((count) => {
    const w = count === 1 ? width : width / (count - (count - 1) * SHARED);
    const h = count === 1 ? height : height / (count - (count - 1) * SHARED);
    const scale = Math.max(1, Math.max(w, h) / LONGEST);
    // A picture that is small enough already is not looked through in parts.
    if (count > 1 && Math.max(width, height) <= LONGEST) return [];
    return Array.from({ length: count * count }, (_, i) => ({
      x: Math.round((i % count) * w * (1 - SHARED)),
      y: Math.round(Math.floor(i / count) * h * (1 - SHARED)),
      width: Math.floor(w),
      height: Math.floor(h),
      scale,
    }));
  });
}

/** Reads the code of a photograph of a sheet; null: none is seen in any part of it. */
export async function readPicture(picture: ImageBitmap, read: CodeReader): Promise<string | null> {
  const canvas = document.createElement('canvas');
  for (const { x, y, width, height, scale } of planCuts(picture.width, picture.height)) {
    canvas.width = Math.floor(width / scale);
    canvas.height = Math.floor(height / scale);
    const context = canvas.getContext('2d', { willReadFrequently: true });
    if (context === null) throw new Error('this browser gives no place to draw a picture in');
    context.drawImage(picture, x, y, width, height, 0, 0, canvas.width, canvas.height);
    const text = read(context.getImageData(0, 0, canvas.width, canvas.height));
    if (text !== null) return text;
    // The page stays answerable between two parts.
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  return null;
}
