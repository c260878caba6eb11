import { useMemo } from 'preact/hooks';
import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import { tellClearanceLeft } from '../../../../say/fit-words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { STATE_WORDS } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { draftRemedy, mayDecideRemedy } from '../../../pieces/as-cast/decide-remedy.ts';
import { FactWriter } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { ReasonPart, useReasoning } from '../yard/reason-part.tsx';
import { WhoDecides } from '../yard/who-works.tsx';
import styles from './as-cast.module.css';
import { PlateFigure } from './plate-figure.tsx';

/** A remedy that does not work, or of which the strength is not known, can be decided all the same: nobody decides it unseen. */
const DOUBTS: Readonly<Record<Remedy['verdict'], string | null>> = {
  works: null,
  'does not work':
    'As computed it does not work. Whoever decides it so answers for it, and the record says that it was known.',
  'not known': 'Its strength is not known: that is no pass. The record says that it was not.',
};

/** The decision about a connection: by whom, in which role, and why; what was computed is kept with it. */
export function DecideRemedyDialog({
  yard,
  piece,
  found,
  remedy,
  onClose,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly remedy: Remedy;
  readonly onClose: () => void;
}) {
  const reasoning = useReasoning();
  const { reason, failed } = reasoning;
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const person = yard.device.person.value;
  const permission = mayDecideRemedy(person, found, remedy);
  const stop =
    person === null ? 'Say first who decides.' : permission.may ? null : `${person.name}: ${permission.why}.`;
  const doubt = remedy.kind === 'not usable' ? null : DOUBTS[remedy.verdict];
  const decide = async () => {
    if (person === null) return;
    if (reason.value === '') {
      failed.value = 'The reason is missing: whoever reads it in years has nothing else.';
      return;
    }
    const draft = draftRemedy(piece, found, remedy, person, reason.value);
    if (draft !== null && (await writer.write([draft]))) onClose();
    else failed.value = writer.fault.value;
  };
  return (
    <Dialog
      title={`${found.connection.mark} of ${piece.head.mark} no. ${piece.head.serial}: ${remedy.kind}`}
      onClose={onClose}
      isWide
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={stop !== null} onPress={() => void decide()}>
            Write the decision down
          </Button>
        </>
      }
    >
      <div class={styles.decided}>
        <PlateFigure piece={piece} found={found} remedy={remedy} />
        <ul class={styles.lines}>
          <li>
            <strong>{remedy.words}</strong>
          </li>
          <li>{`Strength: ${STATE_WORDS[remedy.state]}, ${showRatio(remedy.ratio)}; as designed ${STATE_WORDS[found.before.state]}, ${showRatio(found.before.ratio)}.`}</li>
          {remedy.clearance !== null && (
            <li>{`Plate: ${tellClearanceLeft(remedy, (mm) => writeQuantity('length', mm))}.`}</li>
          )}
          {[...remedy.why, ...remedy.conditions].map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </div>
      {doubt !== null && (
        <Notice kind="caution" title="Before you decide so">
          {doubt}
        </Notice>
      )}
      <WhoDecides yard={yard} />
      <ReasonPart of={reasoning} placeholder="what it rests on" stop={stop}>
        {permission.may && permission.as !== null && (
          <p>
            {`Decided by ${person?.name} as ${ROLE_WORDS[permission.as]}${permission.as === 'design engineer' ? `, registration ${person?.registration}` : ''}. What is computed now is kept with it, and the surveys that it rests on: a later survey opens it again.`}
          </p>
        )}
      </ReasonPart>
    </Dialog>
  );
}
