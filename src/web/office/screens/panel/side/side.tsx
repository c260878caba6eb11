import { governingOf } from '../../../../../say/connection-words.ts';
import { QuantityField } from '../../../../parts/field.tsx';
import { Notice } from '../../../../parts/notice.tsx';
import { StateMark } from '../../../../parts/state-mark.tsx';
import { writeValue } from '../../../../parts/units.ts';
import { useOffice } from '../../../state/office.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { ownGrid, usualGrid } from '../desk/settings.ts';
import { Headline } from './headline.tsx';
import { InsertFields } from './insert-fields.tsx';
import { PlaceFields } from './place-fields.tsx';
import { Results } from './results.tsx';
import styles from './side.module.css';

/** What is selected, beside the drawing; with nothing selected, the connections of the panel. */
export function Side({ desk }: { readonly desk: PanelDesk }) {
  const { ids, connection } = desk.selection.value;
  if (ids.length === 0 || desk.castIns.length === 0) return <Overview desk={desk} />;
  return (
    <aside class={styles.side} aria-label="Selected">
      {desk.isHanded && <Notice kind="note">{desk.handedWords}.</Notice>}
      <Headline desk={desk} />
      {connection !== null && <Results desk={desk} />}
      <PlaceFields desk={desk} />
      <InsertFields desk={desk} />
    </aside>
  );
}

function Overview({ desk }: { readonly desk: PanelDesk }) {
  const { answers } = useOffice();
  const { index } = desk;
  const connections = index.value.connectionsOf(desk.mark);
  const byKey = answers.byKey.value;
  const used = new Set(connections.flatMap(({ inserts }) => inserts.map(({ insert }) => insert)));
  const single = index.value.castInsOf(desk.mark).filter(({ id }) => !used.has(id));
  return (
    <aside class={styles.side} aria-label="Connections of the panel">
      {desk.isHanded && <Notice kind="note">{desk.handedWords}.</Notice>}
      <h2>Connections</h2>
      {connections.length === 0 && (
        <p class={styles.note}>None yet. Choose “Place …” above the drawing, then a pattern and where it goes.</p>
      )}
      <ul class={styles.list}>
        {connections.map(({ key, mark }) => {
          const answer = byKey.get(key);
          return (
            <li key={key}>
              <button type="button" class={styles.line} onClick={() => desk.takeConnection(mark)}>
                <span class={styles.lineMark}>{mark}</span>
                <span class={styles.lineWords}>{answer === undefined ? '' : governingOf(answer)}</span>
                <StateMark state={answer?.state ?? 'computing'} />
              </button>
            </li>
          );
        })}
      </ul>
      {single.length > 0 && (
        <>
          <h2>Of no connection</h2>
          <ul class={styles.list}>
            {single.map(({ key, id, role, item, description }) => (
              <li key={key}>
                <button type="button" class={styles.line} onClick={() => desk.take(id, true)}>
                  <span class={styles.lineMark}>{id}</span>
                  <span class={styles.lineWords}>{item ?? description}</span>
                  <span>{role === 'fixing' ? 'no connection: strength not checked' : role}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p class={styles.note}>
        Take hold of a connection to move it with its plate; with Alt, one insert alone. What it carries follows the
        hand.
      </p>
      <div class={styles.pair}>
        <QuantityField
          label="Places rest on steps of"
          quantity="length"
          value={ownGrid.value}
          whenEmpty={writeValue('length', usualGrid())}
          onChange={(value) => {
            if (value !== null && !(value > 0)) return 'expected a length above 0';
            ownGrid.value = value;
            return null;
          }}
        />
      </div>
    </aside>
  );
}
