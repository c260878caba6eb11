import { effect, signal } from '@preact/signals';

/** Units in which a person reads and types. Documents stay in mm, kN, kNm, MPa, Nm. */
export type UnitSystem = 'metric' | 'US';

export type Quantity =
  | 'length'
  | 'force'
  | 'moment'
  | 'stress'
  | 'torque'
  | 'area'
  | 'ratio'
  | 'number'
  | 'degrees'
  | 'days';

interface Unit {
  readonly name: string;
  /** How many of the document's unit one of this is. */
  readonly factor: number;
  /** Digits after the point, at most. */
  readonly digits: number;
  /** Significant digits, where the size of the value decides how many decimals say something; null: `digits` alone. */
  readonly significant: number | null;
}

const LB_FORCE = 4.4482216152605;
const INCH = 25.4;

const UNITS: Readonly<Record<UnitSystem, Readonly<Record<Quantity, Unit>>>> = {
  metric: {
    length: { name: 'mm', factor: 1, digits: 1, significant: null },
    force: { name: 'kN', factor: 1, digits: 2, significant: 3 },
    moment: { name: 'kNm', factor: 1, digits: 3, significant: 3 },
    stress: { name: 'MPa', factor: 1, digits: 1, significant: null },
    torque: { name: 'Nm', factor: 1, digits: 0, significant: null },
    area: { name: 'mm²', factor: 1, digits: 0, significant: null },
    ratio: { name: '', factor: 1, digits: 2, significant: null },
    number: { name: '', factor: 1, digits: 3, significant: null },
    degrees: { name: '°', factor: 1, digits: 1, significant: null },
    days: { name: 'days', factor: 1, digits: 0, significant: null },
  },
  US: {
    length: { name: 'in', factor: INCH, digits: 4, significant: null },
    force: { name: 'kip', factor: LB_FORCE, digits: 3, significant: 3 },
    moment: { name: 'kip·ft', factor: (LB_FORCE * INCH * 12) / 1000, digits: 3, significant: 3 },
    stress: { name: 'psi', factor: LB_FORCE / (INCH * INCH), digits: 0, significant: 4 },
    torque: { name: 'lbf·ft', factor: (LB_FORCE * INCH * 12) / 1000, digits: 0, significant: null },
    area: { name: 'in²', factor: INCH * INCH, digits: 2, significant: null },
    ratio: { name: '', factor: 1, digits: 2, significant: null },
    number: { name: '', factor: 1, digits: 3, significant: null },
    degrees: { name: '°', factor: 1, digits: 1, significant: null },
    days: { name: 'days', factor: 1, digits: 0, significant: null },
  },
};

const KEPT = 'onepour-units';

export const units = signal<UnitSystem>(localStorage.getItem(KEPT) === 'US' ? 'US' : 'metric');
effect(() => localStorage.setItem(KEPT, units.value));

/** The unit's name in the units of this person: `mm`, `kip·ft`; empty where there is none. */
export function unitOf(quantity: Quantity): string {
  return UNITS[units.value][quantity].name;
}

/** Sixteenths of an inch as rules have them: `3-5/8`. */
function writeInches(inches: number): string {
  const sixteenths = Math.round(inches * 16);
  // Where no sixteenth is meant, decimals say more than a rounded fraction.
  if (Math.abs(inches * 16 - sixteenths) > 0.05) return trim(inches.toFixed(2));
  const sign = sixteenths < 0 ? '−' : '';
  const whole = Math.floor(Math.abs(sixteenths) / 16);
  const part = Math.abs(sixteenths) % 16;
  if (part === 0) return `${sign}${whole}`;
  const common = part % 8 === 0 ? 8 : part % 4 === 0 ? 4 : part % 2 === 0 ? 2 : 1;
  const fraction = `${part / common}/${16 / common}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${whole}-${fraction}`;
}

/** Thousands set apart by a thin space, as ISO 80000-1 has it. */
function setApart(text: string): string {
  return text.replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f');
}

function trim(text: string): string {
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed.replace('-', '−');
}

