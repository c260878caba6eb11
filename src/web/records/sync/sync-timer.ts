/** How long the device waits after a round that failed, and at most [ms]. */
const FIRST_WAIT = 1000;
const LONGEST_WAIT = 60_000;
/** How often a page in sight asks for what others wrote [ms]. */
const ASKS_EVERY = 20_000;
/** Several records written one after another go in one round [ms]. */
const AFTER_WRITING = 300;
/** A page that is asleep may hold the lock; what it does twice is no harm [ms]. */
const LOCK_PATIENCE = 30_000;
const LOCK = 'onepour-yard-sync';

/** Decides when a round is run: one at a time in all pages of this browser, again after growing waits while the server does not answer. */
export class SyncTimer {
  readonly #round: () => Promise<boolean>;
  #running: Promise<void> | null = null;
  #next: Promise<void> | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #isSoon = false;
  #failures = 0;

  /** @param round sends and fetches, and never rejects; true: it came to its end */
  constructor(round: () => Promise<boolean>) {
    this.#round = round;
    addEventListener('online', () => void this.now());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') void this.now();
    });
  }

  /** Runs a round that begins now, or as soon as the one that runs has ended: several callers share it. */
  now(): Promise<void> {
    if (this.#running === null) return this.#run();
    this.#next ??= this.#running.then(() => {
      this.#next = null;
      return this.#run();
    });
    return this.#next;
  }

  /** Runs one in a moment: something was written. */
  soon(): void {
    // Not put off by the next record: who writes without a pause is sent too.
    if (!this.#isSoon) this.#wait(AFTER_WRITING);
    this.#isSoon = true;
  }

  #run(): Promise<void> {
    this.#stop();
    const running = this.#runAlone().then((isDone) => {
      this.#running = null;
      this.#failures = isDone ? 0 : this.#failures + 1;
      if (this.#timer === null) this.#wait(isDone ? ASKS_EVERY : this.#retryWait());
    });
    this.#running = running;
    return running;
  }

  /** Without locks (a page that is not served safely has none) rounds of two pages may meet: everything in them may be done twice. */
  async #runAlone(): Promise<boolean> {
    if (!('locks' in navigator)) return this.#round();
    try {
      return await navigator.locks.request(LOCK, { signal: AbortSignal.timeout(LOCK_PATIENCE) }, () => this.#round());
    } catch {
      // The round throws nothing: the lock was not had in time, or not at all.
      return this.#round();
    }
  }

  #retryWait(): number {
    return Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (this.#failures - 1));
  }

  #wait(ms: number): void {
    this.#stop();
    this.#timer = setTimeout(() => {
      this.#timer = null;
      // Out of sight nobody waits for what others wrote; what this page wrote is sent at once.
      if (ms === ASKS_EVERY && document.visibilityState !== 'visible') this.#wait(ASKS_EVERY);
      else void this.now();
    }, ms);
  }

  #stop(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#isSoon = false;
  }
}
