import type { PdfOrder, PdfWriter } from '../pdf-worker/pdf-writer.ts';
import { shareWorker } from './open-worker.ts';

const askWriter = shareWorker<PdfWriter>('onepour-pdf-worker');

/**
 * Writes drawings as one PDF in a worker, which is opened at the first call.
 * Rejects when the worker or its fonts do not come, or as `writePdf` does.
 */
export function writePdfInWorker(order: PdfOrder): Promise<Uint8Array> {
  return askWriter((writer) => writer.write(order));
}
