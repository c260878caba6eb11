import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assessJob } from '../../src/assess/assess-job.ts';
import { readJob } from '../../src/files/read-job.ts';
import { makeHandedPartner } from '../../src/job/handed/make-handed-partner.ts';
import { handedMark } from '../../src/job/handed/mirror-connection.ts';

const path = join(import.meta.dirname, '..', '..', 'demo', 'job.json');
const reading = readJob(new Map([['job.json', readFileSync(path, 'utf8')]]));
if (!reading.ok) throw new Error('the demo job has faults');

/** Every panel of the demo with a partner: openings, skew and battered sides, zones, edges, turned plates, moments. */
const sources = reading.file.job.panels.filter(
  ({ mark, handedOf }) => handedOf === null && !reading.file.job.panels.some((panel) => panel.handedOf === mark),
);
const withPartners = sources.reduce((file, { mark }) => {
  const made = makeHandedPartner(file, mark, `${mark}-H`);
  if (!made.ok) throw new Error(made.text);
  return made.file;
}, reading.file);
const answers = new Map(assessJob(withPartners).connections.map((answer) => [answer.mark, answer]));

describe('handed partners carry what their sources carry', () => {
  // A mirror image has the same strength: no clause knows left from right.
  it.each(sources.map(({ mark }) => mark))('%s', (mark) => {
    const own = reading.file.job.connections.filter(({ panel }) => panel === mark);
    for (const { mark: name } of own) {
      const [source, partner] = [answers.get(name)!, answers.get(handedMark(name))!];
      const { state, governing, reasons } = source;
      expect([name, partner.state, partner.governing, partner.reasons.length]).toEqual([
        name,
        state,
        governing,
        reasons.length,
      ]);
      if (source.ratio === null) expect(partner.ratio).toBeNull();
      else expect(partner.ratio! / source.ratio).toBeCloseTo(1, 9);
    }
  });
});
