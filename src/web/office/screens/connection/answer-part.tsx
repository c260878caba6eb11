import { Link } from 'wouter-preact';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { reasonsOf } from '../../../../say/connection-words.ts';
import { nameMode } from '../../../../say/words.ts';
import { Sign } from '../../../parts/signs.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { addresses } from '../../state/addresses.ts';
import { useOffice } from '../../state/office.ts';
import styles from './answer-part.module.css';
import { RatioBar } from './ratio-bar.tsx';

/** The connections before and after this one on its panel; null at the ends. */
export function findBeside({ index, connection, panel }: LookedAt): readonly [string | null, string | null] {
  const marks = index.connectionsOf(panel.mark).map(({ mark }) => mark);
  const at = marks.indexOf(connection.mark);
  return [marks[at - 1] ?? null, marks[at + 1] ?? null];
}

function Beside({ looked }: { readonly looked: LookedAt }) {
  const { session } = useOffice();
  const [before, next] = findBeside(looked);
  if (before === null && next === null) return null;
  return (
    <nav class={`${styles.beside} not-printed`} aria-label={`Connections of panel ${looked.panel.mark}`}>
      {before !== null && (
        <Link class={styles.step} href={addresses.connection(session.id, before)}>
          <Sign name="before" /> {before}
        </Link>
      )}
      {next !== null && (
        <Link class={styles.step} href={addresses.connection(session.id, next)}>
          {next} <Sign name="next" />
        </Link>
      )}
    </nav>
  );
}

/** The answer first: state in words, what governs, how much is used, in which combination, and why it is no pass. */
export function AnswerPart({ looked }: { readonly looked: LookedAt }) {
  const { session } = useOffice();
  const { connection, explanation, inserts } = looked;
  const { answer } = explanation;
  const types = [...new Set(inserts.map(({ castIn }) => castIn.item ?? castIn.role))].join(', ');
  return (
    <header class={styles.answer}>
      <div class={styles.head}>
        <h1>{connection.mark}</h1>
        <span class={styles.state}>
          <StateMark state={answer.state} />
        </span>
        <span class={styles.where}>
          <Link href={addresses.panel(session.id, connection.panel)}>panel {connection.panel}</Link>, {answer.face}
          {connection.face === 'edge' ? '' : ' face'}, {inserts.length} × {types}
        </span>
        <Beside looked={looked} />
      </div>
      <RatioBar ratio={answer.ratio} state={answer.state} isLarge />
      <p class={styles.governs} role="status">
        {answer.governing === null
          ? answer.state === 'strength not checked'
            ? 'Nothing governs: these are resistances alone'
            : 'Nothing governs: no number came of it'
          : `${nameMode(answer.governing.mode)} governs, in “${answer.governing.combination}”`}
      </p>
      {reasonsOf(answer).length > 0 && (
        <ul class={styles.reasons} aria-label="Why it is no pass">
          {reasonsOf(answer).map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
    </header>
  );
}
