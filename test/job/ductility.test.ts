// Ductile by ACI 318-19, 2.3: A5 of at least 14 % and Z of at least 30 %, of insert and bolt. φ of 17.5.3: 0.75 and 0.65, brittle 0.65 and 0.60.
// ISO 898-1 gives bolts 4.6 an A5 of 22 % and no Z; 8.8 12 % and 52 %.

import { describe, expect, it } from 'vitest';
import { anchorage } from '../../src/engine/checks/anchorage.ts';
import { mustResolve } from './read.ts';
import { sampleConnection, sampleItem, sampleJob } from './sample-job.ts';

const steel = { ultimate_MPa: 510, yield_MPa: 355, elongation_percent: 18, areaReduction_percent: 40 };
const groupOf = (boltClass: string, own: object = {}) =>
  mustResolve(
    sampleJob({
      items: [
        sampleItem({ steel: { ...steel, ...own }, qualification: { document: 'Invented', standard: 'ACI 318-19' } }),
      ],
      connections: [sampleConnection({ boltClass })],
      rules: { standard: 'ACI 318-19' },
    }),
  ).group;

describe('ductility of insert and bolt together', () => {
  it('an insert of 40 % under bolts 4.6 counts as brittle: φ 0.65 in tension, 0.60 in shear', () => {
    const group = groupOf('4.6');
    expect(group.insert).toMatchObject({ elongation: 18, areaReduction: null });
    const { rows } = anchorage(group, null);
    const phiOf = (mode: string) => rows.find((one) => one.mode === mode)!.safety;
    expect([phiOf('steel-tension'), phiOf('steel-shear')]).toEqual([0.65, 0.6]);
  });
  it('takes the lesser of both', () => {
    expect(groupOf('8.8').insert).toMatchObject({ elongation: 12, areaReduction: 40 });
    expect(groupOf('8.8', { areaReduction_percent: 60 }).insert.areaReduction).toBe(52);
  });
  it('is not known where the insert says nothing', () => {
    expect(groupOf('8.8', { areaReduction_percent: null }).insert.areaReduction).toBeNull();
  });
});
