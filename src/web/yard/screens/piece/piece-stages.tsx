import { useSignal } from '@preact/signals';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { BigKey, BigLink, type KeyKind } from '../../parts/big-key.tsx';
import { FORM_WORDS } from '../../state/form/form-words.ts';
import { findNextPlace, type NextPlace } from '../../state/pieces/next-place.ts';

interface Counts {
  readonly done: number;
  readonly left: number;
  readonly out: number;
}

/** Counts of a stage in a few words. */
function tellCounts({ done, left, out }: Counts): string {
  if (done + left + out === 0) return 'nothing in this stage';
  if (left === 0 && out === 0) return `all ${done} done`;
  return [`${done} done`, `${left} left`, ...(out > 0 ? [`${out} OUT`] : [])].join(' · ');
}

const CLEARANCE_WORDS = {
  none: 'not decided',
  cleared: 'cleared',
  'cleared with a condition': 'cleared with a condition',
  held: 'HELD',
  override: 'poured on an override',
} as const;

/** Out of its form: what was checked in it is seldom asked for. */
const OUT: ReadonlySet<OpenPiece['report']['phase']> = new Set(['stripped', 'opened up', 'surveyed', 'bolted up']);

interface StageKeysProps {
  readonly piece: OpenPiece;
  /** How the key of a place looks. */
  readonly kind: (place: NextPlace) => KeyKind;
}

/** What is done while the piece is in its form. */
function FormStages({ piece: { id, report }, kind }: StageKeysProps) {
  return (
    <>
      <BigLink kind={kind('form')} to={places.form(id)} more={FORM_WORDS[report.form.state]}>
        The form
      </BigLink>
      <BigLink kind={kind('stage 1')} to={places.walk(id, 1)} more={tellCounts(report.counts[1])}>
        Before the cage
      </BigLink>
      <BigLink kind={kind('stage 2')} to={places.walk(id, 2)} more={tellCounts(report.counts[2])}>
        Before the pour
      </BigLink>
      <BigLink kind={kind('clearance')} to={places.clearance(id)} more={CLEARANCE_WORDS[report.clearance.is]}>
        Clearance, pour
      </BigLink>
      <BigLink kind={kind('screed')} to={places.screed(id)} more={tellCounts(report.screed)}>
        After screeding
      </BigLink>
    </>
  );
}

/** What is done once it is out. */
function OutStages({ piece: { id }, kind }: StageKeysProps) {
  return (
    <>
      <BigLink kind={kind('survey')} to={places.survey(id)} more="where the inserts are now">
        Survey
      </BigLink>
      <BigLink kind={kind('fit')} to={places.fit(id)} more="brackets on inserts as they came out">
        Does it go on?
      </BigLink>
      <BigLink to={places.bolts(id)} more="delivery, cards, tightening">
        Bolt up
      </BigLink>
    </>
  );
}

/** The stages of a piece, in the order of the work; the next one stands out. Those of the form give way to the others once it is out. */
export function PieceStages({ piece, onMore }: { readonly piece: OpenPiece; readonly onMore: () => void }) {
  const { id, report } = piece;
  const isLookingBack = useSignal(false);
  const next = findNextPlace(report);
  const kind = (place: NextPlace): KeyKind => (place !== null && place === next ? 'main' : 'plain');
  const isOut = OUT.has(report.phase) && !isLookingBack.value;
  const hasConflict =
    report.flags.some((flag) => flag.kind === 'conflict') || report.inserts.some(({ state }) => state === 'conflict');
  return (
    <>
      {hasConflict && (
        <BigLink kind="stop" to={places.conflict(id)} more="two answers that differ">
          Conflicts
        </BigLink>
      )}
      {!isOut && <FormStages piece={piece} kind={kind} />}
      <BigLink kind={kind('after')} to={places.after(id)} more="plates, threads, caps">
        After stripping
      </BigLink>
      {isOut && <OutStages piece={piece} kind={kind} />}
      {OUT.has(report.phase) && (
        <BigKey
          kind="quiet"
          more={isOut ? 'form, cage, pour, screed' : undefined}
          onPress={() => (isLookingBack.value = isOut)}
        >
          {isOut ? 'As it was in the form' : 'After the form'}
        </BigKey>
      )}
      <BigKey kind="quiet" more="history, sheet, photo, scrap" onPress={onMore}>
        More …
      </BigKey>
    </>
  );
}
