import { type Signal, useSignal } from '@preact/signals';
import { Link, useLocation } from 'wouter-preact';
import { changeParts } from '../../../../assess/choose/apply-choice.ts';
import type { ChooseOptions, ConnectionChoice, PassingInsert } from '../../../../assess/choose/choice.ts';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { putParts } from '../../../../job/edit/plate/put-parts.ts';
import { frameOf } from '../../../../job/face-frame.ts';
import { gatherParts } from '../../../../job/resolve/connection-seat.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { nameMode } from '../../../../say/words.ts';
import { CheckField, QuantityField } from '../../../parts/field.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import type { ChoiceAnswer } from '../../../worker/connection-questions.ts';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { useAsked } from '../../state/use-asked.ts';
import { askChoice } from '../connection/connection-client.ts';
import { useConnection } from '../connection/use-connection.ts';
import styles from './choosing-screen.module.css';
import { RankedInsert } from './ranked-insert.tsx';
import { RejectedInserts } from './rejected-inserts.tsx';

function Options({ options }: { readonly options: Signal<ChooseOptions> }) {
  const put = (part: Partial<ChooseOptions>) => {
    options.value = { ...options.value, ...part };
    return null;
  };
  const { move, drills, strongerBolts, daysToPour } = options.value;
  return (
    <div class={`${styles.options} not-printed`}>
      <QuantityField
        label="It may be moved up to"
        quantity="length"
        value={move}
        onChange={(value) => (value === null ? null : value < 0 ? 'a distance is 0 or more' : put({ move: value }))}
      />
      <QuantityField
        label="Days until the pour"
        quantity="days"
        value={daysToPour}
        whenEmpty="not known"
        onChange={(value) =>
          value !== null && (value < 0 || !Number.isInteger(value))
            ? 'whole days, 0 or more'
            : put({ daysToPour: value })
        }
      />
      <CheckField label="Holes may be drilled larger" isOn={drills} onChange={(isOn) => put({ drills: isOn })} />
      <CheckField
        label="Stronger bolts may be taken"
        isOn={strongerBolts}
        onChange={(isOn) => put({ strongerBolts: isOn })}
      />
    </div>
  );
}

/** Why nothing can be ranked, where that is so, with the next step. */
function tellOutcome({ outcome, before }: ConnectionChoice): string | null {
  switch (outcome) {
    case 'no action':
      return 'No action is given, so nothing says which insert is strong enough. Give loads, or what each insert must resist, then choose again.';
    case 'other role':
      return 'Its inserts are no fixings (brace, lifting or another role): they are chosen by what their maker rates them for, not here.';
    case 'never covered':
      return `No insert cures that: ${before.reasons.join('; ')}`;
    case 'none passes':
      return 'No insert of the catalogue makes it pass as the options stand. Let it move, let holes be drilled, or allow stronger bolts; else see what would make it pass.';
    case 'chosen':
      return null;
  }
}

