import type { Person } from '../../../../records/person.ts';
import { headField, LETTER_FIELD } from './read-sheet.ts';
import styles from './sheet.module.css';
import type { PartHead, SheetDraft, SheetPart } from './sheet-draft.ts';

export interface SheetHeadProps {
  readonly draft: SheetDraft;
  readonly part: SheetPart;
  readonly people: readonly Person[];
  /** The letter of the sheet is asked once, above all. */
  readonly hasLetter?: boolean;
  readonly onChange: (draft: SheetDraft) => void;
}

/** Year and month of a day by the clock of the yard: `2026-11-`. */
function beginDay(now: Date): string {
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-`;
}

interface HeadFieldProps {
  readonly words: string;
  readonly look: string | undefined;
  readonly placeholder: string;
  readonly longest: number;
  readonly cell: string;
  readonly value: string;
  readonly onFocus?: () => void;
  readonly onText: (text: string) => void;
}

/** A field of digits in the head of a part. */
function HeadField({ words, look, placeholder, longest, cell, value, onFocus, onText }: HeadFieldProps) {
  return (
    <label>
      {words}
      <input
        type="text"
        class={look}
        inputMode="numeric"
        placeholder={placeholder}
        maxLength={longest}
        autocomplete="off"
        data-cell={cell}
        value={value}
        onFocus={onFocus}
        onInput={({ currentTarget }) => onText(currentTarget.value)}
      />
    </label>
  );
}

/**
 * When a part of the sheet was measured and by whom: as signed on the paper, not when it is typed. Plain fields: those of browsers write days and hours in
 * the order of the device's country, and a sheet is not always from there.
 */
export function SheetHead({ draft, part, people, hasLetter = false, onChange }: SheetHeadProps) {
  const head = draft.parts[part];
  const isFirst = part === 'stage 1';
  const put = (field: keyof PartHead, text: string) =>
    onChange({ ...draft, parts: { ...draft.parts, [part]: { ...head, [field]: text } } });
  return (
    <div class={styles.head}>
      {hasLetter && (
        <label>
          Revision on the sheet
          <input
            type="text"
            class={styles.letter}
            data-cell={LETTER_FIELD}
            value={draft.letter}
            maxLength={6}
            autocomplete="off"
            onInput={({ currentTarget }) => onChange({ ...draft, letter: currentTarget.value, fingerprint: null })}
          />
        </label>
      )}
      <HeadField
        words={isFirst ? 'Day measured' : 'Day, if another'}
        look={styles.day}
        placeholder="year-month-day"
        longest={10}
        cell={headField(part, 'day')}
        value={head.day}
        // Year and month stand there already: mostly it is this month.
        onFocus={() => head.day === '' && isFirst && put('day', beginDay(new Date()))}
        onText={(text) => put('day', text)}
      />
      <HeadField
        words={isFirst ? 'Time measured' : 'Time, if another'}
        look={styles.time}
        placeholder="0940"
        longest={5}
        cell={headField(part, 'time')}
        value={head.time}
        onText={(text) => put('time', text)}
      />
      <label>
        {isFirst ? 'Measured by' : 'By, if another'}
        <select
          data-cell={headField(part, 'by')}
          value={head.by}
          onChange={({ currentTarget }) => put('by', currentTarget.value)}
        >
          <option value="">{isFirst ? 'who signed it?' : 'the same'}</option>
          {people.map(({ id, name }) => (
            <option key={id} value={id}>
              {name ?? 'name erased'}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
