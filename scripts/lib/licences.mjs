// The licence of every package whose code the screens carry, in one text.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const LICENCE = /^(licen[cs]e|copying)(\.|-|$)/i;

/**
 * @param inputs esbuild's list of what went into the bundle
 * @returns name, version and licence text of each package, by name
 */
export function listLicences(root, inputs) {
  const folders = new Set();
  for (const path of Object.keys(inputs)) {
    const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path);
    if (found !== null) folders.add(found[1]);
  }
  return [...folders]
    .sort()
    .map((folder) => describe(join(root, folder)))
    .join(`\n${'-'.repeat(80)}\n\n`);
}

function describe(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((entry) => LICENCE.test(entry));
  const text = file === undefined ? `Licence: ${license}` : readFileSync(join(folder, file), 'utf8').trim();
  return `${name} ${version}\n\n${text}\n`;
}
