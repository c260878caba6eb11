import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';
import { printCalculation } from '../../src/cli/print/calculation.ts';
import { RIGHT } from '../calc/bolts.ts';

const print = (input: object) => printCalculation(calculate(input), 100);

describe('any calculation for reading', () => {
  // By hand (age-and-life.test.ts): 0.778801, 37.3824, 29.3824.
  it('is a table of key, number with six digits and unit, with the notes below', () => {
    const good = { calc: 'strength-at-age', model: 'EN 1992-1-1', cement: 'N', strength28_MPa: 40, age_days: 7 };
    expect(print(good).split('\n')).toEqual([
      'key                        value  unit',
      '----------------------  --------  ----',
      'ratio                   0.778801',
      'meanStrength             37.3824  MPa',
      'characteristicStrength   29.3824  MPa',
      '',
      expect.stringMatching(/^- for concrete kept at 20 °C/),
    ]);
    expect(print({ ...good, age_days: 2 })).toMatch(/^characteristicStrength +-$/m);
  });
  it('puts pairs, lists and objects of a bolt in words', () => {
    const page = print({ ...RIGHT, packers_mm: [[0, 10]], plateHole: { diameter_mm: 18, slot_mm: 0 } });
    expect(page).toMatch(/^length +45 +mm$/m);
    expect(page).toMatch(/^stressArea +156\.668 +mm²$/m);
    expect(page).toMatch(/^ok +yes$/m);
    expect(page).toMatch(/^tighteningTorque +-$/m);
    expect(page).toMatch(/^nutFactorRange +0\.148148 to 0\.307692$/m);
    expect(page).toMatch(/^plateHole\.washer\.outside +30 +mm$/m);
    expect(page).toMatch(/^torqueLimits\nlimit +torque N m\n/m);
    expect(page).toMatch(/^maker's maximum +80$/m);
    expect(page).toMatch(/^ +0 to 10 +45 +17 to 27 +8\.5 to 13\.5 +13 +packers 0–10 mm: M16 × 45$/m);
    expect(page).toMatch(/^- turns in by hand 8\.5 times/m);
    expect(page).not.toMatch(/[{}]|contract|\d{9}/);
  });
  // 24 · 30 = 720 °C h, 36 h; 55/2.1 = 26.1905, 55/0.7 = 78.5714; C1 has no longest life.
  it('knows the units of maturity and of coatings', () => {
    const log = [
      { hours: 0, degC: 20 },
      { hours: 24, degC: 40 },
    ];
    const maturity = print({ calc: 'maturity', method: 'Nurse-Saul', datum_degC: 0, reference_degC: 20, log });
    expect(maturity).toMatch(/^index +720 +°C h$/m);
    expect(maturity).toMatch(/^equivalentAge +36 +h$/m);
    const life = print({ calc: 'coating-life', category: 'C3', coating_um: 55 });
    expect(life).toMatch(/^years +26\.1905 to 78\.5714$/m);
    expect(life).toMatch(/^rates +0\.7 to 2\.1 +µm a year$/m);
    expect(print({ calc: 'coating-life', category: 'C1', coating_um: 55 })).toMatch(/^years +550 to -$/m);
  });
});
