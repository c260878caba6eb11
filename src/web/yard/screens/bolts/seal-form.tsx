import { useSignal } from '@preact/signals';
import type { TemporaryInsert } from '../../../../assess/bolt-up/bolt-up-report.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { sayTemporary } from '../../../../say/bolt-up-words.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { ReasonPicker } from '../../parts/reason-picker.tsx';
import { keepPicture } from '../../photo/keep-photo.ts';
import { PhotoKey } from '../../photo/photo-key.tsx';

/** What recesses are commonly filled with (common practice); what the job asks goes before it. */
const FILLINGS = ['Non-shrink grout', 'Sealant', 'Cap glued in', 'As the job’s fire or acoustic detail says'];

/** Fills one insert that is no longer needed: a photo before it is covered, then with what. */
export function SealForm({
  insert,
  onPhoto,
  onSealed,
  onBack,
}: {
  readonly insert: TemporaryInsert;
  readonly onPhoto: (body: BodyOf<'photo'>) => void;
  readonly onSealed: (filling: string) => void;
  readonly onBack: () => void;
}) {
  const { device } = useYard();
  const fault = useSignal<string | null>(null);
  const isTaken = useSignal(false);
  return (
    <>
      <Answer kind="move" isSmall words={sayTemporary(insert)}>
        <p>A filled recess under a fire or acoustic rating is filled as its detail says, not as is at hand.</p>
      </Answer>
      {fault.value !== null && <Answer kind="unsure" isSmall words={fault.value} />}
      <PhotoKey
        more={isTaken.value ? 'it is kept; take another' : 'of the open recess'}
        onFault={(words) => (fault.value = words)}
        onPicture={async (picture) => {
          onPhoto(await keepPicture(device, picture, 'insert'));
          isTaken.value = true;
        }}
      >
        {isTaken.value ? 'Photo taken' : 'Photo'}
      </PhotoKey>
      <ReasonPicker
        title="Filled and sealed with what?"
        reasons={FILLINGS}
        take="It is filled and sealed"
        onReason={onSealed}
        onBack={onBack}
      />
    </>
  );
}
