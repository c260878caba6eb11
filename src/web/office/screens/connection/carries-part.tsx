import type { Asked, Capacities, Capacity, StatedCapacity } from '../../../../assess/capacities.ts';
import { nameMode } from '../../../../say/words.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Table } from '../../../parts/table.tsx';
import { writeLimit, writeQuantity } from '../../../parts/units.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { askCapacities } from './connection-client.ts';

const limit = (newton: number | null) => (newton === null ? '–' : writeLimit('force', newton / 1000));

function nameLoad({ direction }: Capacity): string {
  if (direction === null) return 'tension';
  const edge = direction.edge === null ? 'no edge square to it' : `edge at ${writeQuantity('length', direction.edge)}`;
  return `shear toward ${direction.name}, ${edge}`;
}

const nameLimit = ({ mode, reasons }: { readonly mode: Capacity['mode']; readonly reasons: readonly string[] }) =>
  `${mode === null ? 'no bolt takes it' : nameMode(mode)}${reasons.length > 0 ? '; not covered' : ''}`;

function Stated({ stated }: { readonly stated: readonly StatedCapacity[] }) {
  if (stated.length === 0) return null;
  return (
    <Table
      caption="In the ratio of the stated loads"
      rows={stated}
      keyOf={({ combination }) => combination}
      columns={[
        { head: 'stated combination', cell: ({ combination }) => combination, isName: true },
        { head: 'times', cell: ({ times }) => (times === null ? '–' : writeLimit('ratio', times)), kind: 'number' },
        { head: 'N of the worst insert', cell: ({ tension }) => limit(tension), kind: 'number' },
        { head: 'V of the worst insert', cell: ({ shear }) => limit(shear), kind: 'number' },
        { head: 'what limits it', cell: (one) => one.why ?? nameLimit(one), kind: 'wide' },
      ]}
    />
  );
}

function Shown({ asked }: { readonly asked: Asked<Capacities> }) {
  if (asked.kind === 'refused')
    return (
      <Notice kind="fault" title="Cannot be computed">
        {asked.reasons.join('; ')}
      </Notice>
    );
  const { group, stated, inserts, reasons } = asked.value;
  const isSingle = inserts.length === 0;
  return (
    <>
      <p>
        One load at a time{isSingle ? '' : ', shared equally by the inserts that take it'}, nothing else acting; design
        (factored) values, rounded down. None of it is a pass: no load was checked.
      </p>
      <Table
        caption="Largest loads, one at a time"
        rows={group}
        keyOf={nameLoad}
        columns={[
          { head: 'load', cell: nameLoad, isName: true },
          { head: isSingle ? 'at most' : 'in all at most', cell: ({ total }) => limit(total), kind: 'number' },
          ...(isSingle
            ? []
            : [{ head: 'an insert', cell: ({ perInsert }: Capacity) => limit(perInsert), kind: 'number' as const }]),
          { head: 'what limits it', cell: nameLimit, kind: 'wide' },
        ]}
      />
      <Stated stated={stated} />
      {reasons.length > 0 && (
        <Notice kind="caution" title="Not covered: numbers to be judged, never a pass">
          {reasons.join('; ')}
        </Notice>
      )}
      <p>
        Directions on the face seen from its front, counter-clockwise from the right: 270° is down. A plate counts with
        the stated loads only.
      </p>
    </>
  );
}

/** What the connection carries at most, by turning the full check round; computed in the worker. */
export function CarriesPart({ mark }: { readonly mark: string }) {
  const { file } = useOffice().session;
  const { value, why } = useAsked(() => askCapacities(mark), [mark, file]);
  if (why !== null) return <Notice kind="fault">{why}</Notice>;
  return value === null ? <p aria-busy="true">Turning the check round …</p> : <Shown asked={value} />;
}
