import type { ComputedAnswer } from '../../../assess/out-of-place/answer.ts';
import { makeJobOfAnswer } from '../../../assess/out-of-place/to-job.ts';
import { drawOutOfPlaceSheet } from '../../../drawing/sheets/out-of-place-sheet.ts';
import { sayOutOfPlacePage } from '../../../say/out-of-place-page.ts';
import { sayAssumption } from '../../../say/out-of-place-words.ts';
import type { SpokenUnits } from '../../../say/quantities.ts';
import { writerOf } from '../../../say/quantities.ts';
import type { JobHead } from '../../../wire/jobs.ts';
import { call } from '../../parts/call.ts';
import { download } from '../../parts/download.ts';
import { drawUuid } from '../../parts/draw-uuid.ts';
import { writePdfInWorker } from '../../parts/pdf-client.ts';

// Fetched when the first of it is asked for; kept for work without a connection.

/** Such as `M16 at 60 mm`, for names of files and jobs. */
function nameAnswer({ filled }: ComputedAnswer, units: SpokenUnits): string {
  return `${filled.thread.name} at ${writerOf(units).length(filled.nearest)}`;
}

/** Today as it is written in documents. */
function writeToday(): string {
  return new Date().toISOString().slice(0, 10);
}

/**
 * Gives the person the page of an answer as a PDF.
 * Rejects where the writer of PDFs does not come, or the answer does not go onto one page.
 */
export async function givePdf(answer: ComputedAnswer, units: SpokenUnits): Promise<void> {
  const page = drawOutOfPlaceSheet(sayOutOfPlacePage(answer, units), answer.filled);
  const name = nameAnswer(answer, units);
  const bytes = await writePdfInWorker({
    pages: [{ drawing: page, bookmark: null }],
    details: {
      title: `Insert out of place: ${name}`,
      subject: answer.document,
      author: 'Onepour',
      date: new Date(),
      language: 'en',
    },
  });
  download(`out-of-place-${name.replaceAll(' ', '-')}.pdf`, new Uint8Array(bytes), 'application/pdf');
}

/** What became of the wish for a job. */
export type JobMade =
  | { readonly kind: 'made'; readonly address: string }
  | { readonly kind: 'downloaded' }
  | { readonly kind: 'refused'; readonly why: string };

/** Makes a job of an answer: on the server, or as a file where that does not answer. */
export async function giveJob(answer: ComputedAnswer, units: SpokenUnits): Promise<JobMade> {
  const name = nameAnswer(answer, units);
  const writer = writerOf(units);
  const file = makeJobOfAnswer(answer, {
    project: `Insert out of place: ${name} (${writeToday()})`,
    remarks: answer.filled.assumptions.map((one) => sayAssumption(one, writer).sentence),
    makeKey: drawUuid,
  });
  if (file === null)
    return { kind: 'refused', why: 'The foot would stand out of the concrete: no job holds such an insert.' };
  const called = await call<JobHead>('POST', '/api/jobs', { file });
  if (called.kind === 'answered')
    return { kind: 'made', address: `/job/${encodeURIComponent(called.value.id)}/panels` };
  if (called.kind === 'refused') return { kind: 'refused', why: called.error.message };
  download(`out-of-place-${name.replaceAll(' ', '-')}.json`, JSON.stringify(file, null, 1), 'application/json');
  return { kind: 'downloaded' };
}
