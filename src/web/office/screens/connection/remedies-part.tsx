import { Link } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import type { Remedy } from '../../../../assess/remedies/remedy.ts';
import { replaceValues } from '../../../../job/edit/replace-values.ts';
import { frameOf } from '../../../../job/face-frame.ts';
import type { Sight } from '../../../../say/move-words.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { tellDeed, tellVain } from '../../../../say/remedy-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { personWriter } from '../../../parts/units.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { Becomes } from './becomes.tsx';
import { askRemedies } from './connection-client.ts';
import styles from './remedies-part.module.css';

function Item({
  remedy,
  words,
  onTake,
}: {
  readonly remedy: Remedy;
  readonly words: string;
  readonly onTake: () => void;
}) {
  const { notes, ratioBefore, ratioAfter } = remedy;
  return (
    <li class={styles.item}>
      <div class={styles.what}>
        <p class={styles.words}>{words}</p>
        {notes.map((note) => (
          <p key={note} class={styles.notes}>
            {note}
          </p>
        ))}
      </div>
      <Becomes before={ratioBefore} after={ratioAfter} />
      <Button name={`Take it: ${words}`} onPress={onTake}>
        Take it
      </Button>
    </li>
  );
}

/** What would make it pass: each suggestion is computed and verified, and is one edit. */
export function RemediesPart({ looked }: { readonly looked: LookedAt }) {
  const { session } = useOffice();
  const { file } = session;
  const { connection, explanation, panel } = looked;
  const { mark } = connection;
  const { state } = explanation.answer;
  const isAsked = state === 'fails' || state === 'not covered';
  const asked = useAsked(isAsked ? () => askRemedies(mark) : null, [isAsked, mark, file]);
  if (!isAsked) return null;
  const take = ({ change, ratioBefore, ratioAfter }: Remedy, words: string) => {
    const why = session.commit(`${mark}: ${words}`.slice(0, 400), replaceValues(change));
    if (why !== null) tell('fault', why);
    else
      tell('good', `${mark}: ${words}. It was ${showRatio(ratioBefore)}, it is ${showRatio(ratioAfter)}`, {
        text: 'Undo',
        run: () => session.undo(),
      });
  };
  const found = asked.value;
  // A partner is changed where it comes from: what is to the right there is to the left here.
  const isOfSource = found !== null && found.connection !== mark;
  const { isMirrored } = frameOf(panel, connection);
  const sight: Sight = { face: explanation.answer.face, isMirrored: isMirrored !== isOfSource };
  return (
    <Section
      title="What would make it pass"
      lead="Each change by itself, as little of it as does, checked in full. Not a decision: the design engineer decides."
      actions={<Link href={addresses.choosing(session.id, mark)}>Choose another insert</Link>}
    >
      {asked.why !== null && <Notice kind="fault">{asked.why}</Notice>}
      {found === null ? (
        <p class={styles.wait} aria-busy="true">
          Trying inserts, places, bolts, concrete and thickness …
        </p>
      ) : found.remedies.length === 0 ? (
        <p class={styles.wait}>No single change that was tried makes it pass.</p>
      ) : (
        <ul class={styles.list}>
          {found.remedies.map((remedy) => {
            const words = tellDeed(remedy.deed, sight, personWriter);
            return <Item key={words} remedy={remedy} words={words} onTake={() => take(remedy, words)} />;
          })}
        </ul>
      )}
      {isOfSource && found.remedies.length > 0 && (
        <p class={styles.notes}>
          {mark} follows {found.connection} of panel {panel.handedOf}: taken here, it is changed there, mirrored.
        </p>
      )}
      {found !== null && found.inVain.length > 0 && (
        <details class={styles.vain}>
          <summary>Tried in vain: {found.inVain.length}</summary>
          <ul>
            {found.inVain
              .map((vain) => tellVain(vain, sight, personWriter))
              .map((text) => (
                <li key={text}>{text}</li>
              ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
