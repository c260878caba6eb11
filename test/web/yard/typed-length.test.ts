import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  isFull,
  type PadKey,
  type PadRules,
  pressPad,
  readKeyboardKey,
  readTyped,
} from '../../../src/web/yard/state/typed-length.ts';

const RULES: PadRules = { longest: 5500, hasMinus: false };

function type(text: string, rules: PadRules): string {
  return [...text].reduce((typed, key) => pressPad(typed, key === '-' ? 'minus' : (key as PadKey), rules), '');
}

describe('a length that is typed', () => {
  it('goes on by itself exactly when no digit can follow', () => {
    expect(isFull(type('550', RULES), RULES)).toBe(false);
    expect(isFull(type('551', RULES), RULES)).toBe(true);
    expect(isFull(type('120', RULES), RULES)).toBe(false);
    expect(isFull(type('1200', RULES), RULES)).toBe(true);
    expect(isFull('', RULES)).toBe(false);
  });

  it('takes every whole length up to the longest, and gives it back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5500 }), (length) => {
        let typed = '';
        for (const digit of String(length)) {
          expect(isFull(typed, RULES)).toBe(false);
          typed = pressPad(typed, digit as PadKey, RULES);
        }
        expect(readTyped(typed)).toBe(length);
      }),
    );
  });

  it('takes no digit beyond the last, and none of a zero in front', () => {
    expect(type('12345', RULES)).toBe('1234');
    expect(type('007', RULES)).toBe('7');
  });

  it('has a minus only where one makes sense, and never gives a negative zero', () => {
    const level: PadRules = { longest: 300, hasMinus: true };
    expect(readTyped(type('-3', level))).toBe(-3);
    expect(type('3-', level)).toBe('-3');
    expect(Object.is(readTyped(type('-0', level)), 0)).toBe(true);
    expect(type('-3', RULES)).toBe('3');
    expect(readTyped('-')).toBeNull();
  });

  it('is taken back digit by digit', () => {
    expect(pressPad('120', 'back', RULES)).toBe('12');
    expect(pressPad('', 'back', RULES)).toBe('');
  });

  it('knows the keys of a keyboard', () => {
    expect(readKeyboardKey('7')).toBe('7');
    expect(readKeyboardKey('Enter')).toBe('done');
    expect(readKeyboardKey('Backspace')).toBe('back');
    expect(readKeyboardKey('a')).toBeNull();
    expect(readKeyboardKey('F1')).toBeNull();
  });
});
