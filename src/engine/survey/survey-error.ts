/** What of a survey cannot be worked with. */
export type SurveyErrorAbout = 'control' | 'insert' | 'measured';

/** A survey from which nothing can be computed, said in plain words. */
export class SurveyError extends Error {
  /** The part of the input to change. */
  readonly about: SurveyErrorAbout;

  constructor(about: SurveyErrorAbout, message: string) {
    super(message);
    this.name = 'SurveyError';
    this.about = about;
  }
}
