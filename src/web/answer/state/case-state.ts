import { effect, signal } from '@preact/signals';
import {
  type AnswerSettings,
  type CaseField,
  EMPTY_CASE,
  type KnownField,
  type KnownValues,
  NOTHING_KNOWN,
  type OutOfPlaceCase,
} from '../../../assess/out-of-place/case.ts';
import { propertyClasses } from '../../../engine/hardware/property-classes.ts';
import { threadNames } from '../../../engine/hardware/threads.ts';
import { standardNames } from '../../../engine/standards/standard-name.ts';

const KEPT = 'onepour-answer';

const COUNTS = [0, 1, 2, 3] as const;

interface Kept {
  readonly given: OutOfPlaceCase;
  readonly settings: AnswerSettings;
}

const EMPTY: Kept = { given: EMPTY_CASE, settings: { standard: 'EN 1992-4', known: NOTHING_KNOWN } };

/** Values of an object of known keys, each kept only where it is of a kind that the page itself writes. */
function readValues<T extends object>(empty: T, kept: unknown): T {
  if (typeof kept !== 'object' || kept === null) return empty;
  const known = new Map(Object.entries(kept));
  const values = Object.keys(empty).map((key) => {
    const value: unknown = known.get(key);
    const isPlain = typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean';
    return [key, isPlain ? value : null];
  });
  // Safe: the keys are those of `empty`; values are what this page put there, since nobody else writes under its name.
  return Object.fromEntries(values) as T;
}

/** The document beside the plain values: two texts or nothing. */
function readDocument(kept: unknown): KnownValues['document'] {
  if (typeof kept !== 'object' || kept === null) return null;
  const { document, standard } = kept as Readonly<Record<string, unknown>>;
  return typeof document === 'string' && typeof standard === 'string' ? { document, standard } : null;
}

/** What was typed before on this device; nothing where it cannot be read. */
function readKept(): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return EMPTY;
    const { given, standard, known } = kept as Readonly<Record<string, unknown>>;
    const values = readValues(NOTHING_KNOWN, known);
    const said = readValues(EMPTY_CASE, given);
    const ofDocument = (known as { readonly document?: unknown } | null | undefined)?.document;
    return {
      given: {
        ...said,
        thread: threadNames.find((name) => name === said.thread) ?? null,
        neighbours: COUNTS.find((count) => count === said.neighbours) ?? null,
      },
      settings: {
        standard: standardNames.find((name) => name === standard) ?? EMPTY.settings.standard,
        known: {
          ...values,
          document: readDocument(ofDocument),
          boltClass: propertyClasses.find((name) => name === values.boltClass) ?? null,
        },
      },
    };
  } catch {
    return EMPTY;
  }
}

const kept = readKept();

/** What was said, and what is known besides. */
export const given = signal<OutOfPlaceCase>(kept.given);
export const settings = signal<AnswerSettings>(kept.settings);

/** Counts how often the page was cleared, so that fields forget what was half typed. */
export const clearings = signal(0);

effect(() => {
  const { standard, known } = settings.value;
  localStorage.setItem(KEPT, JSON.stringify({ given: given.value, standard, known }));
});

/** Sets one of the twelve values. */
export function say<F extends CaseField>(field: F, value: OutOfPlaceCase[F]): void {
  given.value = { ...given.value, [field]: value };
}

/** Sets something that is known besides. */
export function know<F extends KnownField>(field: F, value: KnownValues[F]): void {
  settings.value = { ...settings.value, known: { ...settings.value.known, [field]: value } };
}

/** Forgets the case and what was known of its insert; rules and units stay. */
export function clearCase(): void {
  given.value = EMPTY_CASE;
  settings.value = { ...settings.value, known: NOTHING_KNOWN };
  clearings.value += 1;
}
