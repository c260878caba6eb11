import { useSignal } from '@preact/signals';
import type { BoltUpCard, CardBolt } from '../../../../assess/bolt-up/bolt-up-report.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { sayPackers, sayRange, sayTightening } from '../../../../say/bolt-up-words.ts';
import {
  findOverTorque,
  listShort,
  pickBolts,
  STATED_RANGE,
  type TightenedBolt,
} from '../../../pieces/bolt-up/tightened.ts';
import { NO_TOOL, readTool } from '../../../pieces/survey/read-tool.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { DigitPad } from '../../parts/digit-pad.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import after from '../after/after.module.css';
import styles from './bolts.module.css';

type Tightened = BodyOf<'tightened'>;

/** What is being counted: turns of a bolt, the length that was put in instead, the torque. */
type Counting = { readonly kind: 'none' | 'torque' } | { readonly kind: 'turns' | 'length'; readonly bolt: CardBolt };

const WAYS: readonly { readonly how: Tightened['how']; readonly words: string; readonly more: string }[] = [
  { how: 'snug', words: 'Snug', more: 'one person with a spanner' },
  { how: 'snug and part of a turn', words: 'Snug and part of a turn', more: 'only as far as the design engineer said' },
  { how: 'torque wrench', words: 'Torque wrench', more: 'its value, its number' },
];

export interface TightenFormProps {
  readonly card: BoltUpCard;
  readonly today: string;
  readonly onDone: (body: Tightened) => void;
  readonly onBack: () => void;
}

