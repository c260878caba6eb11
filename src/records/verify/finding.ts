/** Where a record stands and what it is, as far as its line or its text says. */
export interface RecordPlace {
  /** Number of its line in the server's log, or of its text in a file; null: it is in none. */
  readonly line: number | null;
  readonly id: string | null;
  readonly device: string | null;
  /** Running number of its device. */
  readonly number: number | null;
  readonly piece: string | null;
  /** When it was typed, by the device's clock. */
  readonly typedAt: string | null;
}

/** Something that is not as it was written. */
export type Finding =
  /** The hash of the text is not the one that was taken in. */
  | { readonly kind: 'text changed'; readonly at: RecordPlace }
  | { readonly kind: 'no record'; readonly at: RecordPlace; readonly why: string }
  /** What the store is searched by is not what the text says. */
  | {
      readonly kind: 'column changed';
      readonly at: RecordPlace;
      readonly column: string;
      readonly stored: string;
      readonly said: string;
    }
  /** Lines of the log are gone. */
  | { readonly kind: 'lines missing'; readonly from: number; readonly to: number }
  /** The record belongs on another line. */
  | { readonly kind: 'out of order'; readonly at: RecordPlace; readonly belongs: number }
  /** A line does not continue the one before it. */
  | { readonly kind: 'log broken'; readonly at: RecordPlace }
  /** Running numbers of a device that are not there. `next`: the first that is there again. */
  | {
      readonly kind: 'records missing';
      readonly device: string;
      readonly from: number;
      readonly to: number;
      readonly next: RecordPlace;
    }
  /** A record holds another hash than that of its device's record before. */
  | { readonly kind: 'link broken'; readonly at: RecordPlace; readonly before: RecordPlace | null }
  /** One device wrote two texts under one number, on to `to`. */
  | {
      readonly kind: 'fork';
      readonly device: string;
      readonly from: number;
      readonly to: number;
      readonly records: readonly RecordPlace[];
    }
  /** It has seen records that are not there. */
  | { readonly kind: 'seen missing'; readonly at: RecordPlace; readonly seen: readonly string[] }
  /** A text was kept aside when it came. */
  | { readonly kind: 'aside'; readonly at: RecordPlace; readonly why: string }
  /** A text that was kept aside is not the one that came. */
  | { readonly kind: 'aside changed'; readonly at: RecordPlace }
  | { readonly kind: 'two texts'; readonly at: RecordPlace; readonly other: RecordPlace }
  | { readonly kind: 'photo missing'; readonly at: RecordPlace; readonly photo: string }
  | { readonly kind: 'photo changed'; readonly at: RecordPlace; readonly photo: string; readonly found: string }
  /** The log ended, or went through, another hash than was written down. `by`: the clearance that it stands in; null: it was given. */
  | {
      readonly kind: 'head differs';
      readonly number: number;
      readonly hash: string;
      /** What stands there; null: the log ends before. */
      readonly found: string | null;
      readonly by: RecordPlace | null;
    };
