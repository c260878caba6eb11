import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { findFrameReader } from './barcode-detector.ts';
import { loadCodeReader } from './code-reader.ts';
import styles from './scan.module.css';

/** Between two looks [ms]. */
const LOOKS_APART = 120;

/** Why there is no camera, in words that say what to do. */
function sayNoCamera(error: unknown): string {
  if (navigator.mediaDevices === undefined)
    return 'At this address the browser gives no camera: it wants HTTPS. Photograph the sheet instead, or name the piece.';
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError')
    return 'The camera was not allowed. Allow it in the settings of the browser for this address, photograph the sheet instead, or name the piece.';
  if (name === 'NotFoundError')
    return 'This device has no camera. Choose a photograph of the sheet, or name the piece.';
  return 'The camera does not start: another program may have it. Photograph the sheet instead, or name the piece.';
}

/** Opens the camera on the back, and reads until it is taken off the screen. */
async function watchCamera(video: HTMLVideoElement, signal: AbortSignal, onText: (text: string) => void) {
  const stream = await navigator.mediaDevices.getUserMedia({
    video: { facingMode: { ideal: 'environment' }, width: { ideal: 1920 }, height: { ideal: 1080 } },
  });
  const end = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  if (signal.aborted) return end();
  signal.addEventListener('abort', end, { once: true });
  video.srcObject = stream;
  await video.play();
  const read = await findFrameReader(loadCodeReader);
  while (!signal.aborted) {
    const text = await read(video);
    if (text !== null && !signal.aborted) onText(text);
    await new Promise((resolve) => setTimeout(resolve, LOOKS_APART));
  }
}

/** What the camera sees. `onText` is called at each look at a code, again and again while it is in sight. */
export function Camera({ onText }: { readonly onText: (text: string) => void }) {
  const ref = useRef<HTMLVideoElement>(null);
  const fault = useSignal<string | null>(null);
  const isOn = useSignal(false);
  const tell = useRef(onText);
  tell.current = onText;
  useEffect(() => {
    const video = ref.current;
    if (video === null) return;
    const ending = new AbortController();
    watchCamera(video, ending.signal, (text) => tell.current(text)).catch((error: unknown) => {
      if (!ending.signal.aborted) fault.value = sayNoCamera(error);
    });
    return () => ending.abort();
  }, []);
  return (
    <div class={styles.camera}>
      <video
        ref={ref}
        class={styles.video}
        aria-label="What the camera sees"
        playsInline
        muted
        onPlaying={() => (isOn.value = true)}
      />
      <svg viewBox="0 0 100 100" class={styles.corners} aria-hidden="true">
        <path d="M4 22V4h18M78 4h18v18M96 78v18H78M22 96H4V78" />
      </svg>
      {fault.value !== null ? (
        <p class={styles.noCamera} role="alert">
          {fault.value}
        </p>
      ) : (
        !isOn.value && <p class={styles.noCamera}>The camera is starting …</p>
      )}
    </div>
  );
}
