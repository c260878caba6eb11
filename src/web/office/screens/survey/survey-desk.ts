import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Matching } from '../../../../assess/as-cast/match-points.ts';
import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { SurveyChoices, SurveyRow } from '../../../../files/survey/survey-file.ts';
import type { Panel } from '../../../../job/documents/panel.ts';
import {
  beginPair,
  EMPTY_SURVEY,
  keepSurveyDraft,
  type Meaning,
  packBytes,
  readSurveyDraft,
  type SurveyDraft,
  type SurveyPair,
  unpackBytes,
} from '../../../pieces/survey/survey-draft.ts';
import { listFlatPoints, listSolidPoints } from '../../../pieces/survey/survey-targets.ts';
import type { MatchedSurvey, SurveyDesign } from '../../../worker/match-survey.ts';

/** No survey of a panel is larger; and a record holds no more points. */
const MOST_BYTES = 500_000;
const MOST_POINTS = 500;

/** Reads a file and matches it, in a worker. */
export type AskMatch = (
  name: string,
  bytes: Uint8Array,
  choices: SurveyChoices,
  design: SurveyDesign,
) => Promise<MatchedSurvey>;

export interface SurveyPlace {
  readonly piece: string;
  readonly panel: Panel;
  readonly items: readonly SetOutItem[];
  readonly storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;
  readonly ask: AskMatch;
}

/** What a point is, in the way in which the points are laid on the panel. */
function meaningOf(
  row: number,
  { pairs }: Matching,
  { seconds }: NonNullable<MatchedSurvey['match']>,
  keys: ReadonlySet<string>,
): Meaning {
  const pair = pairs.find(({ surveyed }) => surveyed === row);
  if (pair !== undefined)
    return keys.has(pair.key) ? { is: 'insert', key: pair.key } : { is: 'corner', name: pair.key };
  const second = seconds.find(({ surveyed }) => surveyed === row);
  return second === undefined ? { is: 'nothing' } : { is: 'rod', key: second.key };
}

/** A survey by instrument on its way to a record: the file, how it was read, which point is which. Kept on the device after each change. */
export class SurveyDesk {
  readonly #place: SurveyPlace;
  readonly #draft: Signal<SurveyDraft>;
  readonly #matched: Signal<MatchedSurvey | null> = signal(null);
  readonly #fault: Signal<string | null> = signal(null);
  readonly #isBusy: Signal<boolean> = signal(false);
  readonly #isKept: Signal<boolean> = signal(true);
  readonly #way: Signal<'best' | 'runnerUp'> = signal('best');
  #asked = 0;

