/** A length that is being typed, as its digits stand: `-` only in front. Empty: nothing typed. */
export type TypedLength = string;

/** What a key of the pad, or of a keyboard, does. */
export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | 'minus' | 'back';

export interface PadRules {
  /** No such length is longer [mm]. */
  readonly longest: number;
  readonly hasMinus: boolean;
}

function countDigits(typed: TypedLength): number {
  return typed.replace('-', '').length;
}

/** As many digits as any such length can have. */
function countMost({ longest }: PadRules): number {
  return String(Math.ceil(longest)).length;
}

/** What stands there after a key. A digit beyond the last is not taken; a zero in front gives way to the next digit. */
export function pressPad(typed: TypedLength, key: PadKey, rules: PadRules): TypedLength {
  const { hasMinus } = rules;
  if (key === 'back') return typed.slice(0, -1);
  if (key === 'minus') {
    if (!hasMinus) return typed;
    return typed.startsWith('-') ? typed.slice(1) : `-${typed}`;
  }
  if (typed === '0') return key;
  if (typed === '-0') return `-${key}`;
  return countDigits(typed) >= countMost(rules) ? typed : typed + key;
}

/** Whether no digit can follow, since no such length would be as long: nobody needs to say "done" then. */
export function isFull(typed: TypedLength, rules: PadRules): boolean {
  const value = readTyped(typed);
  if (value === null) return false;
  return countDigits(typed) >= countMost(rules) || 10 * Math.abs(value) > rules.longest;
}

/** The length [mm]; null where no digit was typed. */
export function readTyped(typed: TypedLength): number | null {
  // No negative zero: a record keeps what is meant.
  return countDigits(typed) === 0 ? null : Number(typed) + 0;
}

/** What a key of a keyboard means here; null: nothing. */
export function readKeyboardKey(key: string): PadKey | 'done' | null {
  if (/^[0-9]$/.test(key)) return key as PadKey; // one of the ten, as just seen
  if (key === 'Backspace') return 'back';
  if (key === '-') return 'minus';
  return key === 'Enter' ? 'done' : null;
}
