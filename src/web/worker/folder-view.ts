import { DrawingError } from '../../drawing/drawing-error.ts';
import { describeFolder, makeFolder } from '../../drawing/sheets/make-folder.ts';
import { PAPERS, type Paper } from '../../drawing/sheets/paper.ts';
import { drawQr } from '../../files/qr/qr-marks.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { fingerprintJob } from '../../job/fingerprint.ts';
import type { PdfOrder } from '../pdf-worker/pdf-writer.ts';

/** What a pour folder is asked for. */
export interface FolderQuestion {
  readonly pour: string;
  readonly paper: Paper['name'];
  /** The state of the job that changes are told since; null: none. */
  readonly earlier: JobFile | null;
  /** Id of the job in the office. */
  readonly job: string;
}

/** A folder as it will be printed; or why something of it cannot be drawn. */
export type FolderView =
  | {
      readonly kind: 'made';
      readonly order: PdfOrder;
      readonly isReady: boolean;
      readonly findings: readonly string[];
      /** Of the state of the job that it was made of, as its sheets show it. */
      readonly fingerprint: string;
    }
  | { readonly kind: 'not drawn'; readonly why: string };

/**
 * Makes the folder of a pour.
 * @throws Error where the job has no such pour
 */
export function viewFolder(file: JobFile, { pour, paper, earlier, job }: FolderQuestion): FolderView {
  const fingerprint = fingerprintJob(file);
  try {
    const { pages, isReady, findings } = makeFolder(file, pour, {
      paper: PAPERS[paper],
      earlier,
      fingerprint,
      job,
      drawCode: (text, size) => drawQr([0, 0], size, text),
    });
    return { kind: 'made', order: { pages, details: describeFolder(file, pour) }, isReady, findings, fingerprint };
  } catch (error) {
    if (error instanceof DrawingError) return { kind: 'not drawn', why: error.message };
    throw error;
  }
}
