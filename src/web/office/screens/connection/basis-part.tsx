import type { WorkedConnection } from '../../../../assess/assess-connection.ts';
import { listGiven, listPlaces } from '../../../../say/given.ts';
import { listPlateSteps } from '../../../../say/plate-steps.ts';
import { showSentence } from '../../../../say/step-words.ts';
import { Table } from '../../../parts/table.tsx';
import styles from './basis-part.module.css';
import { Typeset } from './typeset.tsx';

/** All inputs that the steps start from, so that nothing in them comes from elsewhere; in the units of the formulas. */
export function GivenPart({ worked: { resolved } }: { readonly worked: WorkedConnection }) {
  const { places, sides } = listPlaces(resolved);
  return (
    <>
      <dl class={styles.given}>
        {listGiven(resolved).map(([label, text], i) => (
          <div key={i} class={styles.pair}>
            <dt>{label}</dt>
            <dd>
              <Typeset text={showSentence(text)} />
            </dd>
          </div>
        ))}
      </dl>
      <Table
        caption="Inserts, mm"
        rows={places}
        keyOf={({ id }) => id}
        columns={[
          { head: 'insert', cell: ({ id }) => id, isName: true },
          { head: 'given', cell: ({ given }) => given },
          { head: 'on the face', cell: ({ onFace }) => onFace },
          { head: 'recess', cell: ({ recess }) => recess, kind: 'number' },
          { head: 'takes shear', cell: ({ takesShear }) => takesShear },
          { head: 'distance square to sides, mm', cell: ({ near }) => near, kind: 'wide' },
        ]}
      />
      <Table
        caption="Sides in sight, mm; walking along them, the concrete is on the left"
        rows={sides}
        keyOf={({ name }) => name}
        columns={[
          { head: 'side', cell: ({ name }) => name, isName: true },
          { head: 'of', cell: ({ of }) => of },
          { head: 'from', cell: ({ from }) => from },
          { head: 'to', cell: ({ to }) => to },
          { head: 'length', cell: ({ length }) => length, kind: 'number' },
        ]}
      />
    </>
  );
}

/** How the plate hands one combination to its bolts, with the check of equilibrium. */
export function PlateForcesPart({
  worked,
  combination,
}: {
  readonly worked: WorkedConnection;
  readonly combination: string | null;
}) {
  const found = worked.cases.find((one) => one.combination.name === combination);
  const steps = found === undefined ? null : listPlateSteps(worked.resolved, found);
  if (steps === null) return <p>No plate stands between the loads and the inserts in this combination.</p>;
  return (
    <>
      <ul class={styles.lines}>
        {steps.lines.map((line) => (
          <li key={line}>
            <Typeset text={showSentence(line)} />
          </li>
        ))}
      </ul>
      <Table
        caption={`Forces on the inserts, ${combination ?? ''}`}
        rows={steps.rows}
        keyOf={([id]) => id ?? ''}
        columns={['insert', 'x mm', 'y mm', 'A_s mm²', 'e', 'N N', 'Vx N', 'Vy N'].map((head, k) => ({
          head,
          cell: (row: readonly string[]) => row[k],
          ...(k === 0 ? { isName: true } : { kind: 'number' as const }),
        }))}
      />
      <Table
        caption="Equilibrium, moments about the point of the action"
        rows={steps.balance}
        keyOf={([what]) => what}
        columns={['', 'sum of', 'gives', 'wanted', ''].map((head, k) => ({
          head: head === '' ? (k === 0 ? 'of' : 'check') : head,
          cell: (row: readonly string[]) => showSentence(row[k] ?? ''),
          ...(k === 0 ? { isName: true } : {}),
        }))}
      />
    </>
  );
}
