import { describe, expect, it } from 'vitest';
import { judgeEarlyAge } from '../../../src/assess/yard/early-age.ts';
import { strengthByEurocode } from '../../../src/engine/material/strength-at-age.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { KindAndBody } from '../../../src/records/record.ts';
import { tellEarlyAge } from '../../../src/say/piece-words.ts';
import { demoFile, PieceTablet, pieceOf } from './yard-sample.ts';

/** Pour T14 asks for 15 MPa before lifting out. */
const sample = pieceOf(demoFile(), 'P12', '1');
const HOUR = 3_600_000;

function result(specimen: 'cylinder' | 'cube', age_hours: number, ...values_MPa: readonly number[]): KindAndBody {
  return { kind: 'strength-result', body: { specimen, age_hours, values_MPa, report: null } };
}

/** A piece poured so many hours ago. */
function judge(hours: number, results: readonly KindAndBody[], pour: string | null = 'T14') {
  const tablet = new PieceTablet(1, sample);
  const poured = tablet.write('foreman', null, { kind: 'poured', body: { reason: null } });
  for (const draft of results) tablet.write('qa', null, draft);
  const state = foldPiece(sample.plan.piece, tablet.known.values());
  return judgeEarlyAge(sample.context, sample.plan, state, pour, Date.parse(poured.measuredAt) + hours * HOUR);
}

describe('strength at an early age', () => {
  it('is nothing before it is poured', () => {
    const state = foldPiece(sample.plan.piece, []);
    expect(judgeEarlyAge(sample.context, sample.plan, state, 'T14', Date.now())).toMatchObject({
      kind: 'not poured',
      age: null,
      model: null,
      mayNot: [],
    });
  });
  it.each([1, 18, 72, 24 * 90])('is never known by a model alone: %s h', (hours) => {
    const answer = judge(hours, []);
    expect(answer).toMatchObject({ kind: 'by model only', age: hours, asked: 15 });
    expect(answer.model).toBe(strengthByEurocode(40, 'S', hours / 24).mean);
    expect(answer.mayNot[0]).toBe('do not lift it out of the form, or turn or tilt it until cylinders show 15 MPa');
    expect(tellEarlyAge(answer)[0]).toMatch(/^NOT KNOWN: 15 MPa asked/);
  });
  it.each([
    [[result('cylinder', 18, 15, 17, 18)], 'reached'],
    [[result('cylinder', 18, 14.9, 17, 18)], 'not reached'],
    [[result('cylinder', 12, 9), result('cylinder', 18, 16)], 'reached'],
    [[result('cylinder', 18, 16), result('cylinder', 18, 14)], 'not reached'],
    [[result('cube', 18, 40)], 'by model only'],
    [[result('cylinder', 40, 30)], 'by model only'],
  ] as const)('is what the least cylinder says: %j: %s', (results, kind) => {
    expect(judge(20, results).kind).toBe(kind);
  });
  it('says what was left out, and that cubes are no cylinders', () => {
    expect(judge(20, [result('cube', 18, 40), result('cylinder', 40, 30)]).notes).toEqual([
      expect.stringContaining('by model only'),
      'cubes are recorded and not turned into strengths of cylinders',
      'specimens that are older than the piece are left out: look at whose they are',
    ]);
  });
  it('is not judged where nobody said what is needed', () => {
    const answer = judge(20, [result('cylinder', 18, 40)], null);
    expect(answer.kind).toBe('no strength asked');
    expect(answer.mayNot[0]).toContain('until the lifting design says');
  });
  it('leaves the word to the lifting design even where it is reached', () => {
    const answer = judge(20, [result('cylinder', 18, 40)]);
    expect(answer.mayNot).toEqual([
      'lift it only as the lifting design says, at its lifting inserts',
      'connections have a strength of their own to wait for',
      'fixing inserts are not lifting inserts unless their maker rates them so',
    ]);
    expect(tellEarlyAge(answer).join(' ')).not.toMatch(/ready/i);
  });
  it('counts from the latest pour, so that it is never taken for older than it is', () => {
    const tablet = new PieceTablet(1, sample);
    tablet.write('foreman', null, { kind: 'poured', body: { reason: null } }, 0);
    const last = tablet.write('foreman', null, { kind: 'poured', body: { reason: 'second load' } }, 120);
    const state = foldPiece(sample.plan.piece, tablet.known.values());
    const answer = judgeEarlyAge(sample.context, sample.plan, state, 'T14', Date.parse(last.measuredAt) + HOUR);
    expect(answer.age).toBe(1);
  });
});
