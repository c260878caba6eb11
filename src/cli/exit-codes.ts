/** Exit codes of the shell command, as the README lists them. */
export const EXIT = {
  /** Everything asked was computed and passes. */
  pass: 0,
  /** Something fails, is not covered or cannot be computed. */
  notPassed: 1,
  /** The input or the call is wrong. */
  wrongInput: 2,
  /** Nothing fails, but the strength of something was not checked: no action is given. */
  notChecked: 3,
} as const;

/** The call or a file cannot be used: the text is one clear line for standard error, exit code 2. */
export class UsageError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UsageError';
  }
}
