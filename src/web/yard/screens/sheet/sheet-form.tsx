import { signal, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { listFormMeasures } from '../../../../assess/yard/form-measures.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { findSheetRevision, LETTER_FIELD, readSheet, type SheetFault } from './read-sheet.ts';
import styles from './sheet.module.css';
import { listRows } from './sheet-cells.ts';
import { EMPTY_DRAFT, isTouched, keepDraft, putCell, readDraft, type SheetDraft } from './sheet-draft.ts';
import { SheetGrid } from './sheet-grid.tsx';
import { SheetHead } from './sheet-head.tsx';
import { SheetPhoto } from './sheet-photo.tsx';

/** Puts the hand into a box or field of the sheet. */
function goTo(name: string): void {
  const field = document.querySelector<HTMLElement>(`[data-cell="${CSS.escape(name)}"]`);
  field?.focus();
  if (field instanceof HTMLInputElement && field.type === 'text') field.select();
}

/** The fields of a sheet. Each key is kept on this device as it is typed: a reload loses nothing. */
export function SheetForm({ piece }: { readonly piece: OpenPiece }) {
  const { id, plan, context } = piece;
  const { device } = useYard();
  const [, go] = useLocation();
  const draft = useMemo(() => signal(readDraft(localStorage, id)), [id]);
  const faults = useSignal<readonly SheetFault[]>([]);
  const isWriting = useSignal(false);
  const measures = useMemo(() => listFormMeasures(plan.setOut.form).map(({ what }) => what), [plan]);
  const rows = useMemo(() => listRows(plan, measures), [plan, measures]);
  const people = device.job.value?.people ?? [];
  const revisions = device.job.value?.revisions ?? [];

  const change = (next: SheetDraft) => {
    draft.value = next;
    faults.value = [];
    try {
      keepDraft(localStorage, id, next);
    } catch {
      faults.value = [
        { at: LETTER_FIELD, words: 'this browser keeps nothing: write the sheet down before you leave this screen' },
      ];
    }
  };
  const write = async () => {
    const reading = readSheet(draft.value, {
      plan,
      measures,
      inForce: context.revision,
      revisions,
      person: device.person.value?.id ?? '',
      now: Date.now(),
    });
    faults.value = reading.faults;
    const [first] = reading.faults;
    if (first !== undefined) return goTo(first.at);
    isWriting.value = true;
    try {
      await device.writeAll(reading.drafts);
      change(EMPTY_DRAFT);
      go(places.piece(id));
    } catch (error) {
      faults.value = [{ at: LETTER_FIELD, words: error instanceof Error ? error.message : String(error) }];
    }
    isWriting.value = false;
  };

  const sheet = draft.value;
  const { isInForce, revision } = findSheetRevision(sheet, { inForce: context.revision, revisions });
  const isOld = sheet.letter.trim() !== '' && !isInForce;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage="a paper sheet typed in"
      back={places.piece(id)}
      keys={
        <>
          <SheetPhoto piece={piece} draft={sheet} onChange={change} />
          <dl class={styles.help}>
            <dt>Enter</dt>
            <dd>next box</dd>
            <dt>y · n</dt>
            <dd>yes, no; goes on</dd>
            <dt>a</dt>
            <dd>all three yes</dd>
            <dt>arrows</dt>
            <dd>between boxes</dd>
          </dl>
          <BigKey isDisabled={!isTouched(sheet)} onPress={() => change(EMPTY_DRAFT)} kind="quiet">
            Empty the sheet
          </BigKey>
          <BigKey kind="main" isDisabled={isWriting.value || device.person.value === null} onPress={() => void write()}>
            Write it down
          </BigKey>
        </>
      }
    >
      {isOld && (
        <Answer
          kind="wrong"
          isSmall
          words={`Revision ${sheet.letter.trim()} is not in force, ${context.revision.letter} is`}
        >
          <p>
            What was done by it is written down{' '}
            {revision === null ? 'as by a revision that nobody issued' : `as by revision ${revision.letter}`}: its
            inserts stay open by revision {context.revision.letter}.
          </p>
        </Answer>
      )}
      {faults.value.length > 0 && (
        <Answer
          kind="unsure"
          isSmall
          words={`${faults.value.length === 1 ? 'One thing stands' : `${faults.value.length} things stand`} against it`}
        >
          <ul class={styles.faults}>
            {faults.value.slice(0, 8).map(({ at, words }) => (
              <li key={`${at} ${words}`}>
                <button type="button" class={styles.fault} onClick={() => goTo(at)}>
                  {words}
                </button>
              </li>
            ))}
          </ul>
        </Answer>
      )}
      <SheetHead draft={sheet} people={people} onChange={change} part="stage 1" hasLetter />
      <SheetGrid
        rows={rows}
        draft={sheet}
        people={people}
        faults={new Set(faults.value.map(({ at }) => at))}
        onCell={(name, text) => change(putCell(draft.value, name, text))}
        onDraft={change}
        goTo={goTo}
        onEnd={() => void write()}
      />
    </YardFrame>
  );
}
