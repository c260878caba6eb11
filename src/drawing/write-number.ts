/**
 * A coordinate as files of drawings hold it: at most `digits` decimals, no exponent, no trailing zeros, no negative zero.
 * Throws RangeError when it is not a finite number: a mark that lies nowhere is a fault of whoever drew it.
 */
export function writeCoordinate(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate of a drawing is ${value}; expected a finite number`);
  const text = value.toFixed(digits);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}
