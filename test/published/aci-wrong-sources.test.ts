// Numbers on anchors by ACI 318 that a source states and that are wrong: ours must not be the same. Each entry of data/ says
// where its source is at fault; what is right is worked by hand here.

import { describe, expect, it } from 'vitest';
import { INTERACTION } from '../../src/engine/standards/aci-318-19/interaction.ts';
import { PULL_OUT_BASIC } from '../../src/engine/standards/aci-318-19/pull-out.ts';
import { STEEL_SHEAR } from '../../src/engine/standards/aci-318-19/steel-shear.ts';
import { STEEL_TENSION } from '../../src/engine/standards/aci-318-19/steel-tension.ts';
import { DESIGN_STRENGTH, PULL_OUT_PHI, STEEL_PHI } from '../../src/engine/standards/aci-318-19/strength-reduction.ts';
import { findEntry, findValue } from './entry.ts';
import { KIP, KSI, POUND, PSI, SQUARE_INCH } from './inch-pound.ts';
import { runCase } from './published.ts';

/** Whether a number is the published one within its printed digits. */
function isAsPublished(entry: string, name: string, computed: number): boolean {
  return runCase({ entry, how: 'to show what it is not', values: { [name]: () => computed } })[0]!.isWithin;
}

describe('known wrong sources on ACI 318', () => {
  it('dg1-table-4-1: the first row is a rod of 5/8 in, not of 3/8 in as a transcription prints', () => {
    // π/4 (d − 0.9743/n)²: 3/8 in with 16 threads an inch 0.0775 in², 5/8 in with 11 threads 0.226 in².
    const strength = (section: number): number =>
      DESIGN_STRENGTH.fn(STEEL_TENSION.fn(section * SQUARE_INCH, 58 * KSI), STEEL_PHI.ductile.tension) / KIP;
    expect(isAsPublished('dg1-table-4-1', 'phiRn d=0.625 gr36', strength(0.226))).toBe(true);
    expect(isAsPublished('dg1-table-4-1', 'phiRn d=0.625 gr36', strength(0.0775))).toBe(false);
    // 0.75 · 0.0775 · 58 = 3.37 kip, a third of the 9.83 kip in the table.
    expect(strength(0.0775)).toBeCloseTo(3.37, 2);
  });

  it('edu-interaction: the page adds its own two ratios to 1.181, they are 1.179', () => {
    // 20000/20694.613 + 2300/10821.297 = 0.966435 + 0.212544 = 1.178979.
    const sum = 1.2 * INTERACTION.fn(20000 / 20694.613, 2300 / 10821.297);
    expect(sum).toBeCloseTo(1.178979, 6);
    expect(isAsPublished('edu-interaction', 'sum', sum)).toBe(false);
  });

  it('edu-pullout: the page holds for 4000 psi, not for the 3500 psi that it states elsewhere', () => {
    const four = (strength: number): number =>
      (4 * DESIGN_STRENGTH.fn(PULL_OUT_BASIC.fn(0.654 * SQUARE_INCH, strength * PSI), PULL_OUT_PHI)) / POUND;
    // 4 · 0.7 · 8 · 0.654 · 3500 = 51 273.6 lb.
    expect(four(3500)).toBeCloseTo(51273.6, 1);
    expect(isAsPublished('edu-pullout', 'phiNpn group', four(3500))).toBe(false);
  });

  it('aci349.2r-A2: the shear of a welded stud is not that of a bolt or insert', () => {
    // A_se f_uta = π/4 · 0.5² · 65 = 12.763 kip for the stud; 0.6 of it, 7.658 kip, for a bolt.
    const bolt = STEEL_SHEAR.fn(1, (Math.PI / 4) * 0.25 * SQUARE_INCH, 65 * KSI) / KIP;
    expect(bolt).toBeCloseTo(7.658, 3);
    expect(bolt / findValue(findEntry('aci349.2r-A2'), 'Vsa').value).toBeCloseTo(0.6, 4);
  });
});
