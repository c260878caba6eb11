/** What may be wrong between this device and the server. */
export interface DeviceTroubles {
  /** Server's clock less this device's [s]; null: never heard. */
  readonly clock_s: number | null;
  /** Texts kept aside of which nobody has read yet. */
  readonly asides: number;
  /** This device goes on under a new id. */
  readonly isForked: boolean;
  /** Texts that a newer version of the program wrote. */
  readonly unread: number;
  /** Why the server would not take something. */
  readonly refused: string | null;
  /** Why the server would not give what is new of the job. */
  readonly withheld: string | null;
  /** Why this device could not take in what the server has. */
  readonly fault: string | null;
  /** The server was put back to an earlier state. */
  readonly isPutBack: boolean;
  /** Another page of this browser is of a newer version. */
  readonly isOutdated: boolean;
}

/** A clock that is off by less is nothing that a person must know of [s]. */
const CLOCK_TOLERANCE_S = 300;

const UNITS = [
  [86_400, 'day'],
  [3_600, 'hour'],
  [60, 'minute'],
] as const;

/** What a person must know of it, one sentence each; null: nothing. */
export function tellProblem(troubles: DeviceTroubles): string | null {
  const { clock_s, asides, isForked, unread, refused, withheld, fault, isPutBack, isOutdated } = troubles;
  const told = [
    isOutdated
      ? 'A newer version of this page is open in this browser: this one can write nothing. Load it anew.'
      : null,
    refused === null
      ? null
      : `The server did not take everything: ${endSentence(refused)} It stays on this device and is sent again.`,
    withheld === null
      ? null
      : `The server gives nothing new of this job: ${endSentence(withheld)} What is written here is kept; it is asked again.`,
    fault === null ? null : `This device did not take in everything: ${endSentence(fault)} It is tried again.`,
    clock_s === null ? null : tellClock(clock_s),
    asides === 0
      ? null
      : `${count(asides, 'text was', 'texts were')} put aside, because the id stands for other bytes or the server cannot read it. Nothing is deleted; tell the office.`,
    isForked
      ? 'Another device wrote under the name of this one: it was copied or put back to an earlier state. This device goes on under a new name; nothing is lost.'
      : null,
    unread === 0
      ? null
      : `${count(unread, 'record was', 'records were')} written by a newer version of this page: kept, and shown once this one is renewed.`,
    isPutBack
      ? 'The server was put back to an earlier state: everything that this device has is sent to it again.'
      : null,
  ];
  const sentences = told.filter((sentence) => sentence !== null);
  return sentences.length === 0 ? null : sentences.join(' ');
}

/** How far this device's clock is off; null: not so far that it matters. */
function tellClock(clock_s: number): string | null {
  const off = Math.abs(clock_s);
  if (off < CLOCK_TOLERANCE_S) return null;
  const [unit_s, name] = UNITS.find(([seconds]) => off >= 0.9 * seconds) ?? UNITS[2];
  const times = Math.round(off / unit_s);
  return `This device's clock is ${count(times, name, `${name}s`)} ${clock_s < 0 ? 'ahead' : 'behind'}. It orders nothing, but the times on the records are wrong: set it.`;
}

function endSentence(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`;
}

function count(n: number, one: string, more: string): string {
  return `${n} ${n === 1 ? one : more}`;
}
