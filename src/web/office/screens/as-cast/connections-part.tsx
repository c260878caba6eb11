import { useSignal } from '@preact/signals';
import type { AsCastConnection, AsCastReport, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { nameFace } from '../../../../say/fit-words.ts';
import { placesOf } from '../../../../say/number-runs.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { STATE_WORDS } from '../../../../say/words.ts';
import { Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import styles from './as-cast.module.css';
import { ConnectionMark } from './as-cast-marks.tsx';
import { DecideRemedyDialog } from './decide-remedy-dialog.tsx';
import { DecisionPart } from './decision-part.tsx';
import { PrintKey } from './print-key.tsx';
import { RemediesTable } from './remedies-table.tsx';

/** What must be decided first. */
const ORDER: Readonly<Record<AsCastConnection['state'], number>> = {
  'not usable': 0,
  'needs a remedy': 0,
  conflict: 0,
  'fine as it is': 1,
  decided: 2,
  'not surveyed': 3,
  fine: 4,
};

export interface ConnectionsPartProps {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly report: AsCastReport;
}

function Connection({
  yard,
  piece,
  report,
  found,
  onDecide,
}: ConnectionsPartProps & {
  readonly found: AsCastConnection;
  readonly onDecide: (remedy: Remedy) => void;
}) {
  const { connection, before, state, remedies } = found;
  const members = [...found.members].sort((a, b) => a.item.number - b.item.number);
  const numbers = members.map(({ item }) => item.number);
  const why = members.flatMap(({ item, why: own }) => own.map((words) => `no. ${item.number}: ${words}`));
  const isOpen = state !== 'fine' && state !== 'not surveyed';
  return (
    <article class={styles.connection} aria-label={`Connection ${connection.mark}`}>
      <header class={styles.connectionHead}>
        <h3>{connection.mark}</h3>
        <ConnectionMark state={state} before={before} />
        <span class={styles.soft}>
          {`${nameFace(connection)}, ${placesOf(numbers)}; as designed ${STATE_WORDS[before.state]}, ${showRatio(before.ratio)}`}
        </span>
        {isOpen && (
          <span class={`${styles.print} not-printed`}>
            <PrintKey
              words="Non-conformance sheet"
              name={`Non-conformance sheet of ${connection.mark}`}
              onWrite={async () => (await import('./save-sheets.ts')).saveNonConformance(yard, piece, report, found)}
            />
          </span>
        )}
      </header>
      {isOpen && why.length > 0 && (
        <ul class={styles.lines}>
          {why.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      <DecisionPart yard={yard} piece={piece} found={found} />
      {isOpen && remedies.length > 0 && <RemediesTable yard={yard} piece={piece} found={found} onDecide={onDecide} />}
    </article>
  );
}

/** Every connection as cast, those to be decided first, each with its remedies beside each other. */
export function ConnectionsPart({ yard, piece, report }: ConnectionsPartProps) {
  const asked = useSignal<{ readonly found: AsCastConnection; readonly remedy: Remedy } | null>(null);
  const rows = [...report.connections].sort((a, b) => ORDER[a.state] - ORDER[b.state]);
  return (
    <Section
      title="Connections as cast"
      lead={`Each computed again with its inserts where they are. Concrete: ${report.strength.words}`}
    >
      {rows.map((found) => (
        <Connection
          key={found.connection.key}
          yard={yard}
          piece={piece}
          report={report}
          found={found}
          onDecide={(remedy) => {
            asked.value = { found, remedy };
          }}
        />
      ))}
      {rows.length === 0 && <p>This panel has no connection: nothing is bolted to it here.</p>}
      {asked.value !== null && (
        <DecideRemedyDialog
          yard={yard}
          piece={piece}
          found={asked.value.found}
          remedy={asked.value.remedy}
          onClose={() => {
            asked.value = null;
          }}
        />
      )}
    </Section>
  );
}