/** A value of a document in this person's units, without the unit. */
export function writeValue(quantity: Quantity, value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : '–';
  const { factor, digits, significant } = UNITS[units.value][quantity];
  const shown = value / factor;
  if (quantity === 'length' && units.value === 'US') return writeInches(shown);
  if (quantity === 'ratio') return shown.toFixed(digits);
  if (quantity === 'area' && digits === 0) return setApart(trim(shown.toFixed(digits)));
  if (significant === null || shown === 0) return trim(shown.toFixed(digits));
  const before = Math.floor(Math.log10(Math.abs(shown))) + 1;
  // Of a large value the last digits say nothing: 51 490 psi, not 51 488.
  if (digits === 0 && before > significant) return setApart(String(Number(shown.toPrecision(significant))));
  return trim(shown.toFixed(Math.min(digits, Math.max(0, significant - before))));
}

/** Rounding of a search for a largest load. */
const ROUNDING = 1e-9;

/** A largest value with its unit, rounded down: what is shown must hold. */
export function writeLimit(quantity: Quantity, value: number): string {
  if (!Number.isFinite(value)) return writeQuantity(quantity, value);
  const { factor, digits, significant, name } = UNITS[units.value][quantity];
  const shown = (value / factor) * (1 + ROUNDING);
  const before = shown === 0 ? 1 : Math.floor(Math.log10(Math.abs(shown))) + 1;
  const places = significant === null ? digits : Math.min(digits, Math.max(0, significant - before));
  const down = Math.floor(shown * 10 ** places) / 10 ** places;
  return `${down === 0 ? '0' : down.toFixed(places)}${name === '' ? '' : ` ${name}`}`;
}

/** A value with its unit: `125 mm`, `4-15/16 in`, `12.4 kN`. */
export function writeQuantity(quantity: Quantity, value: number): string {
  const unit = unitOf(quantity);
  return unit === '' || unit === '°'
    ? `${writeValue(quantity, value)}${unit}`
    : `${writeValue(quantity, value)} ${unit}`;
}

/** The writer of lengths and strengths in this person's units, for sentences; for use while a screen is made. */
export const personWriter = {
  length: (mm: number) => writeQuantity('length', mm),
  strength: (mpa: number) => writeQuantity('stress', mpa),
};

/** What a person typed, or why it is no value. */
export type Typed = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly expected: string };

/** Feet, inches and fractions as they are written in the trade: `3'-4 1/2"`, `40-1/2`, `1/4`, `40.5`. */
function readInches(text: string): number | null {
  const parts =
    /^(-)?(?:(\d+(?:\.\d+)?)\s*'\s*-?\s*)?(?:(\d+(?:\.\d+)?)(?:\s*[- ]\s*(\d+)\/(\d+))?|(\d+)\/(\d+))?\s*"?$/.exec(
      text,
    );
  if (parts === null) return null;
  const [, sign, feet, whole, top = parts[6], bottom = parts[7]] = parts;
  if (feet === undefined && whole === undefined && top === undefined) return null;
  const fraction = top === undefined ? 0 : Number(top) / Number(bottom);
  const inches = Number(feet ?? 0) * 12 + Number(whole ?? 0) + fraction;
  if (!Number.isFinite(inches)) return null;
  return sign === undefined ? inches : -inches;
}

/**
 * What a person typed in these units, as a value of a document. Decimal points and commas work; the unit may stand behind, also the other system's
 * (`4 in` in a metric field).
 */
export function readQuantity(quantity: Quantity, typed: string): Typed {
  const text = typed.trim().replaceAll('\u202f', '').replace('−', '-').replace(',', '.');
  const expected = `a number${unitOf(quantity) === '' ? '' : ` in ${unitOf(quantity)}`}`;
  for (const system of [units.value, units.value === 'metric' ? 'US' : 'metric'] as const) {
    const { name, factor } = UNITS[system][quantity];
    const hasName = name !== '' && text.toLowerCase().endsWith(name.toLowerCase());
    const isOwn = system === units.value;
    const isInches = quantity === 'length' && system === 'US' && (isOwn || hasName || /["']/.test(text));
    if (!isOwn && !hasName && !isInches) continue;
    const bare = hasName ? text.slice(0, -name.length).trim() : text;
    const shown = isInches ? readInches(bare) : /^-?(\d+\.?\d*|\.\d+)$/.test(bare) ? Number(bare) : null;
    // A micrometre: what is typed in inches comes back as it was typed.
    if (shown !== null) return { ok: true, value: Math.round(shown * factor * 1e6) / 1e6 };
  }
  return { ok: false, expected };
}
