/** One thing wrong in what was read. Row and column as a person sees them in a spreadsheet (the heading is row 1). */
export interface Fault {
  readonly file: string;
  readonly row?: number;
  readonly column?: string;
  /** Where in the document, e.g. `job.panels[2].thickness_mm`; empty for a file as a whole. */
  readonly path: string;
  /** What is written there. */
  readonly value: string;
  readonly expected: string;
  /** The whole sentence, with the place in front. */
  readonly message: string;
}

/** A fault before its place in a file is known: only the document's own path. */
export interface DocumentFault {
  readonly path: readonly (string | number)[];
  readonly value: string;
  readonly expected: string;
  /** What is wrong, without the place; it starts with the thing that is meant. */
  readonly text: string;
}

/** A path as it is written: `job.panels[2].thickness_mm`. */
export function showPath(path: readonly (string | number)[]): string {
  return path.reduce<string>((shown, step) => {
    if (typeof step === 'number') return `${shown}[${step}]`;
    return shown === '' ? step : `${shown}.${step}`;
  }, '');
}

/** A value as it is shown in a message: short, texts in quotes. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const shown = JSON.stringify(value) ?? String(value);
  return shown.length > 80 ? `${shown.slice(0, 77)}…` : shown;
}

/** Puts a document's fault into a file of JSON. */
export function placeInFile(file: string, fault: DocumentFault): Fault {
  const path = showPath(fault.path);
  const { value, expected, text } = fault;
  return { file, path, value, expected, message: `${file}${path === '' ? '' : `, ${path}`}: ${text}` };
}
