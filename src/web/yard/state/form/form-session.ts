import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type FormMeasure, listFormMeasures } from '../../../../assess/yard/form-measures.ts';
import { takeBack } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { RecordDevice } from '../../../records/record-device.ts';
import { findUndo } from '../find-undo.ts';
import { listStartDrafts } from '../pieces/start-drafts.ts';

/** Form values that are typed and not written down yet, kept over a reload. */
export interface FormDraftStore {
  read(piece: string): readonly number[];
  keep(piece: string, values: readonly number[]): void;
}

export interface FormPlace {
  readonly device: Pick<RecordDevice, 'writeAll' | 'id'>;
  readonly drafts: FormDraftStore;
  readonly piece: OpenPiece;
  /** The piece as it is known now. */
  readonly read: () => OpenPiece;
}

/** A form that is off by more than a hand's width is another form [mm]. */
const BEYOND = 100;

/** No length that is taped for a measure is longer [mm]. */
export function findLongestMeasure({ nominal }: FormMeasure): number {
  return nominal + BEYOND;
}

/** The check of a form: one length after the other, then all of them written down as one record. */
export class FormSession {
  readonly #place: FormPlace;
  readonly measures: readonly FormMeasure[];
  readonly #values: Signal<readonly number[]>;
  readonly #isWritten: Signal<boolean> = signal(false);
  readonly #isAnew: Signal<boolean> = signal(false);
  readonly #fault: Signal<string | null> = signal(null);
  #isBusy = false;

  constructor(place: FormPlace) {
    this.#place = place;
    this.measures = listFormMeasures(place.piece.plan.setOut.form);
    this.#values = signal(place.drafts.read(place.piece.id).slice(0, this.measures.length));
  }

  /** What was typed, in the order of the measures. */
  get values(): ReadonlySignal<readonly number[]> {
    return this.#values;
  }

  get isWritten(): ReadonlySignal<boolean> {
    return this.#isWritten;
  }

  /** It is measured once more though it was checked before. */
  get isAnew(): ReadonlySignal<boolean> {
    return this.#isAnew;
  }

  get fault(): ReadonlySignal<string | null> {
    return this.#fault;
  }

  /** The length that is next; null: all are typed. */
  get next(): FormMeasure | null {
    return this.measures[this.#values.value.length] ?? null;
  }

  /** The depth before this one, which one tap may repeat; null: there is none. */
  get before(): number | null {
    const k = this.#values.value.length;
    if (this.measures[k]?.kind !== 'depth' || this.measures[k - 1]?.kind !== 'depth') return null;
    return this.#values.value[k - 1] ?? null;
  }

  /** Takes a length [mm]; the last one writes all down. */
  async type(value: number): Promise<void> {
    if (this.#isBusy || this.next === null) return;
    this.#keep([...this.#values.value, value]);
    if (this.next === null) await this.write();
  }

  /** The length before, to be typed again. */
  back(): void {
    this.#keep(this.#values.value.slice(0, -1));
  }

  /** Begins anew: the form was put right. */
  again(): void {
    this.#isWritten.value = false;
    this.#isAnew.value = true;
    this.#keep([]);
  }

  /** Writes all lengths down; what is typed stays where that fails. */
  async write(): Promise<void> {
    if (this.#isBusy) return;
    this.#isBusy = true;
    const { device } = this.#place;
    const piece = this.#place.read();
    const values = this.#values.value;
    try {
      await device.writeAll([
        ...listStartDrafts(piece.state, piece.head),
        {
          kind: 'form-checked',
          body: { measures: this.measures.map(({ what }, k) => ({ what, measured_mm: values[k]! })) },
          piece: piece.id,
          item: null,
          checkKey: piece.plan.formKey,
          measuredAt: null,
          measuredBy: null,
        },
      ]);
      this.#fault.value = null;
      this.#isWritten.value = true;
      this.#isAnew.value = false;
      this.#keep([]);
    } catch (error) {
      this.#fault.value = error instanceof Error ? error.message : String(error);
    } finally {
      this.#isBusy = false;
    }
  }

  /** Takes back what was written last for this piece. */
  async undo(): Promise<void> {
    if (this.#isBusy) return;
    this.#isBusy = true;
    const { device } = this.#place;
    try {
      const piece = this.#place.read();
      const records = findUndo(piece.state, device.id.value);
      await device.writeAll(takeBack(piece, records, 'taken back at once'));
      this.#fault.value = null;
      this.#isWritten.value = false;
    } catch (error) {
      this.#fault.value = error instanceof Error ? error.message : String(error);
    } finally {
      this.#isBusy = false;
    }
  }

  #keep(values: readonly number[]): void {
    this.#values.value = values;
    this.#place.drafts.keep(this.#place.piece.id, values);
  }
}
