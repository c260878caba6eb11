// Reads the planted faults of test/mutants/*.json and says what is wrong with them.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = 'test/mutants';

/** Gives the faults that can be planted (with `only`: whose list, file or reason holds that text) and one line for each that cannot. */
export function readMutants(root, only) {
  const mutants = [];
  const faults = [];
  const names = existsSync(join(root, FOLDER))
    ? readdirSync(join(root, FOLDER)).filter((name) => name.endsWith('.json'))
    : [];
  for (const name of names.sort()) {
    for (const [index, mutant] of readList(root, name, faults).entries()) {
      const text = `${name} ${mutant.file} ${mutant.why}`;
      if (only !== undefined && !text.includes(only)) continue;
      const fault = findFault(root, mutant);
      if (fault === null) mutants.push(mutant);
      else faults.push(`${FOLDER}/${name}, fault ${index + 1} (${mutant.why ?? 'no "why"'}): ${fault}`);
    }
  }
  return { mutants, faults };
}

function readList(root, name, faults) {
  try {
    const list = JSON.parse(readFileSync(join(root, FOLDER, name), 'utf8'));
    if (Array.isArray(list)) return list;
    faults.push(`${FOLDER}/${name}: a list was expected`);
  } catch (error) {
    faults.push(`${FOLDER}/${name}: ${error.message}`);
  }
  return [];
}

function findFault(root, { file, find, replace, why, tests }) {
  for (const [key, value] of Object.entries({ file, find, replace, why })) {
    if (typeof value !== 'string') return `"${key}" must be a text`;
  }
  if (!Array.isArray(tests) || tests.length === 0) return '"tests" must name at least one test file';
  const lost = [file, ...tests].find((path) => !existsSync(join(root, path)));
  if (lost !== undefined) return `${lost} is not there`;
  if (find === replace) return '"find" and "replace" are the same';
  const times = readFileSync(join(root, file), 'utf8').split(find).length - 1;
  return times === 1 ? null : `"${find}" stands ${times} times in ${file}, once was expected`;
}
