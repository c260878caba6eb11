// Rules of the house that no linter knows: left-overs, skipped tests, paths of one machine, long files.
// Prints "file:line: rule" for each fault; exit 1 when there is one.

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = process.argv[2] ?? dirname(dirname(fileURLToPath(import.meta.url)));
const SKIPPED = new Set(['node_modules', 'dist', '.git', '.stamp', 'coverage']);
const TEXT = new Set(['.ts', '.tsx', '.css', '.html', '.js', '.mjs', '.json', '.md', '.csv', '.txt', '']);
const CODE = /\.(tsx?|js|mjs)$/;
const LONGEST = 400;

// The words stand in pieces so that this file does not break its own rules.
const word = (...pieces) => pieces.join('');
const LEFT_OVERS = [word('TO', 'DO'), word('FIX', 'ME'), word('XX', 'X'), word('HA', 'CK')].join('|');
const SILENCERS = ['ts-ignore', 'ts-nocheck', 'ts-expect-error'].map((name) => `@${name}`);
const OTHER_SILENCERS = [word('biome-', 'ignore'), word('eslint-', 'disable'), word('prettier-', 'ignore')];
const MACHINE_FOLDERS = ['home', 'Users', 'root', 'tmp', 'mnt', 'srv', 'work', 'farm'].join('|');

/** Each rule: which files, what must not stand in a line, and what to say. */
const LINE_RULES = [
  { files: CODE, pattern: new RegExp(`\\b(${LEFT_OVERS})\\b`), says: 'a note of unfinished work' },
  { files: CODE, pattern: new RegExp([...SILENCERS, ...OTHER_SILENCERS].join('|')), says: 'a silenced check' },
  {
    files: /^test\/.*\.tsx?$/,
    pattern: new RegExp(
      `\\b(it|test|describe|suite)(\\.\\w+)*\\.(${['skip', 'only', 'todo', 'fails', 'skipIf', 'runIf'].join('|')})\\b`,
    ),
    says: 'a skipped, focused or expected-to-fail test',
  },
  {
    files: /./,
    pattern: new RegExp(`(?<![\\w.~}/-])/(${MACHINE_FOLDERS})/\\w|\\b[A-Z]:\\\\Users\\b`),
    says: 'a path of one machine',
  },
  { files: /^src\/.*\.tsx?$/, pattern: /^export default\b/, says: 'a default export (named exports only)' },
  { files: /^src\/.*\.tsx?$/, pattern: /^(export )?(let|var)\b/, says: 'a variable that lives as long as the module' },
  {
    files: /^(src|test)\/.*\.tsx?$/,
    pattern: /\b(from|import)\s*\(?\s*['"]\.{1,2}\/[^'"]*(?<!\.(tsx?|js|mjs|json|css))['"]/,
    says: 'a relative import without its file extension',
  },
  {
    files: /^src\/engine\/.*\.ts$/,
    pattern: /\bMath\.random\b|\bDate\.now\b|\bnew Date\b/,
    says: 'chance or time inside the engine',
  },
  {
    files: /(^|\/)package-lock\.json$/,
    pattern: /"resolved": *"https?:/,
    says: 'the address of a registry (omit-lockfile-registry-resolved=true leaves it out)',
  },
];

const faults = [];
for (const file of listFiles('')) {
  if (!TEXT.has(extname(file))) continue;
  const lines = readFileSync(join(ROOT, file), 'utf8').split('\n');
  const rules = LINE_RULES.filter((rule) => rule.files.test(file));
  for (const [index, line] of lines.entries()) {
    for (const rule of rules)
      if (rule.pattern.test(line)) faults.push(`${file}:${index + 1}: ${rule.says}: ${line.trim().slice(0, 100)}`);
  }
  const length = lines.at(-1) === '' ? lines.length - 1 : lines.length;
  if (/^src\/.*\.(tsx?|css)$/.test(file) && length > LONGEST)
    faults.push(`${file}: ${length} lines; more than ${LONGEST}: one subject each?`);
}
for (const fault of faults) process.stdout.write(`${fault}\n`);
process.exitCode = faults.length === 0 ? 0 : 1;

function* listFiles(folder) {
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    if (SKIPPED.has(entry.name)) continue;
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* listFiles(path);
    else if (entry.isFile()) yield path;
  }
}
