// Writes a page from its template: styles, scripts and the addresses of the workers go into its head. Nothing in line, so that the page
// runs under a content security policy without exceptions.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const PLACE = '<!-- the build puts styles and scripts here -->';
const WORKERS = ['worker', 'pdf-worker'];

/** Writes `page.file` into `out`. Throws when the template has no place for what the build puts in. */
export function writePage(root, out, page, entries) {
  const template = readFileSync(join(root, page.template), 'utf8');
  if (template.split(PLACE).length !== 2) throw new Error(`${page.template}: "${PLACE}" was expected once`);
  const { script, style, closure } = entries[page.name];
  const latin = style === null ? null : findLatin(join(out, style));
  const lines = [
    ...(latin === null ? [] : [`<link rel="preload" href="${latin}" as="font" type="font/woff2" crossorigin>`]),
    ...(style === null ? [] : [`<link rel="stylesheet" href="${style}">`]),
    ...closure.filter((path) => path !== script).map((path) => `<link rel="modulepreload" href="${path}">`),
    ...WORKERS.map((name) => `<meta name="onepour-${name}" content="${entries[name].script}">`),
    `<script type="module" src="${script}"></script>`,
  ];
  writeFileSync(join(out, page.file), template.replace(PLACE, lines.join('\n    ')));
}

/** The face that almost every text needs, as the page's style names it. */
function findLatin(file) {
  const found = /\/assets\/source-sans-3-latin-wght[\w-]*\.woff2/.exec(readFileSync(file, 'utf8'));
  return found === null ? null : found[0];
}
