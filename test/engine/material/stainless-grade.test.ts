import { describe, expect, it } from 'vitest';
import { chooseStainless, isAtLeast, type StainlessSite } from '../../../src/engine/material/stainless-grade.ts';

const inland: StainlessSite = {
  chlorides: {
    kind: 'distances',
    sea: Number.POSITIVE_INFINITY,
    saltedRoad: Number.POSITIVE_INFINITY,
    isMildCoast: false,
  },
  sulphurDioxide: 5,
  washing: 'rain',
};
const by = (sea: number, saltedRoad = Number.POSITIVE_INFINITY, isMildCoast = false): StainlessSite => ({
  ...inland,
  chlorides: { kind: 'distances', sea, saltedRoad, isMildCoast },
});

describe('stainless steel by EN 1993-1-4, Annex A', () => {
  // Published: Table A.1 (H6-10); both sides of each limit.
  it.each([
    [10.1, 0],
    [10, -3],
    [1.01, -3],
    [1, -7],
    [0.26, -7],
    [0.25, -15],
  ])('%d km from the sea: F1 = %d', (sea, F1) => {
    expect(chooseStainless(by(sea)).chlorides).toBe(F1);
  });

  it.each([
    [0.11, 0],
    [0.1, -3],
    [0.011, -3],
    [0.01, -7],
  ])('%d km from a salted road: F1 = %d', (road, F1) => {
    expect(chooseStainless(by(Number.POSITIVE_INFINITY, road)).chlorides).toBe(F1);
  });

  it('takes the worse of sea and road, and the milder coast as such', () => {
    expect(chooseStainless(by(5, 0.005)).chlorides).toBe(-7);
    expect(chooseStainless(by(0.1, 0.005)).chlorides).toBe(-15);
    expect(chooseStainless(by(0.1, 0.05, true)).chlorides).toBe(-10);
    expect(chooseStainless({ ...inland, chlorides: { kind: 'tunnel' } }).chlorides).toBe(-10);
  });

  it.each([
    [9.9, 0],
    [10, -5],
    [90, -5],
    [91, -10],
  ])('%d µg/m³ of sulphur dioxide: F2 = %d', (sulphurDioxide, F2) => {
    expect(chooseStainless({ ...inland, sulphurDioxide }).sulphurDioxide).toBe(F2);
  });

  // Bands of Table A.2 and steels of Table A.3 (H6-11, recalled), reached by sums of the parts:
  // 0; −3 − 3 = −6; −7; −7 − 7 = −14; −15; −10 − 10 = −20; −15 − 7 = −22.
  it.each([
    ['inland, washed', inland, 0, 'II', '1.4301'],
    ['5 km, cleaned', { ...by(5), washing: 'regime' }, -6, 'II', '1.4301'],
    ['0.5 km, washed', by(0.5), -7, 'III', '1.4401'],
    ['0.5 km, not washed', { ...by(0.5), washing: 'none' }, -14, 'III', '1.4401'],
    ['at the sea, washed', by(0.1), -15, 'IV', '1.4462'],
    ['tunnel, dirty air', { chlorides: { kind: 'tunnel' }, sulphurDioxide: 200, washing: 'rain' }, -20, 'IV', '1.4462'],
    ['at the sea, not washed', { ...by(0.1), washing: 'none' }, -22, 'V', '1.4529'],
  ] as const)('%s', (_, site, factor, resistanceClass, grade) => {
    expect(chooseStainless(site)).toMatchObject({ factor, resistanceClass, grade });
  });

  it('indoors is class I whatever else is given', () => {
    expect(chooseStainless({ chlorides: { kind: 'internal' }, sulphurDioxide: 100, washing: 'none' })).toMatchObject({
      factor: 1,
      resistanceClass: 'I',
      grade: '1.4301',
    });
  });

  it('orders the steels', () => {
    expect(isAtLeast('1.4401', '1.4301')).toBe(true);
    expect(isAtLeast('1.4401', '1.4401')).toBe(true);
    expect(isAtLeast('1.4401', '1.4462')).toBe(false);
  });
});
