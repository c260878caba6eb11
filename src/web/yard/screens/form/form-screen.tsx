import { useMemo } from 'preact/hooks';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { FormPlan } from '../../parts/form-plan.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { FormSession } from '../../state/form/form-session.ts';
import { localFormDrafts } from '../../state/form/local-form-drafts.ts';
import { findMeasureLine } from '../../state/form/measure-line.ts';
import { FormKeys } from './form-keys.tsx';
import styles from './form-screen.module.css';
import { FormSheet } from './form-sheet.tsx';

/** The form itself, measured before anything is measured from it. */
export function FormScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <FormCheck key={open.plan.formKey} piece={open} />}</WithPiece>;
}

function FormCheck({ piece }: { readonly piece: OpenPiece }) {
  const yard = useYard();
  // Only another form asks for other lengths: see the key above.
  const form = useMemo(
    () =>
      new FormSession({
        device: yard.device,
        drafts: localFormDrafts,
        piece,
        read: () => {
          const reading = yard.piece(piece.id).peek();
          return reading.kind === 'open' ? reading.piece : piece;
        },
      }),
    [yard, piece.id, piece.plan.formKey],
  );
  const { setOut } = piece.plan;
  const isTyping = !form.isWritten.value;
  const { next } = form;
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`0 · the form itself · ${form.values.value.length} of ${form.measures.length} lengths`}
      back={places.piece(piece.id)}
      isFixed
      keys={<FormKeys form={form} piece={piece} />}
    >
      <div class={styles.form}>
        <FormPlan
          setOut={setOut}
          lookOf={() => 'other'}
          hasNumbers={false}
          tape={isTyping && next !== null ? findMeasureLine(setOut, next) : null}
        />
        <FormSheet form={form} piece={piece} />
      </div>
    </YardFrame>
  );
}
