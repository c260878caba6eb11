import type { BoltUpReport } from '../../../../assess/bolt-up/bolt-up-report.ts';
import { CARD_STATES, sayTemporary } from '../../../../say/bolt-up-words.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import styles from './bolts.module.css';

/** Every bracket of the piece with how it stands, and what is needed for a time only. */
export function BoltsList({
  report,
  onCard,
}: {
  readonly report: BoltUpReport;
  readonly onCard: (connection: string) => void;
}) {
  const { cards, counts, temporary, place, isDone } = report;
  const open = temporary.filter(({ state }) => state === 'fill and seal' || state === 'sealed too early');
  return (
    <>
      {cards.length === 0 ? (
        <Answer kind="plain" words="Nothing is bolted to this panel">
          <p>The revision in force has no connection on it.</p>
        </Answer>
      ) : (
        <Answer
          kind={isDone ? 'good' : 'ask'}
          words={`${counts.tightened} of ${cards.length} tightened, ${counts.ready} ready, ${counts.waiting} waiting`}
        >
          <p>
            {isDone
              ? 'All permanent connections are tightened. Braces come off only as the temporary works design says.'
              : 'Every brace stays until all permanent connections are tightened and recorded.'}{' '}
            {place === null ? 'Where it stands is not recorded.' : `Stands at ${place}.`}
          </p>
        </Answer>
      )}
      <div class={styles.cards}>
        {cards.map((card) => (
          <BigKey
            key={card.connection.key}
            kind={card.state === 'not usable' || card.state === 'decide first' ? 'stop' : 'plain'}
            more={`${CARD_STATES[card.state]} · ${placesOf(card.bolts.map(({ insert }) => insert.item.number))} · ${card.seenFrom === 'edge' ? 'in the edge' : `from the ${card.seenFrom}`}`}
            onPress={() => onCard(card.connection.key)}
          >
            {card.connection.mark}
          </BigKey>
        ))}
      </div>
      {temporary.length > 0 && (
        <Answer
          kind={open.length === 0 ? 'plain' : 'move'}
          isSmall
          words={
            open.length === 0 ? 'Inserts that are needed for a time only' : `${open.length} to be filled and sealed`
          }
        >
          <ul class={styles.list}>
            {temporary.map((insert) => (
              <li key={insert.item.number}>{sayTemporary(insert)}</li>
            ))}
          </ul>
        </Answer>
      )}
      <Answer kind="wrong" isSmall words="NOT FOR LIFTING: no fixing or brace insert of this panel" />
    </>
  );
}
