import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { mayDo, ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import { PROOF_LOAD_CAUTION, tellProofLoadPlan } from '../../../../say/proof-load-words.ts';
import { NO_BASIS } from '../../../../say/pull-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { CheckField, QuantityField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { writeQuantity, writeValue } from '../../../parts/units.ts';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import { draftPull, listPullable, type PlannedPull, planPull } from '../../../pieces/pull/plan-pull.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { ReasonPart, useReasoning } from '../yard/reason-part.tsx';
import { WhoDecides } from '../yard/who-works.tsx';
import styles from './bolt-up.module.css';

/** A day: longer than any load is held [min]. */
const LONGEST_HOLD = 1440;

/** A value above 0 and not above the most that is taken. */
function checkAbove(value: number | null, most: number, unit: string): string | null {
  if (value === null || (value > 0 && value <= most)) return null;
  return `expected more than 0 and at most ${most} ${unit}`;
}

function Planned({ found }: { readonly found: PlannedPull }) {
  if (found.kind === 'none') return <p>{NO_BASIS[found.why]}</p>;
  if (found.kind === 'no load')
    return <p>No action is known that pulls at these inserts: the load must be given by whoever plans.</p>;
  const { plan, basis, usualCount } = found;
  return (
    <ul class={styles.lines} aria-label="The plan">
      {tellProofLoadPlan(plan).map((words) => (
        <li key={words}>{words}</li>
      ))}
      <li>{`Of ${basis.lot} such inserts (${basis.item.id}, ${basis.concrete}) in the job, common practice pulls ${usualCount}; chosen in this piece: ${plan.count.value}.`}</li>
    </ul>
  );
}

/** Who plans pull tests, of which inserts, with what load, and why. A new plan takes the place of the one before. */
export function PlanPullDialog({
  yard,
  piece,
  chosen,
  onClose,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  /** Keys of inserts that are planned already. */
  readonly chosen: readonly string[];
  readonly onClose: () => void;
}) {
  const keys = useSignal<readonly string[]>(chosen);
  const load = useSignal<number | null>(null);
  const hold = useSignal<number | null>(null);
  const movement = useSignal<number | null>(null);
  const reasoning = useReasoning();
  const { reason, failed } = reasoning;
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const pullable = listPullable(piece);
  const items = pullable.filter(({ castIn }) => keys.value.includes(castIn.key));
  const asked = { items, load_kN: load.value, hold_min: hold.value, movement_mm: movement.value };
  const found = useMemo(() => planPull(piece, asked), [piece, keys.value, load.value, hold.value, movement.value]);
  const most = found.kind === 'planned' ? found.plan.most : null;
  const isTooMuch = load.value !== null && most !== null && load.value > most;
  const person = yard.device.person.value;
  const permission = mayDo(person, 'plan a pull test');
  const stop = person === null ? 'Say first who plans.' : permission.may ? null : `${person.name}: ${permission.why}.`;
  const write = async () => {
    if (found.kind !== 'planned') {
      failed.value = found.kind === 'none' ? NO_BASIS[found.why] : 'The load is missing.';
      return;
    }
    if (!permission.may || (permission.as !== 'qa' && permission.as !== 'design engineer')) return;
    if (isTooMuch) {
      failed.value = 'The load is more than the steel may see.';
      return;
    }
    if (reason.value === '') {
      failed.value = 'The reason is missing: whoever reads it in years has nothing else.';
      return;
    }
    const body = draftPull(found, items, { role: permission.as, reason: reason.value });
    if (await writer.write([{ ...factOf(piece, null), kind: 'proof-planned', body }])) onClose();
    else failed.value = writer.fault.value;
  };
  return (
    <Dialog
      title={`Pull tests of ${piece.head.mark} no. ${piece.head.serial}`}
      onClose={onClose}
      isWide
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={stop !== null} onPress={() => void write()}>
            Write the plan down
          </Button>
        </>
      }
    >
      <Notice kind="caution" title="Before anybody pulls">
        {PROOF_LOAD_CAUTION}
      </Notice>
      <fieldset class={styles.choices}>
        <legend>Inserts that are pulled, of one type, drawn at random</legend>
        {pullable.map(({ number, item, castIn }) => (
          <CheckField
            key={castIn.key}
            label={`no. ${number} · ${item?.id ?? ''}`}
            isOn={keys.value.includes(castIn.key)}
            onChange={(isOn) => {
              const others = keys.value.filter((one) => one !== castIn.key);
              keys.value = isOn ? [...others, castIn.key] : others;
            }}
          />
        ))}
      </fieldset>
      <Fields>
        <QuantityField
          label="Load"
          quantity="force"
          value={load.value}
          whenEmpty="1.25 × design"
          fault={
            isTooMuch && most !== null
              ? `at most ${writeQuantity('force', Math.floor(most * 100) / 100)}: 0.9 of what the steel yields at`
              : null
          }
          onChange={(value) => {
            const fault = checkAbove(value, 10_000, 'kN');
            if (fault !== null) return fault;
            load.value = value;
            failed.value = null;
            return null;
          }}
        />
        <QuantityField
          label="Held for, minutes"
          quantity="number"
          value={hold.value}
          whenEmpty="1"
          onChange={(value) => {
            const fault = checkAbove(value, LONGEST_HOLD, 'minutes');
            if (fault === null) hold.value = value;
            return fault;
          }}
        />
        <QuantityField
          label="Moves at most"
          quantity="length"
          value={movement.value}
          whenEmpty={writeValue('length', 0.1)}
          onChange={(value) => {
            const fault = checkAbove(value, 100, 'mm');
            if (fault === null) movement.value = value;
            return fault;
          }}
        />
      </Fields>
      <Planned found={found} />
      <WhoDecides yard={yard} />
      <ReasonPart of={reasoning} placeholder="what it is asked for" stop={stop}>
        {permission.may && permission.as !== null && (
          <p>{`Planned by ${person?.name} as ${ROLE_WORDS[permission.as]}.`}</p>
        )}
      </ReasonPart>
    </Dialog>
  );
}
