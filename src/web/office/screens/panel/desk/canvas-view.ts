import { type Signal, signal } from '@preact/signals';
import type { Point } from '../../../../../engine/geometry/point.ts';
import { type Camera, type Extent, fitCamera, zoomCamera } from './camera.ts';

/** The window onto a drawing: its size and what is seen in it. Until somebody zooms or pans, all is seen at any size. */
export class CanvasView {
  readonly camera: Signal<Camera> = signal({ scale: 0.1, left: 0, top: 0 });
  #size = { width: 0, height: 0 };
  #fitted: { readonly camera: Camera; readonly extent: Extent } | null = null;

  resize(width: number, height: number, extent: Extent): void {
    const isFitted = this.#fitted === null || this.#fitted.camera === this.camera.peek();
    this.#size = { width, height };
    if (isFitted) this.fit(extent);
  }

  fit(extent: Extent): void {
    const { width, height } = this.#size;
    if (width === 0 || height === 0) return;
    const camera = fitCamera(extent, width, height);
    this.#fitted = { camera, extent };
    this.camera.value = camera;
  }

  /** About the middle of the window. */
  zoom(factor: number): void {
    const middle: Point = [this.#size.width / 2, this.#size.height / 2];
    this.camera.value = zoomCamera(this.camera.peek(), factor, middle);
  }
}
