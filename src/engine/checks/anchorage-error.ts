/** A group that cannot be computed at all: the text names the input, its value and what was expected. */
export class AnchorageError extends Error {
  /** Path of the input at fault, as in `AnchorageGroup`. */
  readonly key: string;

  constructor(key: string, message: string) {
    super(`${key}: ${message}`);
    this.name = 'AnchorageError';
    this.key = key;
  }
}
