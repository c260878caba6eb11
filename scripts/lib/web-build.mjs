// Bundles the screens into dist/web/: pages, workers, styles, fonts, the service worker, and assets.json, the list of it all.

import { rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { listLicences } from './licences.mjs';
import { followStatic, listReached } from './web-closure.mjs';
import { copyFile, listFiles } from './web-files.mjs';
import { writePage } from './web-page.mjs';
import { hashFiles, writeServiceWorker } from './web-service-worker.mjs';

const require = createRequire(import.meta.url);

const PAGES = [
  { name: 'office', entry: 'src/web/office/main.tsx', template: 'src/web/office/index.html', file: 'index.html' },
  { name: 'yard', entry: 'src/web/yard/main.tsx', template: 'src/web/yard/index.html', file: 'yard.html' },
  { name: 'answer', entry: 'src/web/answer/main.tsx', template: 'src/web/answer/index.html', file: 'answer.html' },
];
const WORKERS = [
  { name: 'worker', entry: 'src/web/worker/main.ts' },
  { name: 'pdf-worker', entry: 'src/web/pdf-worker/main.ts' },
];
const STATIC = [
  { from: 'src/web/parts/icon.svg', to: 'icon.svg' },
  { from: 'src/web/office/office.webmanifest', to: 'office.webmanifest' },
  { from: 'src/web/yard/yard.webmanifest', to: 'yard.webmanifest' },
  { from: 'src/web/answer/answer.webmanifest', to: 'answer.webmanifest' },
  { from: require.resolve('dejavu-fonts-ttf/LICENSE'), to: 'licences/dejavu-fonts.txt' },
  { from: require.resolve('@fontsource-variable/source-sans-3/LICENSE'), to: 'licences/source-sans-3.txt' },
];

/** These packages take Node's own Buffer otherwise. */
const ALIAS = {
  'csv-parse/sync': 'csv-parse/browser/esm/sync',
  'csv-stringify/sync': 'csv-stringify/browser/esm/sync',
};

/**
 * Builds the screens of the project at `root` into the folder `out`.
 * Rejects when a source does not compile; esbuild has then printed where.
 */
export async function buildWeb(esbuild, root, out) {
  // Pages and workers share no script: what they have in common would come in many small pieces, each a request of its own.
  const built = await Promise.all([...PAGES, ...WORKERS].map((part) => bundle(esbuild, root, out, part)));
  const metafile = {
    inputs: Object.assign({}, ...built.map(({ inputs }) => inputs)),
    outputs: Object.assign({}, ...built.map((one) => one.outputs)),
  };
  const outputs = renameOutputs(root, out, metafile.outputs);
  const entries = Object.fromEntries(
    [...PAGES, ...WORKERS].map(({ name, entry }) => [name, describeEntry(outputs, entry)]),
  );
  removeUnusedStyles(out, outputs, entries);
  for (const { from, to } of STATIC) copyFile(resolve(root, from), join(out, to));
  writeFileSync(join(out, 'licences', 'packages.txt'), listLicences(root, metafile.inputs));
  for (const page of PAGES) writePage(root, out, page, entries);
  await writeServiceWorker(esbuild, root, out, precacheOf(outputs, entries));
  const files = listFiles(out);
  writeFileSync(
    join(out, 'assets.json'),
    `${JSON.stringify({ version: hashFiles(out, files), entries, files }, null, 1)}\n`,
  );
}

/** Bundles a page or worker, and gives esbuild's account of it. */
async function bundle(esbuild, root, out, { name, entry }) {
  const { metafile } = await esbuild.build({
    absWorkingDir: root,
    entryPoints: [{ in: entry, out: name }],
    outdir: join(out, 'assets'),
    publicPath: '/assets/',
    entryNames: '[name]-[hash]',
    chunkNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    bundle: true,
    format: 'esm',
    splitting: true,
    minify: true,
    charset: 'utf8',
    target: 'es2022',
    platform: 'browser',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    loader: { '.woff2': 'file', '.ttf': 'file' },
    alias: ALIAS,
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
  });
  return metafile;
}

/** esbuild's outputs by their address on the server. */
function renameOutputs(root, out, outputs) {
  const address = (path) => `/${relative(out, join(root, path)).replaceAll('\\', '/')}`;
  return new Map(
    Object.entries(outputs).map(([path, output]) => [
      address(path),
      {
        ...output,
        cssBundle: output.cssBundle === undefined ? null : address(output.cssBundle),
        imports: output.imports.map((one) => ({ ...one, path: one.external ? one.path : address(one.path) })),
      },
    ]),
  );
}

/** An entry: its script, its style, all that its script brings at once, and what it may bring later. */
function describeEntry(outputs, entry) {
  const [script, { cssBundle }] = [...outputs].find(([, { entryPoint }]) => entryPoint === entry);
  const closure = followStatic(outputs, script);
  return { script, style: cssBundle, closure, later: listReached(outputs, script).filter((x) => !closure.includes(x)) };
}

/** esbuild puts the styles of parts that come later into the page's own style, and writes them once more beside it: nobody asks for those. */
function removeUnusedStyles(out, outputs, entries) {
  const used = new Set(Object.values(entries).map(({ style }) => style));
  for (const path of outputs.keys()) {
    if (path.endsWith('.css') && !used.has(path)) rmSync(join(out, path));
  }
}

/** What the service worker keeps: each page with what it shows first and all that the yard may ever ask for, then what the answer needs to write its sheet. */
function precacheOf(outputs, entries) {
  const latin = [...outputs.keys()].filter((path) => /\/source-sans-3-latin-wght/.test(path));
  const shells = PAGES.flatMap(({ name, file }) => {
    const { closure, style } = entries[name];
    return [`/${file}`, `/${name}.webmanifest`, ...closure, ...(style ? [style] : [])];
  });
  // A tablet may be taken out of reach the moment after it was opened once.
  const yard = entries.yard.later.filter((path) => path.endsWith('.js'));
  const { closure, later } = entries['pdf-worker'];
  const answers = entries.answer.later.filter((path) => path.endsWith('.js'));
  return {
    first: [...new Set([...shells, ...yard, ...latin, '/icon.svg'])],
    later: [...new Set([...closure, ...later, ...answers])].filter(
      (path) => !shells.includes(path) && !yard.includes(path),
    ),
  };
}
