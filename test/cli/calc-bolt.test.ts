import { describe, expect, it } from 'vitest';
import { RIGHT } from '../calc/bolts.ts';
import { onepour } from './run-command.ts';

const calc = (input: object) => onepour(['calc', '-'], JSON.stringify(input));

describe('onepour calc: a bolt', () => {
  // By hand: 3 + 15 + 16 = 34 → 35, which engages 17 = 8.5 pitches (see test/calc/bolt.test.ts).
  it('is answered with contract and engine', () => {
    const { status, stdout, stderr } = calc({ ...RIGHT, id: 'kit bag 12', note: 'keys of one own' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      contract: 1,
      length_mm: 35,
      engagement_mm: 17,
      turnsByHand: 8.5,
      ok: true,
    });
  });
  it('that does not fit is an answer, not a fault', () => {
    const { status, stdout } = calc({ ...RIGHT, stockLengths_mm: [30, 60] });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({ length_mm: null, ok: false });
  });
  it.each([
    ['a missing key', { ...RIGHT, nutFactor: undefined }, /^[^\n]*nutFactor: expected the nut factor K of T = K d F/],
    ['a wrong finish', { ...RIGHT, boltFinish: 'zn' }, /boltFinish: expected a finish, one of "plain"/],
    ['a range backward', { ...RIGHT, packers_mm: [9, 3] }, /packers_mm: \[9, 3\] runs backward, expected/],
    ['an unknown key', { ...RIGHT, torque: 80 }, /torque: is not a key of this calculation; expected/],
  ])('%s gives one line and exit code 2', (_, input, expected) => {
    const { status, stdout, stderr } = calc(input);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(expected);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });
});
