/** Makes a folder in a process of its own, so that the memory is only that of a folder. Its argument: how many panels. Sends { ms, pages, inserts, peakMB }. */

import { readFileSync } from 'node:fs';
import { makeFolder, PAPERS, readDrawingFonts, readJobDocument, writePdf } from '../dist/folder-parts.mjs';
import { makeFolderJob } from './job.mjs';

const KB_PER_MB = 1024;
const DEMO = new URL('../../demo/job.json', import.meta.url);

const read = readJobDocument(makeFolderJob(JSON.parse(readFileSync(DEMO, 'utf8')), Number(process.argv[2])));
if (!read.ok) throw new Error(`the folder's job is not read: ${JSON.stringify(read.faults.slice(0, 3))}`);
const start = performance.now();
const { pages } = makeFolder(read.file, 'all', PAPERS.A3, null);
const details = { title: 'all', author: 'bench', subject: 'bench', date: new Date(0), language: 'en' };
const bytes = await writePdf(pages, details, readDrawingFonts());
const ms = performance.now() - start;
if (bytes.length < 1000 * pages.length) throw new Error(`${bytes.length} bytes for ${pages.length} pages`);
process.send({
  ms,
  pages: pages.length,
  inserts: read.file.job.castIns.length,
  peakMB: process.resourceUsage().maxRSS / KB_PER_MB,
});
