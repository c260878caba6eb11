import type { Draft } from 'immer';
import type { LookedAt } from '../../../../assess/look-at-connection.ts';
import { type PropertyClass, propertyClasses } from '../../../../engine/hardware/property-classes.ts';
import { type ThreadName, threadNames } from '../../../../engine/hardware/threads.ts';
import { finish } from '../../../../job/documents/catalogue.ts';
import type { Connection } from '../../../../job/documents/connection.ts';
import { changeConnection } from '../../../../job/edit/plate/change-connection.ts';
import { CheckField, ChoiceField, QuantityField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { tell } from '../../state/messages.ts';
import styles from './bars-part.module.css';
import type { Commit } from './use-connection.ts';

const USES = [
  { use: 'seismic', words: 'earthquake' },
  { use: 'fire', words: 'fire' },
  { use: 'fatigue', words: 'fatigue' },
  { use: 'post-installed', words: 'drilled in afterwards' },
  { use: 'wet-set', words: 'pushed into wet concrete' },
] as const satisfies readonly { readonly use: Connection['uses'][number]; readonly words: string }[];

/** Stands for "as elsewhere said" where a name is chosen; names are never empty. */
const USUAL = '';

const orNull = <T extends string>(value: T | typeof USUAL): T | null => (value === USUAL ? null : value);

/** Makes an edit of the connection itself. */
type Put = (label: string, change: (draft: Draft<Connection>) => void) => string | null;

function putWith(commit: Commit, mark: string): Put {
  return (label, change) => commit(`${mark}: ${label}`, changeConnection(mark, change));
}

/** A switch has no place for a text of its own. */
const say = (why: string | null) => {
  if (why !== null) tell('fault', why);
};

/** The bolts, and what lies between plate and face. */
export function BoltsPart({
  looked: { connection, index, inserts },
  commit,
}: {
  readonly looked: LookedAt;
  readonly commit: Commit;
}) {
  const put = putWith(commit, connection.mark);
  const { rules } = index.file.library;
  const item = inserts[0]?.item ?? null;
  return (
    <>
      <Fields>
        <ChoiceField<PropertyClass | typeof USUAL>
          label="Class of the bolts"
          value={connection.boltClass ?? USUAL}
          options={[
            { value: USUAL, text: `as the rules: ${rules.defaults.boltClass}` },
            ...propertyClasses.map((value) => ({ value, text: value })),
          ]}
          onChange={(value) =>
            put('class of the bolts', (draft) => {
              draft.boltClass = orNull(value);
            })
          }
        />
        <ChoiceField<ThreadName | typeof USUAL>
          label="Thread of the bolts"
          value={connection.boltThread ?? USUAL}
          options={[
            { value: USUAL, text: item === null ? "as the insert's" : `as the insert's: ${item.thread}` },
            ...threadNames.map((value) => ({ value, text: value })),
          ]}
          onChange={(value) =>
            put('thread of the bolts', (draft) => {
              draft.boltThread = orNull(value);
            })
          }
        />
        <ChoiceField
          label="Finish of the bolts"
          value={connection.boltFinish ?? USUAL}
          options={[{ value: USUAL, text: 'not given' }, ...finish.options.map((value) => ({ value, text: value }))]}
          onChange={(value) =>
            put('finish of the bolts', (draft) => {
              draft.boltFinish = finish.options.find((one) => one === value) ?? null;
            })
          }
        />
        <QuantityField
          label="Thread engaged"
          quantity="length"
          value={connection.engagement_mm}
          whenEmpty={`${rules.defaults.engagement_d} bolt diameters`}
          {...(item === null
            ? {}
            : { hint: `The insert has ${writeQuantity('length', item.threadDepth_mm)} of thread.` })}
          onChange={(value) =>
            put('thread engaged', (draft) => {
              draft.engagement_mm = value;
            })
          }
        />
        <QuantityField
          label="Packers between plate and face"
          quantity="length"
          value={connection.packers_mm}
          onChange={(value) =>
            value === null
              ? null
              : put('packers', (draft) => {
                  draft.packers_mm = value;
                })
          }
        />
      </Fields>
      <div>
        <CheckField
          label="The gap is filled with mortar of at least 30 MPa"
          isOn={connection.isFilled}
          onChange={(isOn) =>
            say(
              put(isOn ? 'gap filled' : 'gap not filled', (draft) => {
                draft.isFilled = isOn;
              }),
            )
          }
        />
        <CheckField
          label="The plate cannot turn where the bolts bend"
          isOn={connection.isHeldAgainstTurning}
          onChange={(isOn) =>
            say(
              put(isOn ? 'plate held against turning' : 'plate free to turn', (draft) => {
                draft.isHeldAgainstTurning = isOn;
              }),
            )
          }
        />
      </div>
    </>
  );
}

/** The concrete where this connection is, and what it is used for. */
export function ConcretePart({
  looked: { connection, index, panel },
  commit,
}: {
  readonly looked: LookedAt;
  readonly commit: Commit;
}) {
  const put = putWith(commit, connection.mark);
  const mix = index.concretes.get(panel.concrete);
  const ages = (mix?.ages ?? []).filter(({ age_days }) => age_days !== 28);
  const usual = index.file.library.rules.defaults.cracked ? 'cracked' : 'uncracked';
  return (
    <>
      <Fields>
        <ChoiceField
          label="Concrete here"
          value={connection.cracked === null ? USUAL : connection.cracked ? 'cracked' : 'uncracked'}
          options={[
            { value: USUAL, text: `as the rules: ${usual}` },
            { value: 'cracked', text: 'cracked' },
            { value: 'uncracked', text: 'uncracked' },
          ]}
          onChange={(value) =>
            put('cracked or not', (draft) => {
              draft.cracked = value === USUAL ? null : value === 'cracked';
            })
          }
        />
        <ChoiceField
          label="Age when first loaded"
          value={connection.age_days === null ? USUAL : String(connection.age_days)}
          options={[
            {
              value: USUAL,
              text: mix === undefined ? '28 days' : `28 days: ${writeQuantity('stress', mix.strength28_MPa)}`,
            },
            ...ages.map(({ age_days, strength_MPa }) => ({
              value: String(age_days),
              text: `${age_days} days: ${writeQuantity('stress', strength_MPa)}`,
            })),
          ]}
          hint={`Strengths of mix ${panel.concrete}; more ages are given with the mix.`}
          onChange={(value) =>
            put('age when first loaded', (draft) => {
              draft.age_days = value === USUAL ? null : Number(value);
            })
          }
        />
      </Fields>
      <fieldset class={styles.group}>
        <legend>Used for what no rule here covers: such a connection never passes</legend>
        {USES.map(({ use, words }) => (
          <CheckField
            key={use}
            label={words}
            isOn={connection.uses.includes(use)}
            onChange={(isOn) =>
              say(
                put(isOn ? `used for: ${words}` : `not used for: ${words}`, (draft) => {
                  draft.uses = isOn ? [...draft.uses, use] : draft.uses.filter((one) => one !== use);
                }),
              )
            }
          />
        ))}
      </fieldset>
      {connection.age_days !== null && (
        <Notice kind="caution">
          Strength at an early age, temporary works and lifting have rules of their own; an answer here says nothing
          about them.
        </Notice>
      )}
    </>
  );
}
