import type { CodeReader } from './read-picture.ts';

/** What some browsers have for reading codes; the types of pages do not name it. */
interface BarcodeDetectorType {
  new (options: {
    readonly formats: readonly string[];
  }): {
    detect(source: CanvasImageSource): Promise<readonly { readonly rawValue: string }[]>;
  };
  getSupportedFormats(): Promise<readonly string[]>;
}

/** Reads the code that a camera shows at this moment; null: none is seen. */
export type FrameReader = (video: HTMLVideoElement) => Promise<string | null>;

/** The browser's own reader; null where it has none, or none for these codes. */
async function findOwnReader(): Promise<FrameReader | null> {
  const { BarcodeDetector: Detector } = globalThis as { readonly BarcodeDetector?: BarcodeDetectorType };
  if (Detector === undefined) return null;
  const formats = await Detector.getSupportedFormats().catch((): readonly string[] => []);
  if (!formats.includes('qr_code')) return null;
  const detector = new Detector({ formats: ['qr_code'] });
  return async (video) => (await detector.detect(video))[0]?.rawValue ?? null;
}

/** Longer sides of a frame are made that small: what is held before the camera fills it [px]. */
const FRAME_SIDE = 960;

function readWith(read: CodeReader): FrameReader {
  const canvas = document.createElement('canvas');
  return async (video) => {
    const { videoWidth, videoHeight } = video;
    if (videoWidth === 0) return null;
    const scale = Math.min(1, FRAME_SIDE / Math.max(videoWidth, videoHeight));
    canvas.width = Math.round(videoWidth * scale);
    canvas.height = Math.round(videoHeight * scale);
    const context = canvas.getContext('2d', { willReadFrequently: true });
    if (context === null) return null;
    context.drawImage(video, 0, 0, canvas.width, canvas.height);
    return read(context.getImageData(0, 0, canvas.width, canvas.height));
  };
}

/** The browser's own reader of codes, which takes the least of the battery; else the one that the program brings. */
export async function findFrameReader(loadReader: () => Promise<CodeReader>): Promise<FrameReader> {
  return (await findOwnReader()) ?? readWith(await loadReader());
}
