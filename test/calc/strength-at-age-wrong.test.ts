import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const right = { calc: 'strength-at-age', model: 'EN 1992-1-1', cement: 'N', strength28_MPa: 40, age_days: 7 };
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));

describe('wrong inputs of strength-at-age', () => {
  refuseAll(right, [
    ['no model', without('model'), 'model', /"EN 1992-1-1" or "ACI 209"/],
    ['no cement', without('cement'), 'cement', /one of "R", "N", "S"/],
    ['no strength', without('strength28_MPa'), 'strength28_MPa', /cylinder strength/],
    ['no age', without('age_days'), 'age_days', /the age/],
    ['another model', { ...right, model: 'EN 1992-1-2' }, 'model', /"ACI 209"/],
    ['a model in small letters', { ...right, model: 'aci 209' }, 'model', /"ACI 209"/],
    ['another cement', { ...right, cement: 'X' }, 'cement', /"ACI type III steam"/],
    ['a cement of the other model', { ...right, cement: 'ACI type I moist' }, 'cement', /not a cement of EN 1992-1-1/],
    [
      'a European cement by ACI',
      { ...right, model: 'ACI 209' },
      'cement',
      /not a cement of ACI 209.*"ACI type I moist"/,
    ],
    ['no strength at all', { ...right, strength28_MPa: 0 }, 'strength28_MPa', /above 0/],
    ['a negative strength', { ...right, strength28_MPa: -40 }, 'strength28_MPa', /above 0/],
    ['strength as text', { ...right, strength28_MPa: '40' }, 'strength28_MPa', /MPa/],
    ['strength in Pa', { ...right, strength28_MPa: 40e6 }, 'strength28_MPa', /at most 200 MPa/],
    ['weaker than the standard', { ...right, strength28_MPa: 11.9 }, 'strength28_MPa', /outside EN 1992-1-1.*12 to 90/],
    [
      'stronger than the standard',
      { ...right, strength28_MPa: 90.1 },
      'strength28_MPa',
      /outside EN 1992-1-1.*12 to 90/,
    ],
    ['no age at all', { ...right, age_days: 0 }, 'age_days', /above 0/],
    ['a negative age', { ...right, age_days: -1 }, 'age_days', /above 0/],
    ['an endless age', { ...right, age_days: Number.POSITIVE_INFINITY }, 'age_days', /days/],
    ['age in hours by its key', { ...without('age_days'), age_hours: 48 }, 'age_days', /the age/],
    ['age null', { ...right, age_days: null }, 'age_days', /the age/],
    ['a tested strength of nothing', { ...right, tested_MPa: 0 }, 'tested_MPa', /tested at that age/],
    ['an unknown key', { ...right, curing: 'steam' }, 'curing', /is not a key/],
  ]);
});
