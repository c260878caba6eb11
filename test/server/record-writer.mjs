// Some tablets that send records as fast as the server takes them, each chained to the one before, and a photo now and then. Each that was
// acknowledged is noted and brought to disk: `number id hash`, or `photo hash`, a line each. A process of its own, so that the killing of the server
// does not touch it. Arguments: address of the server with the job as `?job=`, name, file of notes. Ends when its standard input does; then it
// writes { sent, cut, refused } to standard output.

import { createHash, randomBytes } from 'node:crypto';
import { fsyncSync, openSync, writeSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

const [, , where, name, notes] = process.argv;
const address = new URL(where);
const job = address.searchParams.get('job');
const file = openSync(notes, 'a');
const counts = { sent: 0, cut: 0, refused: 0 };
let isEnding = false;
process.stdin.on('end', () => {
  isEnding = true;
});
process.stdin.resume();

const sha256 = (bytes) => createHash('sha256').update(bytes).digest('hex');

/** The canonical text of a value without numbers that JSON writes in several ways. */
function writeDown(value) {
  if (Array.isArray(value)) return `[${value.map(writeDown).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${writeDown(value[key])}`).join(',')}}`;
}

function makeId() {
  const hex = randomBytes(16).toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20)}`;
}

function writeRecord(device) {
  const at = new Date().toISOString();
  const record = {
    v: 1,
    id: makeId(),
    kind: 'comment',
    job,
    piece: sha256(`${name} ${device.number % 12}`).slice(0, 24),
    item: null,
    seen: [],
    revision: null,
    checkKey: null,
    measuredAt: at,
    typedAt: at,
    clock_s: null,
    person: 'demosetter01',
    measuredBy: null,
    device: device.id,
    app: 'test',
    chain: { number: device.number + 1, previous: device.previous },
    body: { text: `record ${device.number + 1} of ${name}` },
  };
  const text = writeDown(record);
  device.number += 1;
  device.previous = sha256(text);
  return { id: record.id, hash: device.previous, text };
}

function note(lines) {
  writeSync(file, lines.map((line) => `${line}\n`).join(''));
  fsyncSync(file);
}

/** The answer, or null where none came: nobody knows then whether it is stored. */
async function send(path, init) {
  counts.sent += 1;
  try {
    const answer = await fetch(new URL(path, address), init);
    return { status: answer.status, ...(await answer.json()) };
  } catch (error) {
    // Refused: the server is down and took nothing. Else the call was cut off under way.
    if (error.cause?.code === 'ECONNREFUSED') counts.refused += 1;
    else counts.cut += 1;
    await wait(20);
    return null;
  }
}

/** Sends until it is acknowledged. */
async function insist(path, init) {
  for (;;) {
    const answer = await send(path, init);
    if (answer === null) continue;
    if (answer.status >= 300) throw new Error(`${answer.status}: ${answer.message}`);
    return answer;
  }
}

async function sendRecords(records) {
  const body = JSON.stringify({ texts: records.map(({ text }) => text) });
  const headers = { 'content-type': 'application/json' };
  const { took, forks } = await insist(`/api/jobs/${job}/records`, { method: 'POST', headers, body });
  if (forks.length > 0) throw new Error(`told of a fork: ${forks}`);
  note(
    took.map(({ id, state, number }, index) => {
      if (id !== records[index].id || state === 'aside') throw new Error(`record ${records[index].id} is ${state}`);
      return `${number} ${id} ${records[index].hash}`;
    }),
  );
}

async function sendPhoto() {
  const bytes = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(40_000)]);
  const hash = sha256(bytes);
  await insist(`/api/photos/${hash}`, { method: 'PUT', headers: { 'content-type': 'image/jpeg' }, body: bytes });
  note([`photo ${hash}`]);
}

const devices = [0, 1, 2].map((index) => ({ id: sha256(`${name} ${index}`).slice(0, 16), number: 0, previous: null }));
let before = [];
for (let round = 0; !isEnding; round += 1) {
  const fresh = Array.from({ length: 20 }, () => writeRecord(devices[round % devices.length]));
  // Now and then with some that are acknowledged already, as after a restart of a tablet.
  await sendRecords(round % 5 === 4 ? [...before.slice(10), ...fresh] : fresh);
  if (round % 7 === 6) await sendPhoto();
  before = fresh;
}
process.stdout.write(JSON.stringify(counts));
