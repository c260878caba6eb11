/** What the code on a sheet says: which piece, and by which state of the job the sheet was printed. */
export interface PieceCode {
  readonly project: string;
  readonly mark: string;
  /** Null on a sheet that holds for every piece of the mark. */
  readonly serial: string | null;
  readonly letter: string;
  /** First digits of the job's fingerprint, see `fingerprintJob`. */
  readonly fingerprint: string;
}

const START = 'onepour:piece/';

/** What is written where there is no serial. */
const NO_SERIAL = '-';

/** Writes the code of a sheet: enough to open the right piece, and to tell an old print. */
export function writePieceCode({ project, mark, serial, letter, fingerprint }: PieceCode): string {
  const parts = [project, mark, serial ?? NO_SERIAL, letter, fingerprint].map(encodeURIComponent);
  return `${START}${parts.join('/')}`;
}

/** Reads what a code says; null where it is no code of a piece. */
export function readPieceCode(text: string): PieceCode | null {
  if (!text.startsWith(START)) return null;
  const parts = text.slice(START.length).split('/');
  if (parts.length !== 5) return null;
  let read: string[];
  try {
    read = parts.map(decodeURIComponent);
  } catch {
    return null;
  }
  const [project, mark, serial, letter, fingerprint] = read as [string, string, string, string, string]; // five, as counted above
  return { project, mark, serial: serial === NO_SERIAL ? null : serial, letter, fingerprint };
}
