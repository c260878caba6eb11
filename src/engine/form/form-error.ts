/** What of the input cannot be worked with. */
export type FormErrorAbout = 'edge' | 'along' | 'fromOutside' | 'guess' | 'measured';

/** A place in a form that cannot be computed, said in plain words. */
export class FormError extends Error {
  /** The part of the input to change. */
  readonly about: FormErrorAbout;

  constructor(about: FormErrorAbout, message: string) {
    super(message);
    this.name = 'FormError';
    this.about = about;
  }
}
