/** The office cannot be started: the text is one clear line for people. */
export class OfficeError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'OfficeError';
  }
}
