import { FINISH_WORDS, THREAD_CLASS_WORDS } from '../../../../say/item-words.ts';
import { CheckField, ChoiceField, QuantityField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import styles from './catalogue.module.css';
import { type ItemPartProps, needed } from './edit-item.ts';

const FINISHES = ['plain', 'zinc', 'galvanised', 'stainless'] as const;
const THREAD_CLASSES = ['6H', '6AZ', '6AX'] as const;

/** Steel, surface, and which bolts go in. */
export function ItemSteel({ item, edit }: ItemPartProps) {
  const stresses = [
    ['ultimate_MPa', 'Ultimate strength f_uk'],
    ['yield_MPa', 'Yield strength f_yk'],
  ] as const;
  const shares = [
    ['elongation_percent', 'Elongation A5 (%)'],
    ['areaReduction_percent', 'Reduction of area Z (%)'],
  ] as const;
  return (
    <Section title="Steel and surface" lead="Ductility that is not known counts as none.">
      <Fields>
        {stresses.map(([key, label]) => (
          <QuantityField
            key={key}
            label={label}
            quantity="stress"
            value={item.steel[key]}
            onChange={needed((value) =>
              edit(label, (draft) => {
                draft.steel[key] = value;
              }),
            )}
          />
        ))}
        {shares.map(([key, label]) => (
          <QuantityField
            key={key}
            label={label}
            quantity="number"
            value={item.steel[key]}
            whenEmpty="not known"
            onChange={(value) =>
              edit(label, (draft) => {
                draft.steel[key] = value;
              })
            }
          />
        ))}
        <ChoiceField
          label="Finish"
          value={item.finish}
          options={FINISHES.map((value) => ({ value, text: FINISH_WORDS[value] }))}
          onChange={(finish) =>
            edit(`finish ${finish}`, (draft) => {
              draft.finish = finish;
            })
          }
        />
        <QuantityField
          label="Coating (µm)"
          quantity="number"
          value={item.coating_um}
          onChange={needed((value) =>
            edit('coating', (draft) => {
              draft.coating_um = value;
            }),
          )}
        />
        <ChoiceField
          label="Class of the thread"
          value={item.threadClass}
          options={THREAD_CLASSES.map((value) => ({ value, text: THREAD_CLASS_WORDS[value] }))}
          onChange={(threadClass) =>
            edit(`thread class ${threadClass}`, (draft) => {
              draft.threadClass = threadClass;
            })
          }
        />
        <QuantityField
          label="Tightening torque, at most"
          quantity="torque"
          value={item.maxTorque_Nm}
          whenEmpty="not given"
          onChange={(value) =>
            edit('torque', (draft) => {
              draft.maxTorque_Nm = value;
            })
          }
        />
      </Fields>
      <fieldset class={styles.set}>
        <legend class={styles.legend}>Bolts that go in</legend>
        <div class={styles.checks}>
          {FINISHES.map((finish) => {
            const isOn = item.boltFinishes.includes(finish);
            return (
              <CheckField
                key={finish}
                label={FINISH_WORDS[finish]}
                isOn={isOn}
                // One at least must go in.
                isDisabled={isOn && item.boltFinishes.length === 1}
                onChange={(next) =>
                  edit('bolts that go in', (draft) => {
                    draft.boltFinishes = FINISHES.filter((one) =>
                      one === finish ? next : item.boltFinishes.includes(one),
                    );
                  })
                }
              />
            );
          })}
        </div>
      </fieldset>
    </Section>
  );
}
