import { describe, expect, it } from 'vitest';
import { chooseConnectionBolt } from '../../src/assess/bolt-of-connection.ts';
import { findCapacities } from '../../src/assess/capacities.ts';
import { printBolt } from '../../src/cli/print/bolt.ts';
import { mustResolve } from '../job/read.ts';
import { type Json, sampleConnection, sampleItem, sampleJob } from '../job/sample-job.ts';

function pageOf(connection: Json = {}, item: Json = {}) {
  const splitting = { criticalEdge_mm: 144, minimumThickness_mm: 150 };
  const items = [sampleItem({ splitting, ...item })];
  const resolved = mustResolve(sampleJob({ items, connections: [sampleConnection(connection)] }));
  const asked = findCapacities(resolved);
  const bolt = chooseConnectionBolt(resolved, asked.kind === 'computed' ? asked.value : null);
  return printBolt(bolt!, 400);
}

describe('the bolt on the page of a connection', () => {
  it('has one row, for the packers that were checked', () => {
    const page = pageOf();
    expect(page).toMatch(/^ *0 +M16 × 35 +16\.7 to 17 +8\.3 +23$/m);
    expect(page).not.toMatch(/0 to 20/);
    expect(page).toMatch(/checked without packers; more packers bend the bolts/);
    expect(pageOf({ packers_mm: 20 })).toMatch(/^ *20 +M16 × 55/m);
  });
  it('says what the limit of the concrete rests on', () => {
    expect(pageOf()).toMatch(
      /concrete \d+ N m \(concrete cone of the connection, all bolts at once, concrete of 28 days\)/,
    );
    expect(pageOf({}, { qualification: null })).toMatch(/concrete: no limit known, its tension is not covered/);
  });
  it('gives no length of a bolt that does not go in', () => {
    const page = pageOf({ boltFinish: 'galvanised' }, { threadClass: '6H', boltFinishes: ['galvanised'] });
    expect(page).toMatch(/^ *0 +none goes in +- +- +-$/m);
    expect(page).not.toMatch(/M16 × 35|turns in by hand/);
  });
});