/** One tap writes a connection down as the card says; what was otherwise is said bolt by bolt. */
export function TightenForm({ card, today, onDone, onBack }: TightenFormProps) {
  const range = useSignal(STATED_RANGE);
  const bolts = useSignal<readonly TightenedBolt[]>(pickBolts(card, STATED_RANGE) ?? []);
  const how = useSignal<Tightened['how']>('snug');
  const torque = useSignal<number | null>(null);
  const isLubricated = useSignal(card.tightening.isStainless);
  const tool = useSignal(NO_TOOL);
  const counting = useSignal<Counting>({ kind: 'none' });
  const stop = () => (counting.value = { kind: 'none' });
  const change = (bolt: CardBolt, what: Partial<TightenedBolt>) => {
    const key = bolt.insert.item.castIn.key;
    bolts.value = bolts.value.map((one) => (one.item === key ? { ...one, ...what } : one));
    stop();
  };
  const now = counting.value;
  if (now.kind === 'turns' || now.kind === 'length') {
    const { number } = now.bolt.insert.item;
    const isTurns = now.kind === 'turns';
    return (
      <Pad
        says={
          isTurns
            ? `Insert ${number}: whole turns by hand, no spanner, until it stops.`
            : `Insert ${number}: length of the bolt that went in, as stamped or measured under its head.`
        }
        label={`${number} · ${isTurns ? 'turns by hand' : 'length of the bolt'}`}
        unit={isTurns ? 'turns' : 'mm'}
        mostDigits={isTurns ? 2 : 3}
        onDone={(value) => change(now.bolt, isTurns ? { turns: value } : { length_mm: Math.max(1, value) })}
        onBack={stop}
      />
    );
  }
  if (now.kind === 'torque')
    return (
      <Pad
        says={sayTightening(card).join(' ')}
        label="torque that was set"
        unit="Nm"
        mostDigits={3}
        onDone={(value) => {
          torque.value = value > 0 ? value : null;
          stop();
        }}
        onBack={stop}
      />
    );
  const packed = card.packers[range.value];
  const short = listShort(card, bolts.value);
  const over = torque.value === null ? null : findOverTorque(card, torque.value);
  const read = readTool(tool.value);
  const isWrench = how.value === 'torque wrench';
  const until = tool.value.until;
  const isExpired = typeof read !== 'string' && until !== '' && until < today;
  const missing =
    bolts.value.length === 0
      ? 'no bolt can be named for these packers'
      : isWrench && torque.value === null
        ? 'type the torque first'
        : typeof read === 'string'
          ? read
          : null;
  const take = () => {
    if (missing !== null || typeof read === 'string') return;
    onDone({
      connection: card.connection.key,
      connectionMark: card.connection.mark,
      how: how.value,
      torque_Nm: isWrench ? torque.value : null,
      tool: isWrench ? read : null,
      bolts: bolts.value,
      lubricated: isLubricated.value,
      note: null,
    });
  };
  return (
    <section class={styles.form} aria-labelledby="tighten">
      <h2 id="tighten">How was {card.connection.mark} tightened?</h2>
      <p>{sayTightening(card).join(' ')}</p>
      <div class={styles.keys}>
        {WAYS.map((way) => (
          <BigKey key={way.how} isOn={how.value === way.how} more={way.more} onPress={() => (how.value = way.how)}>
            {way.words}
          </BigKey>
        ))}
        <BigKey
          isOn={isLubricated.value}
          more={card.tightening.isStainless ? 'stainless: it must be' : undefined}
          onPress={() => (isLubricated.value = !isLubricated.value)}
        >
          Thread lubricated
        </BigKey>
        {isWrench && (
          <BigKey onPress={() => (counting.value = { kind: 'torque' })} more="what the wrench was set to">
            {torque.value === null ? 'Type the torque' : `${torque.value} Nm`}
          </BigKey>
        )}
      </div>
      {over !== null && (
        <Answer kind="wrong" words={`More than ${Math.floor(over)} Nm, which is the most`}>
          <p>Loosen nothing, load nothing: the design engineer decides. Write down what was done.</p>
        </Answer>
      )}
      {isWrench && (
        <div class={styles.keys}>
          {(
            [
              ['name', 'The wrench (a gap stays in sight)', 200],
              ['serial', 'Its number', 60],
              ['until', 'Calibrated until, as 2027-03-31', 10],
            ] as const
          ).map(([field, label, longest]) => (
            <label key={field} class={after.field}>
              {label}
              <input
                type="text"
                maxLength={longest}
                autocomplete="off"
                value={tool.value[field]}
                onInput={({ currentTarget }) => (tool.value = { ...tool.value, [field]: currentTarget.value.trim() })}
              />
            </label>
          ))}
        </div>
      )}
      {isExpired && <Answer kind="unsure" isSmall words={`The wrench was calibrated until ${until} only`} />}
      <h3>Packers</h3>
      <div class={styles.keys}>
        {card.packers.map(({ range: packers, isStated, state }, k) => (
          <BigKey
            key={packers.join(' ')}
            isOn={range.value === k}
            more={`${isStated ? 'as designed · ' : ''}strength with ${packers[1]} mm: ${state}`}
            onPress={() => {
              range.value = k;
              bolts.value = pickBolts(card, k) ?? [];
            }}
          >
            {sayRange({ range: packers })}
          </BigKey>
        ))}
      </div>
      {packed !== undefined && !packed.isStated && packed.state !== 'passes' && (
        <Answer kind={packed.state === 'fails' ? 'wrong' : 'unsure'} isSmall words={sayPackers([packed]).join(' ')} />
      )}
      <h3>Bolts, as the card says unless you say otherwise</h3>
      <ul class={styles.bolts}>
        {card.bolts.map((bolt) => {
          const said = bolts.value.find(({ item }) => item === bolt.insert.item.castIn.key);
          return (
            <li key={bolt.insert.item.number} class={styles.bolt}>
              <span class={styles.number}>{bolt.insert.item.number}</span>
              <div class={styles.keys}>
                <BigKey
                  isDisabled={said === undefined}
                  more="another went in"
                  onPress={() => (counting.value = { kind: 'length', bolt })}
                >
                  {said === undefined ? 'no length' : `${said.length_mm} mm`}
                </BigKey>
                <BigKey
                  isDisabled={said === undefined}
                  more={`at least ${Math.ceil(bolt.minTurns)}`}
                  onPress={() => (counting.value = { kind: 'turns', bolt })}
                >
                  {said === undefined || said.turns === null ? 'Turns not counted' : `${said.turns} turns`}
                </BigKey>
              </div>
            </li>
          );
        })}
      </ul>
      {short.map(({ bolt, turns }) => (
        <Answer
          key={bolt.insert.item.number}
          kind="wrong"
          words={`Insert ${bolt.insert.item.number}: ${turns} turns, ${Math.ceil(bolt.minTurns)} needed. Stop.`}
        >
          <p>
            Take it out, clean the thread by hand, try again. Never tap it, never a shorter way. Else the design
            engineer decides.
          </p>
        </Answer>
      ))}
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey
          kind={short.length > 0 || over !== null ? 'stop' : 'main'}
          isTall
          meaning="tightened"
          isDisabled={missing !== null}
          more={missing ?? (short.length > 0 || over !== null ? 'it is flagged' : `${bolts.value.length} bolts`)}
          onPress={take}
        >
          It is tightened
        </BigKey>
      </FrameKeys>
    </section>
  );
}

interface PadProps {
  readonly says: string;
  readonly label: string;
  readonly unit: string;
  readonly mostDigits: number;
  readonly onDone: (value: number) => void;
  readonly onBack: () => void;
}

function Pad({ says, label, unit, mostDigits, onDone, onBack }: PadProps) {
  return (
    <section class={styles.form}>
      <p class={styles.large}>{says}</p>
      <FrameKeys>
        <DigitPad label={label} unit={unit} mostDigits={mostDigits} doneWords="Take it" onDone={onDone} />
        <BigKey kind="quiet" onPress={onBack}>
          Back
        </BigKey>
      </FrameKeys>
    </section>
  );
}
