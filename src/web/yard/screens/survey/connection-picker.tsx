import { placesOf } from '../../../../say/number-runs.ts';
import { BigKey } from '../../parts/big-key.tsx';
import type { SurveyPartProps } from './survey-part.ts';
import styles from './survey-screen.module.css';

/** Which plate will not go on: one connection of a large face. */
export function ConnectionPicker({ tape, piece }: SurveyPartProps) {
  const { context, plan } = piece;
  const connections = context.index
    .connectionsOf(plan.setOut.panel.mark)
    .flatMap(({ key, mark, face, inserts }) => (face === 'edge' ? [] : [{ key, mark, face, inserts }]));
  const numbersOf = (ids: readonly string[]) =>
    plan.setOut.items.filter(({ castIn }) => ids.includes(castIn.id)).map(({ number }) => number);
  return (
    <>
      <h2>Which connection?</h2>
      {connections.length === 0 && <p>No connection of this panel is in one of its large faces.</p>}
      <div class={styles.keys}>
        {connections.map(({ key, mark, face, inserts }) => (
          <BigKey
            key={key}
            more={`${placesOf(numbersOf(inserts.map(({ insert }) => insert)))}, ${face}`}
            onPress={() => tape.begin({ key, face })}
          >
            {mark}
          </BigKey>
        ))}
      </div>
    </>
  );
}
