import { Link } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import type { Remedy } from '../../../../assess/remedies/remedy.ts';
import { replaceValues } from '../../../../job/edit/replace-values.ts';
import { frameOf } from '../../../../job/face-frame.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { Becomes } from './becomes.tsx';
import { askRemedies } from './connection-client.ts';
import styles from './remedies-part.module.css';

function Item({ remedy, onTake }: { readonly remedy: Remedy; readonly onTake: () => void }) {
  const { words, notes, ratioBefore, ratioAfter } = remedy;
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
  const { isMirrored } = frameOf(panel, connection);
  const { mark } = connection;
  const { state } = explanation.answer;
  const isAsked = state === 'fails' || state === 'not covered';
  const asked = useAsked(isAsked ? () => askRemedies(mark) : null, [isAsked, mark, file]);
  if (!isAsked) return null;
  const take = ({ change, words, ratioBefore, ratioAfter }: Remedy) => {
    const why = session.commit(`${mark}: ${words}`.slice(0, 400), replaceValues(change));
    if (why !== null) tell('fault', why);
    else
      tell('good', `${mark}: ${words}. It was ${showRatio(ratioBefore)}, it is ${showRatio(ratioAfter)}`, {
        text: 'Undo',
        run: () => session.undo(),
      });
  };
  const found = asked.value;
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
          {found.remedies.map((remedy) => (
            <Item key={remedy.words} remedy={remedy} onTake={() => take(remedy)} />
          ))}
        </ul>
      )}
      {isMirrored && found?.remedies.some(({ kind }) => kind === 'move') && (
        <p class={styles.notes}>
          Right and left are those of the panel’s drawing, which shows its {panel.drawnFace} face; the picture here is
          seen from the front of the {connection.face} face.
        </p>
      )}
      {found !== null && found.inVain.length > 0 && (
        <details class={styles.vain}>
          <summary>Tried in vain: {found.inVain.length}</summary>
          <ul>
            {found.inVain.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
