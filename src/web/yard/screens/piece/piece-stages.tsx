import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { BigKey, BigLink, type KeyKind } from '../../parts/big-key.tsx';
import { FORM_WORDS } from '../../state/form/form-words.ts';
import { findNextPlace } from '../../state/pieces/next-place.ts';

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

/** The stages of a piece, in the order of the work; the next one stands out. */
export function PieceStages({ piece, onMore }: { readonly piece: OpenPiece; readonly onMore: () => void }) {
  const { id, report } = piece;
  const next = findNextPlace(report);
  const kind = (place: typeof next): KeyKind => (place === next ? 'main' : 'plain');
  const hasConflict =
    report.flags.some((flag) => flag.kind === 'conflict') || report.inserts.some(({ state }) => state === 'conflict');
  return (
    <>
      {hasConflict && (
        <BigLink kind="stop" to={places.conflict(id)} more="two answers that differ">
          Conflicts
        </BigLink>
      )}
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
      <BigLink kind={kind('after')} to={places.after(id)} more="plates, threads, caps">
        After stripping
      </BigLink>
      <BigLink kind={kind('survey')} to={places.survey(id)} more="where the inserts are now">
        Survey
      </BigLink>
      <BigKey kind="quiet" more="history, sheet, photo, scrap" onPress={onMore}>
        More …
      </BigKey>
    </>
  );
}
