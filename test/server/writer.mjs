// Saves edits as fast as the server takes them, and notes each that was acknowledged: `version id`, a line each. A process of its own,
// so that the killing of the server does not touch it. Arguments: address of the job's edits, name, file of notes. Ends when its
// standard input does; then it writes { sent, cut, refused } to standard output.

import { appendFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

const [, , address, name, notes] = process.argv;
const counts = { sent: 0, cut: 0, refused: 0 };
let isEnding = false;
process.stdin.on('end', () => {
  isEnding = true;
});
process.stdin.resume();

let number = 0;
function makeEdit() {
  number += 1;
  const change = (value) => [{ op: 'replace', path: ['job', 'project', 'number'], value }];
  const label = `${name} ${number}`;
  return {
    id: `${name}-${number}`,
    label,
    at: new Date().toISOString(),
    changes: change(label),
    back: change('before'),
  };
}

/** The answer, or null where none came: nobody knows then whether the edits are stored. */
async function send(body) {
  counts.sent += 1;
  try {
    const answer = await fetch(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
    return { status: answer.status, ...(await answer.json()) };
  } catch (error) {
    // Refused: the server is down and took nothing. Else the call was cut off under way.
    if (error.cause?.code !== 'ECONNREFUSED') counts.cut += 1;
    await wait(20);
    return null;
  }
}

let base = 0;
while (!isEnding) {
  const edits = Array.from({ length: 1 + (number % 3) }, makeEdit);
  for (;;) {
    const answer = await send(JSON.stringify({ base, editor: name, edits }));
    if (answer === null) continue;
    if (answer.status === 409) {
      counts.refused += 1;
      base = answer.version;
      continue;
    }
    if (answer.status !== 200) throw new Error(`${answer.status}: ${answer.message}`);
    const first = answer.version - edits.length + 1;
    appendFileSync(notes, edits.map(({ id }, index) => `${first + index} ${id}\n`).join(''));
    base = answer.version;
    break;
  }
}
process.stdout.write(JSON.stringify(counts));
