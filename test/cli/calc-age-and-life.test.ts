import { describe, expect, it } from 'vitest';
import { onepour } from './run-command.ts';

const calc = (input: object) => onepour(['calc', '-'], JSON.stringify(input));
const strength = { calc: 'strength-at-age', model: 'EN 1992-1-1', cement: 'R', strength28_MPa: 40, age_days: 7 };
const maturity = {
  calc: 'maturity',
  method: 'Nurse-Saul',
  datum_degC: 0,
  reference_degC: 20,
  log: [
    { hours: 0, degC: 20 },
    { hours: 24, degC: 40 },
  ],
};
const life = { calc: 'coating-life', category: 'C3', coating_um: 55 };

describe('onepour calc: age and life', () => {
  // By hand: 48 · exp(−0.2) − 8 = 31.2991; 24 · 30 = 720 °C h, 36 h; 55/2.1 = 26.190, 55/0.7 = 78.571.
  it('answers from standard input', () => {
    const read = (input: object) => {
      const { status, stdout, stderr } = calc(input);
      expect(stderr).toBe('');
      expect(status).toBe(0);
      return JSON.parse(stdout);
    };
    expect(read(strength).characteristicStrength_MPa).toBeCloseTo(31.2991, 4);
    expect(read(maturity)).toMatchObject({ contract: 1, index_degC_h: 720, equivalentAge_hours: 36 });
    expect(read(life).years).toEqual([expect.closeTo(26.19, 2), expect.closeTo(78.571, 3)]);
  });

  it.each([
    ['a cement of another model', { ...strength, cement: 'ACI type I moist' }, /^cement: "ACI type I moist" is not/],
    ['an age of nothing', { ...strength, age_days: 0 }, /^age_days: expected the age/],
    [
      'time running back',
      { ...maturity, log: [...maturity.log, { hours: 3, degC: 20 }] },
      /^log\[2\]\.hours: 3 h does not/,
    ],
    ['no datum', { ...maturity, datum_degC: undefined }, /^datum_degC: is missing/],
    ['a category that is none', { ...life, category: 'C6' }, /^category: expected one of "C1"/],
    ['an unknown key', { ...life, coating: 1 }, /^coating: is not a key/],
  ])('refuses %s in one line, exit 2', (_, input, expected) => {
    const { status, stdout, stderr } = calc(input);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.replace(/^\S*onepour:? /, '')).toMatch(expected);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