  constructor(place: SurveyPlace) {
    this.#place = place;
    this.#draft = signal(readSurveyDraft(place.storage, place.piece));
    if (this.#draft.value.file !== null) void this.#read(false);
  }

  get draft(): ReadonlySignal<SurveyDraft> {
    return this.#draft;
  }

  /** The file as read and matched; null: there is none, or it is being read. */
  get matched(): ReadonlySignal<MatchedSurvey | null> {
    return this.#matched;
  }

  /** Why a file could not be taken. What was there before stays. */
  get fault(): ReadonlySignal<string | null> {
    return this.#fault;
  }

  get isBusy(): ReadonlySignal<boolean> {
    return this.#isBusy;
  }

  /** False: the browser has no room; what was begun is on this page only. */
  get isKept(): ReadonlySignal<boolean> {
    return this.#isKept;
  }

  /** How the points are laid on the panel; null: not known. */
  get matching(): Matching | null {
    const match = this.#matched.value?.match ?? null;
    return match === null ? null : (match[this.#way.value] ?? match.best);
  }

  /** Takes a file of points; refused, it leaves what was there. */
  async take(name: string, bytes: Uint8Array): Promise<void> {
    if (bytes.length > MOST_BYTES) {
      this.#fault.value = `${name} has ${bytes.length} bytes; expected a survey of one panel, at most ${MOST_BYTES}. Nothing was taken.`;
      return;
    }
    this.#asked += 1;
    const mine = this.#asked;
    this.#isBusy.value = true;
    try {
      const matched = await this.#ask(name, bytes, {});
      if (mine !== this.#asked) return;
      const { rows, faults } = matched.file;
      if (rows.length === 0 || rows.length > MOST_POINTS) {
        this.#fault.value =
          rows.length === 0
            ? `No point could be read. ${faults[0]?.message ?? `${name} is empty.`}`
            : `${name} holds ${rows.length} points; expected a survey of one panel, at most ${MOST_POINTS}. Nothing was taken.`;
        return;
      }
      const before = this.#draft.value;
      this.#way.value = 'best';
      this.#fault.value = null;
      this.#matched.value = matched;
      this.#keep({
        ...before,
        file: { name, bytes: packBytes(bytes) },
        choices: {},
        pairs: this.#suggest(matched),
      });
    } catch (error) {
      this.#fault.value = error instanceof Error ? error.message : String(error);
    } finally {
      if (mine === this.#asked) this.#isBusy.value = false;
    }
  }

  /** Reads the same file otherwise; what was confirmed of points is asked anew. */
  async choose(choices: SurveyChoices): Promise<void> {
    this.#keep({ ...this.#draft.value, choices: { ...this.#draft.value.choices, ...choices } });
    await this.#read(true);
  }

  /** Lays the points on the panel the other way round, where both fit. */
  turnRound(): void {
    const matched = this.#matched.value;
    if (matched === null) return;
    this.#way.value = this.#way.value === 'best' ? 'runnerUp' : 'best';
    this.#keep({ ...this.#draft.value, pairs: this.#suggest(matched) });
  }

  /** Says what a point is: a person has looked at it. */
  mean(line: number, as: Meaning): void {
    this.#change(line, { meaning: as, isConfirmed: true });
  }

  confirm(line: number, isConfirmed: boolean): void {
    this.#change(line, { isConfirmed });
  }

  confirmAll(): void {
    this.#keep({
      ...this.#draft.value,
      pairs: this.#draft.value.pairs.map((pair) => ({ ...pair, isConfirmed: true })),
    });
  }

  /** How sure a known point is, whether it counts, and why not. */
  weigh(line: number, change: Partial<Pick<SurveyPair, 'sigma' | 'isUsed' | 'note'>>): void {
    this.#change(line, change);
  }

  /** What is said of the survey as a whole. */
  tell(change: Partial<Pick<SurveyDraft, 'instrument' | 'tool' | 'note'>>): void {
    this.#keep({ ...this.#draft.value, ...change });
  }

  /** Puts all of it away. */
  clear(): void {
    this.#asked += 1;
    this.#matched.value = null;
    this.#fault.value = null;
    this.#keep({ ...EMPTY_SURVEY, tool: this.#draft.value.tool, instrument: this.#draft.value.instrument });
  }

  #ask(name: string, bytes: Uint8Array, choices: SurveyChoices): Promise<MatchedSurvey> {
    const { panel, items, ask } = this.#place;
    return ask(name, bytes, choices, {
      flat: (['outside', 'inside'] as const).map((face) => ({ face, points: listFlatPoints(panel, items, face) })),
      solid: listSolidPoints(panel, items),
    });
  }

  /** Reads the kept file. @param isNew suggestions replace what was said of points */
  async #read(isNew: boolean): Promise<void> {
    const { file, choices } = this.#draft.value;
    if (file === null) return;
    this.#asked += 1;
    const mine = this.#asked;
    this.#isBusy.value = true;
    try {
      const matched = await this.#ask(file.name, unpackBytes(file.bytes), choices as SurveyChoices);
      if (mine !== this.#asked) return;
      this.#matched.value = matched;
      if (!isNew) return;
      this.#way.value = 'best';
      this.#keep({ ...this.#draft.value, pairs: this.#suggest(matched) });
    } catch (error) {
      this.#fault.value = error instanceof Error ? error.message : String(error);
    } finally {
      if (mine === this.#asked) this.#isBusy.value = false;
    }
  }

  #suggest({ file, match }: MatchedSurvey): readonly SurveyPair[] {
    const keys = new Set(this.#place.items.map(({ castIn }) => castIn.key));
    const matching = this.matching;
    return file.rows.map((row: SurveyRow, k) =>
      beginPair(row, match === null || matching === null ? { is: 'nothing' } : meaningOf(k, matching, match, keys)),
    );
  }

  #change(line: number, change: Partial<SurveyPair>): void {
    const { pairs } = this.#draft.value;
    this.#keep({
      ...this.#draft.value,
      pairs: pairs.map((pair) => (pair.line === line ? { ...pair, ...change } : pair)),
    });
  }

  #keep(draft: SurveyDraft): void {
    this.#draft.value = draft;
    this.#isKept.value = keepSurveyDraft(this.#place.storage, this.#place.piece, draft);
  }
}
