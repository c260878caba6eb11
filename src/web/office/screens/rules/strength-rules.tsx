import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { propertyClasses } from '../../../../engine/hardware/property-classes.ts';
import { standardNames } from '../../../../engine/standards/standard-name.ts';
import type { Rules } from '../../../../job/documents/rules.ts';
import { changeRules, nameRules } from '../../../../job/edit/commands/edit-library.ts';
import { STANDARD_WORDS, takesPartialFactors } from '../../../../say/rule-words.ts';
import { Button } from '../../../parts/button.tsx';
import entry from '../../../parts/entry.module.css';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { EffectView } from '../../effect/effect-view.tsx';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import styles from './rules.module.css';

/** What of the rules decides about strength: tried first, then taken. */
type Strength = Pick<Rules, 'standard' | 'partialFactors' | 'defaults'>;

const pick = ({ standard, partialFactors, defaults }: Rules): Strength => ({ standard, partialFactors, defaults });

const CRACKED = [
  { value: 'yes', text: 'cracked' },
  { value: 'no', text: 'uncracked' },
] as const;

const FACTORS = [
  ['concrete', 'γ of concrete', 'Divides every resistance of concrete.'],
  ['steelTension', 'γ of steel in tension', 'Empty: by the ductility of the steel, as the standard says.'],
  ['steelShear', 'γ of steel in shear', 'Empty: by the ductility of the steel, as the standard says.'],
] as const;

/** Standard, factors and defaults; a change shows what it would do to every connection before it is made. */
export function StrengthRules({ session }: { readonly session: JobSession }) {
  const { rules } = session.shown.value.library;
  const tried = useSignal<Strength | null>(null);
  const shown = tried.value ?? pick(rules);
  const attempt = (change: Partial<Strength>) => {
    const next = { ...shown, ...change };
    tried.value = JSON.stringify(next) === JSON.stringify(pick(rules)) ? null : next;
    return null;
  };
  const other = useMemo(
    () => (tried.value === null ? null : { library: { rules: { ...rules, ...tried.value } } }),
    [tried.value, rules],
  );
  const take = () => {
    const next = tried.value;
    if (next === null) return;
    const label = next.standard === rules.standard ? 'Rules of strength changed' : `Checked by ${next.standard}`;
    const why = session.commit(
      label,
      changeRules((draft) => {
        draft.standard = next.standard;
        draft.partialFactors = { ...next.partialFactors };
        draft.defaults = { ...next.defaults };
      }),
    );
    if (why !== null) {
      tell('fault', why);
      return;
    }
    tried.value = null;
    tell('good', `${label}.`, { text: 'Undo', run: () => session.undo() });
  };
  const hasFactors = takesPartialFactors(shown.standard);
  return (
    <Section
      title="By what is checked"
      anchor="strength"
      lead="A change here is computed for every connection first; you see what it does, then take it or leave it."
    >
      <Notice kind="caution" title="Local codes and the licensed design engineer decide">
        Which standard holds and with which factors is not for this program to say; a national annex may set other
        values than those that the standard recommends.
      </Notice>
      <Fields>
        <ChoiceField
          label="Standard"
          hint="The anchorage standard by which every connection is checked; loads are taken as its design values."
          value={shown.standard}
          options={standardNames.map((value) => ({ value, text: STANDARD_WORDS[value] }))}
          onChange={(standard) => attempt({ standard })}
        />
        {hasFactors &&
          FACTORS.map(([key, label, hint]) => (
            <QuantityField
              key={key}
              label={label}
              hint={hint}
              quantity="number"
              value={shown.partialFactors[key]}
              {...(key === 'concrete' ? {} : { whenEmpty: 'the standard’s own' })}
              onChange={(value) => {
                if (value !== null && value < 1)
                  return 'expected 1 or more: a smaller factor would raise the resistance';
                return attempt({ partialFactors: { ...shown.partialFactors, [key]: value } });
              }}
            />
          ))}
        <ChoiceField
          label="Concrete where nothing is said"
          hint="Cracked is the safe side; uncracked must be shown by the designer."
          value={shown.defaults.cracked ? 'yes' : 'no'}
          options={CRACKED}
          onChange={(value) => attempt({ defaults: { ...shown.defaults, cracked: value === 'yes' } })}
        />
        <ChoiceField
          label="Bolt class where none is named"
          hint="Of the bolts that a connection does not name."
          value={shown.defaults.boltClass}
          options={propertyClasses.map((value) => ({ value, text: value }))}
          onChange={(boltClass) => attempt({ defaults: { ...shown.defaults, boltClass } })}
        />
        <QuantityField
          label="Least engagement of the bolt"
          hint="In bolt diameters: how far it must go into the thread."
          quantity="number"
          value={shown.defaults.engagement_d}
          onChange={(value) =>
            value === null || value <= 0
              ? 'expected a number above 0'
              : attempt({ defaults: { ...shown.defaults, engagement_d: value } })
          }
        />
      </Fields>
      {!hasFactors && (
        <Notice kind="note" title={`${shown.standard} takes none of the partial factors γ`}>
          Its strength reduction factors φ are its own. The γ of this job stay as they are for the other standards.
        </Notice>
      )}
      {other !== null && (
        <div class={styles.tried}>
          <div class={entry.entryHead}>
            <h3>Tried, not taken: {STANDARD_WORDS[shown.standard]}</h3>
            <div class={styles.tools}>
              <Button kind="main" onPress={take}>
                Take it for this job
              </Button>
              <Button
                onPress={() => {
                  tried.value = null;
                }}
              >
                Leave it as it is
              </Button>
            </div>
          </div>
          {shown.standard !== rules.standard && (
            <p>Loads stay as they are typed: they must be design values of {shown.standard} too.</p>
          )}
          <EffectView session={session} parts={other} />
        </div>
      )}
      <Fields>
        <TextField
          label="Name of these rules"
          hint="Stands on the sheets."
          value={rules.name}
          onChange={(name) => session.commit('Rules named', nameRules({ name }))}
        />
        <TextField
          label="Their edition"
          hint="What the job says that it was made with."
          value={rules.edition}
          onChange={(edition) => session.commit(`Edition ${edition} of the rules`, nameRules({ edition }))}
        />
      </Fields>
    </Section>
  );
}
