import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { readPieceCode } from '../../../../job/piece-code.ts';
import { namePiece } from '../../../../records/name-piece.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { keepPicture } from '../../photo/keep-photo.ts';
import { PhotoKey } from '../../photo/photo-key.tsx';
import { loadCodeReader } from '../scan/code-reader.ts';
import { type CodeJudgement, judgeCode } from '../scan/judge-code.ts';
import { readPicture } from '../scan/read-picture.ts';
import { VoidShout } from '../scan/void-shout.tsx';
import type { SheetDraft } from './sheet-draft.ts';

export interface SheetPhotoProps {
  readonly piece: OpenPiece;
  readonly draft: SheetDraft;
  readonly onChange: (draft: SheetDraft) => void;
}

/** The photograph of the sheet, kept with what is typed from it; its code says the revision, and whether it is of this piece at all. */
export function SheetPhoto({ piece, draft, onChange }: SheetPhotoProps) {
  const { device } = useYard();
  const [, go] = useLocation();
  const said = useSignal<string | null>(null);
  const shout = useSignal<Extract<CodeJudgement, { kind: 'void' }> | null>(null);
  const other = useSignal<{ readonly name: string; readonly id: string } | null>(null);

  const take = async (picture: ImageBitmap) => {
    said.value = 'Looking for the code …';
    other.value = null;
    const { photo, bytes, width, height } = await keepPicture(device, picture, 'sheet');
    const text = await readPicture(picture, await loadCodeReader());
    const code = text === null ? null : readPieceCode(text);
    const job = device.job.value;
    const kept = { ...draft, photo: { hash: photo, bytes, width, height } };
    if (code === null || job === null) {
      said.value = 'Photo kept. Its code could not be read: type the revision letter.';
      return onChange(kept);
    }
    onChange({ ...kept, letter: code.letter, fingerprint: code.fingerprint });
    const judged = judgeCode(code, job);
    said.value = `Photo kept. Sheet of ${code.mark}${code.serial === null ? '' : ` no. ${code.serial}`}, revision ${code.letter}.`;
    if (judged.kind === 'void') shout.value = judged;
    if (judged.kind !== 'in force') return;
    const id = judged.serial === null ? null : namePiece(job.id, judged.panelKey, judged.serial);
    if (judged.mark !== piece.head.mark || (id !== null && id !== piece.id))
      other.value = { name: `${judged.mark} no. ${judged.serial ?? '?'}`, id: id ?? '' };
  };
  const sheet = shout.value;
  return (
    <>
      {other.value !== null && (
        <Answer kind="wrong" isSmall words={`This sheet is of ${other.value.name}, not of this piece`}>
          {other.value.id !== '' && (
            <BigKey kind="quiet" onPress={() => go(places.sheet(other.value?.id ?? ''))}>
              To {other.value.name}
            </BigKey>
          )}
        </Answer>
      )}
      {said.value !== null && <p aria-live="polite">{said.value}</p>}
      <PhotoKey
        onPicture={take}
        onFault={(words) => (said.value = words)}
        more={draft.photo === null ? 'first of all' : 'there is one; take another'}
      >
        Photo of the sheet
      </PhotoKey>
      {sheet !== null && (
        <VoidShout
          sheet={sheet}
          onGo={() => (shout.value = null)}
          goWords={`It was done by revision ${sheet.sheetLetter}: type it in so`}
          goMore={sheet.inForce === null ? 'nothing is in force' : `its inserts stay open by revision ${sheet.inForce}`}
          onAnother={() => {
            shout.value = null;
            onChange({ ...draft, photo: null, letter: '', fingerprint: null });
          }}
        />
      )}
    </>
  );
}
