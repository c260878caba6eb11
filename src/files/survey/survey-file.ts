import type { Fault } from '../../job/fault.ts';

/** What stands between the cells of a line; ' ' is any number of spaces and tabs. */
export type SurveySeparator = ';' | '\t' | ',' | '|' | ' ';

/**
 * How sure a part of a reading is: given by a person; stated by the heading; clear from the cells; assumed, since nothing in the file
 * tells.
 */
export type Sureness = 'given' | 'stated' | 'clear' | 'assumed';

/** One choice of how a file is read. */
export interface Told<T> {
  readonly value: T;
  readonly how: Sureness;
}

/** Which cell of a line is which, counted from 0: x to the right or east, y up or north, z the height; null: there is none. */
export interface SurveyColumns {
  readonly name: number | null;
  readonly x: number;
  readonly y: number;
  readonly z: number | null;
  readonly code: number | null;
}

/** How a file was read. A person sees it, and may choose otherwise. */
export interface SurveyReading {
  readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252';
  readonly separator: Told<SurveySeparator>;
  readonly decimal: Told<'.' | ','>;
  readonly unit: Told<'m' | 'mm'>;
  readonly columns: Told<SurveyColumns>;
  /** Line of the heading, from 1; null: there is none. */
  readonly heading: number | null;
}

/** What a person chose; the rest is found. */
export interface SurveyChoices {
  readonly separator?: SurveySeparator;
  readonly decimal?: '.' | ',';
  readonly unit?: 'm' | 'mm';
  readonly columns?: SurveyColumns;
}

/** One point, in mm, in the frame of the instrument. */
export interface SurveyRow {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly name: string | null;
  readonly at_mm: readonly [x: number, y: number] | readonly [x: number, y: number, z: number];
  readonly code: string | null;
}

/** A file of points as read. */
export interface SurveyFile {
  /** Null: no line of it holds two numbers. */
  readonly reading: SurveyReading | null;
  readonly rows: readonly SurveyRow[];
  readonly faults: readonly Fault[];
  /** Lines, from 1, that hold no point: heading, comments, titles. */
  readonly passedOver: readonly number[];
  /** Names that stand at several points: measured again, or a slip. */
  readonly repeated: readonly { readonly name: string; readonly lines: readonly number[] }[];
}