function Ranked({
  answer,
  looked,
  isBusy,
  onTake,
}: {
  readonly answer: ChoiceAnswer;
  readonly looked: LookedAt;
  readonly isBusy: boolean;
  readonly onTake: (insert: PassingInsert) => void;
}) {
  const { choice, lookAt } = answer;
  const { panel, connection } = looked;
  const why = tellOutcome(choice);
  const thickness = connection.face === 'edge' ? null : panel.thickness_mm;
  const brought = lookAt?.brought ?? [];
  return (
    <>
      {why !== null && (
        <Notice kind="note" title="Nothing to rank">
          {why}
        </Notice>
      )}
      {choice.hasSeveralCurrencies && <p>Prices are in several currencies, so cost did not count.</p>}
      {choice.ranked.length > 0 && (
        <ol
          class={`${styles.list} ${isBusy ? styles.busy : ''}`}
          aria-busy={isBusy}
          aria-label="Inserts with which it passes, best first"
        >
          {choice.ranked.map((insert, k) => (
            <RankedInsert
              key={insert.item.id}
              insert={insert}
              rank={k + 1}
              ground={{
                thickness,
                sight: { face: choice.before.face, isMirrored: frameOf(panel, connection).isMirrored },
              }}
              isLocked={panel.handedOf !== null}
              isPresent={choice.present.includes(insert.item.id)}
              onTake={() => onTake(insert)}
            />
          ))}
        </ol>
      )}
      {brought.length > 0 && (
        <Notice kind="note" title={`Look at, with ${choice.ranked[0]?.item.id ?? ''}`}>
          {brought.map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Notice>
      )}
      <RejectedInserts rejected={choice.rejected} />
    </>
  );
}

/** Which insert of the catalogue: every one tried in this place, those that pass ranked, each other with its reason. */
export function ChoosingScreen({ mark }: { readonly mark: string }) {
  const { session } = useOffice();
  const found = useConnection(mark);
  const options = useSignal<ChooseOptions>({ move: 0, drills: false, strongerBolts: false, daysToPour: null });
  const looked = found.value;
  const isThere = looked !== null;
  const asked = useAsked(isThere ? () => askChoice(mark, options.value) : null, [
    isThere,
    mark,
    session.file,
    options.value,
  ]);
  const [, go] = useLocation();
  useCommands('Choosing an insert', [
    { name: 'Back to the connection', key: 'B', run: () => go(addresses.connection(session.id, mark)) },
  ]);
  if (looked === null)
    return (
      <Empty title={`There is no connection ${mark}`}>
        <p>It was removed or has another mark now.</p>
        <Link href={addresses.panels(session.id)}>All panels</Link>
      </Empty>
    );
  const { explanation, index, connection, panel } = looked;
  const { answer } = explanation;
  const take = (insert: PassingInsert) => {
    const changed = changeParts(gatherParts(index, connection), insert, index.file.library.holding.ways);
    const why = session.commit(`${mark}: insert ${insert.item.id}`, putParts(changed.connection, changed.castIns));
    if (why !== null) tell('fault', why);
    else
      tell(
        'good',
        `${mark} has ${insert.item.id} now: it was ${showRatio(answer.ratio)}, it is ${showRatio(insert.ratio)}`,
        {
          text: 'Undo',
          run: () => session.undo(),
        },
      );
  };
  return (
    <Page
      title={`An insert for ${mark}`}
      lead={
        <span class={styles.before}>
          <Link href={addresses.connection(session.id, mark)}>{mark}</Link> on panel {panel.mark}, {answer.face}: now{' '}
          {[...new Set(looked.inserts.map(({ castIn }) => castIn.item))].join(', ')} <StateMark state={answer.state} />{' '}
          {answer.ratio === null ? '' : showRatio(answer.ratio)}
          {answer.governing === null ? '' : `, ${nameMode(answer.governing.mode)}`}
        </span>
      }
    >
      <Options options={options} />
      {panel.handedOf !== null && (
        <Notice kind="note" title="A handed partner">
          What is chosen for panel {panel.handedOf} holds here: choose there.
        </Notice>
      )}
      <Section
        title="Passes with"
        lead="Ranked: as it stands first, then by the fewest changes besides, already used in the panel and the job, to be had by the pour, no look-alikes, cost, ratio."
      >
        {asked.why !== null && <Notice kind="fault">{asked.why}</Notice>}
        {asked.value === null ? (
          <p class={styles.wait} aria-busy={asked.isBusy}>
            Trying every insert of the catalogue here …
          </p>
        ) : (
          <Ranked answer={asked.value} looked={looked} isBusy={asked.isBusy} onTake={take} />
        )}
      </Section>
      <Notice kind="caution">
        An insert that its maker rates for lifting or braces is no fixing here, and a fixing insert is not a lifting
        insert unless its maker rates it so.
      </Notice>
    </Page>
  );
}
