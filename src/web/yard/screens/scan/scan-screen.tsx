import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { readPieceCode } from '../../../../job/piece-code.ts';
import { namePiece } from '../../../../records/name-piece.ts';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { PhotoKey } from '../../photo/photo-key.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { Camera } from './camera.tsx';
import { loadCodeReader } from './code-reader.ts';
import { type CodeJudgement, judgeCode } from './judge-code.ts';
import { MarkChoice, SerialChoice } from './piece-choice.tsx';
import { readPicture } from './read-picture.ts';
import { VoidShout } from './void-shout.tsx';

/** What the screen shows beside the camera. */
type Shown =
  | { readonly kind: 'camera' }
  | { readonly kind: 'marks' }
  | { readonly kind: 'serials'; readonly mark: string }
  | { readonly kind: 'void'; readonly sheet: Extract<CodeJudgement, { kind: 'void' }> };

/** Opens a piece by the code of its sheet, by a photograph of the sheet, or by its mark; a void sheet is shouted about, a connection or not. */
export function ScanScreen() {
  const yard = useYard();
  const [, go] = useLocation();
  const shown = useSignal<Shown>({ kind: 'camera' });
  const said = useSignal<string | null>(null);
  const isLooking = useSignal(false);
  const job = yard.device.job.value;

  /** To the piece, or to the choice among those of the mark. */
  const openPiece = (panelKey: string, mark: string, serial: string | null) => {
    if (job === null || serial === null) shown.value = { kind: 'serials', mark };
    else go(places.piece(namePiece(job.id, panelKey, serial)));
  };
  const take = (text: string) => {
    if (shown.value.kind !== 'camera' || job === null) return;
    const code = readPieceCode(text);
    if (code === null) {
      said.value = 'This code is not one of a sheet of ours: it opens nothing.';
      return;
    }
    said.value = null;
    const judged = judgeCode(code, job);
    switch (judged.kind) {
      case 'in force':
        return openPiece(judged.panelKey, judged.mark, judged.serial);
      case 'void':
        shown.value = { kind: 'void', sheet: judged };
        return;
      case 'no such mark':
        said.value = `Revision ${judged.inForce} has no panel ${judged.mark}. Ask the office.`;
    }
  };
  const lookInto = async (picture: ImageBitmap) => {
    said.value = null;
    isLooking.value = true;
    const text = await readPicture(picture, await loadCodeReader());
    isLooking.value = false;
    if (text === null)
      said.value =
        'No code is seen in this picture. Hold the camera straight over the code, closer, out of its own shadow.';
    else take(text);
  };

  const now = shown.value;
  if (job === null)
    return (
      <YardFrame title="Scan a sheet" back={places.start()}>
        <Answer kind="unsure" words="No job is on this device">
          <p>Choose the job first: a sheet is held against its revisions.</p>
        </Answer>
      </YardFrame>
    );
  return (
    <YardFrame
      title="Scan a sheet"
      back={places.pours()}
      isFixed={now.kind === 'camera'}
      keys={
        now.kind === 'camera' ? (
          <>
            {isLooking.value && <p aria-live="polite">Looking for the code …</p>}
            {said.value !== null && <Answer kind="unsure" isSmall words={said.value} />}
            <PhotoKey onPicture={lookInto} onFault={(words) => (said.value = words)}>
              Photograph a sheet
            </PhotoKey>
            <BigKey kind="main" onPress={() => (shown.value = { kind: 'marks' })}>
              Name the piece by its mark
            </BigKey>
          </>
        ) : undefined
      }
    >
      {now.kind === 'camera' && <Camera onText={take} />}
      {now.kind === 'marks' && (
        <MarkChoice
          onMark={(mark) => (shown.value = { kind: 'serials', mark })}
          onBack={() => (shown.value = { kind: 'camera' })}
        />
      )}
      {now.kind === 'serials' && <SerialChoice mark={now.mark} onBack={() => (shown.value = { kind: 'camera' })} />}
      {now.kind === 'void' && (
        <VoidShout
          sheet={now.sheet}
          goWords="Go to the piece by the revision in force"
          goMore={`${now.sheet.mark}, revision ${now.sheet.inForce}`}
          onGo={
            now.sheet.panelKey === null
              ? null
              : () => openPiece(now.sheet.panelKey ?? '', now.sheet.mark, now.sheet.serial)
          }
          onAnother={() => (shown.value = { kind: 'camera' })}
        />
      )}
    </YardFrame>
  );
}
