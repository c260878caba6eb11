import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findAreas } from '../../../src/assess/areas/find-areas.ts';
import { assessConnection, explainConnection, workOut } from '../../../src/assess/assess-connection.ts';
import { explainSteps } from '../../../src/assess/explain/explain-steps.ts';
import { explain, explainWorked } from '../../../src/assess/explain/explanation.ts';
import { isWithin } from '../../../src/engine/checks/verdict.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { readSample } from '../read-sample.ts';

const reading = readJobDocument(JSON.parse(readFileSync('demo/job.json', 'utf8')));
if (!reading.ok) throw new Error('the demo job does not read');
const index = indexJob(reading.file);
const resolutions = reading.file.job.connections.map((connection) => resolveConnection(index, connection));

/** A connection of the demo job, worked out. */
function workOutDemo(mark: string) {
  const { worked } = workOut(resolutions.find((one) => one.mark === mark)!);
  if (worked === null) throw new Error(`${mark} cannot be computed`);
  return worked;
}

describe('an explanation', () => {
  it.each(resolutions.map((one) => [one.mark, one] as const))(
    'agrees with the answer and with every combination: %s',
    (_, resolution) => {
      const { answer, modes, loads } = explain(resolution);
      expect(answer).toEqual(assessConnection(resolution));
      const full = explainConnection(resolution, false);
      expect(loads.map(({ name }) => name)).toEqual(full.combinations.map(({ combination }) => combination.name));
      if (answer.governing === null) return;
      expect(modes[0]).toMatchObject({ governs: true, ratio: answer.ratio, ...answer.governing });
      const rows = full.combinations.flatMap(({ result }) => result?.rows ?? []);
      for (const line of modes) {
        expect(line.state).toBe(isWithin(line.ratio!) ? 'passes' : 'fails');
        expect(line.ratio).toBeLessThanOrEqual(answer.ratio!);
        if (line.action === null) continue;
        // By hand: action over resistance, but where two parts of a shear come together.
        const same = rows.filter(
          (row) =>
            row.applies &&
            row.mode === line.mode &&
            row.part === line.part &&
            `${row.edge?.from}` === `${line.edge?.from}`,
        );
        expect(line.ratio).toBe(Math.max(...same.map((row) => row.ratioTogether ?? row.ratio ?? -1)));
      }
      const ratios = modes.slice(1).map(({ ratio }) => ratio!);
      expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
    },
  );

  it('tells resistances alone where no action is given, the least first, and nothing of it is a pass', () => {
    const { connection, castIns } = sampleWithout();
    const { modes, answer } = explain(resolveConnection(castIns, connection));
    expect(answer.state).toBe('strength not checked');
    expect(modes.length).toBeGreaterThan(3);
    expect(
      modes.every(({ ratio, state, governs }) => ratio === null && state === 'strength not checked' && !governs),
    ).toBe(true);
    const resistances = modes.map(({ resistance }) => resistance!);
    expect(resistances).toEqual([...resistances].sort((a, b) => a - b));
  });

  it('says why a mode needs no number', () => {
    const skipped = resolutions.flatMap((one) => explain(one).skipped);
    expect(skipped.length).toBeGreaterThan(0);
    expect(skipped.every(({ reasons }) => reasons.length > 0)).toBe(true);
  });
});

/** The sample job with no action given. */
function sampleWithout() {
  const file = readSample({});
  const castIns = indexJob(file);
  return { castIns, connection: { ...file.job.connections[0]!, actions: { kind: 'none' as const } } };
}

describe('steps', () => {
  it('lead to the numbers of the explanation', () => {
    for (const { mark } of resolutions.slice(0, 20)) {
      const { worked } = workOut(resolutions.find((one) => one.mark === mark)!);
      if (worked === null) continue;
      for (const line of explainWorked(worked).modes) {
        if (line.mode === 'plate-bending') continue;
        const stepped = explainSteps(worked, line.combination, new Set([line.mode]));
        const row = stepped!.rows.find(
          ({ part, edge, inserts }) =>
            part === line.part && `${edge?.from}` === `${line.edge?.from}` && inserts.join() === line.inserts.join(),
        )!;
        expect(row.resistance).toBe(line.resistance);
        expect(row.steps.length).toBeGreaterThan(0);
        // Without a factor of the product, the last step before the ratio is the design value.
        if (row.resistance !== null) expect(row.steps.at(-1)!.result).toBe(row.resistance);
        expect(row.steps.every(({ clause, formula }) => clause !== '' || formula !== '')).toBe(true);
      }
    }
  });

  it('mark the row that governs, and give nothing of a combination that is not there', () => {
    const worked = workOutDemo(
      resolutions.find((one) => assessConnection(one).governing?.mode === 'concrete-cone')!.mark,
    );
    const { governing } = worked.answer;
    const all = explainSteps(worked, governing!.combination)!;
    expect(all.rows.filter(({ governs }) => governs).map(({ mode }) => mode)).toEqual([governing!.mode]);
    expect(explainSteps(worked, 'no such')).toBeNull();
    expect(explainSteps(worked, null)!.rows.every(({ ratio }) => ratio === null)).toBe(true);
  });
});

describe('areas of a connection', () => {
  it('are those of the modes that are used most', () => {
    let cones = 0;
    let shears = 0;
    for (const resolution of resolutions) {
      const { worked } = workOut(resolution);
      if (worked === null) continue;
      const { modes } = explainWorked(worked);
      const { cone, splitting, shear } = findAreas(worked, modes);
      const line = modes.find(({ mode }) => mode === 'concrete-cone');
      expect(cone.length > 0).toBe(line !== undefined);
      if (line !== undefined) expect(cone.map(({ inserts }) => inserts.join())).toContain(line.inserts.join());
      expect(splitting.length > 0).toBe(modes.some(({ mode }) => mode === 'splitting'));
      const edge = modes.find(({ mode }) => mode === 'concrete-edge');
      expect(shear === null).toBe(edge === undefined);
      if (edge !== undefined) expect([shear!.edge.fromX, shear!.edge.fromY]).toEqual([...edge.edge!.from]);
      cones += cone.length;
      shears += shear === null ? 0 : 1;
    }
    expect([cones > 20, shears > 10]).toEqual([true, true]);
  });
});
