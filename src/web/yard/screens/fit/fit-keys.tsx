import type { AsCastConnection, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { FitAnswer } from '../../../../say/fit-answer.ts';
import { draftRemedy, mayDecideRemedy } from '../../../pieces/as-cast/decide-remedy.ts';
import type { FactWriter } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { useYard } from '../../../pieces/yard.ts';
import { BigLink } from '../../parts/big-key.tsx';
import { TwoTaps } from '../../parts/two-taps.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';

export interface FitKeysProps {
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
  readonly answer: FitAnswer;
  readonly writer: FactWriter;
}

/** Why it is decided so, where nobody types: what was computed. */
function reasonOf({ verdict, kind }: Remedy): string {
  const what = kind === 'as is' ? 'nothing is changed' : 'no change of the design';
  return verdict === 'works'
    ? `on site: computed as cast it works, ${what}`
    : `on site: the plate goes on, ${what}; strength not known`;
}

/** Decides what is within the rights of somebody on site, with two taps. */
function DecideKey({ piece, found, answer, writer, remedy }: FitKeysProps & { readonly remedy: Remedy }) {
  const { device } = useYard();
  const person = device.person.value;
  const permission = mayDecideRemedy(person, found, remedy);
  const decide = () => {
    const draft = person === null ? null : draftRemedy(piece, found, remedy, person, reasonOf(remedy));
    if (draft !== null) void writer.write([draft]);
  };
  return (
    <TwoTaps
      kind="main"
      isDisabled={!permission.may}
      more={permission.may ? (permission.as === null ? undefined : `as ${ROLE_WORDS[permission.as]}`) : permission.why}
      question={`${answer.words}. Decide it so for ${found.connection.mark}?`}
      yes="Yes, so it is done"
      says={
        <p>
          {remedy.verdict === 'works'
            ? 'It is kept with your name, with what was computed, and with the survey that it rests on.'
            : 'It is kept with your name. Its strength is not known: it stays no pass, and the design engineer is to be asked.'}
        </p>
      }
      onYes={decide}
    >
      Decide it so
    </TwoTaps>
  );
}

/** What may be done about one bracket here. */
export function FitKeys(props: FitKeysProps) {
  const { piece, found, answer, writer } = props;
  const isUnknown = found.state === 'not surveyed' || found.state === 'conflict';
  return (
    <>
      <BigLink to={places.fit(piece.id)}>All brackets</BigLink>
      <BigLink kind={isUnknown ? 'main' : 'plain'} to={places.survey(piece.id)} more="from the edges, by tape">
        {isUnknown ? 'Measure inserts' : 'Measure again'}
      </BigLink>
      {answer.remedy !== null && <DecideKey {...props} remedy={answer.remedy} />}
      <UndoLast piece={piece} writer={writer} />
    </>
  );
}
