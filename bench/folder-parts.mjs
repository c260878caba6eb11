/** What the benchmark of the pour folder uses of Onepour: bundled from the sources before a run, apart from what needs no drawings. */

export { readDrawingFonts } from '../src/cli/drawing-fonts.ts';
export { makeFolder } from '../src/cli/folder-command.ts';
export { PAPERS } from '../src/drawing/sheets/paper.ts';
export { writePdf } from '../src/files/pdf/write-pdf.ts';
export { readJobDocument } from '../src/job/read-job-document.ts';
