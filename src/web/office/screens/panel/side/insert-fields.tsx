import { giveType } from '../../../../../job/details/give-type.ts';
import type { CastIn } from '../../../../../job/documents/cast-in.ts';
import { changeCastIns, removeCastIns, turnToFace } from '../../../../../job/edit/commands/edit-face.ts';
import type { Recipe } from '../../../../../job/edit/edit-job.ts';
import { Button } from '../../../../parts/button.tsx';
import { ChoiceField, QuantityField } from '../../../../parts/field.tsx';
import { Notice } from '../../../../parts/notice.tsx';
import type { PanelDesk } from '../desk/panel-desk.ts';
import styles from './side.module.css';

const ROLES: readonly { readonly value: CastIn['role']; readonly text: string }[] = [
  { value: 'fixing', text: 'fixing' },
  { value: 'brace', text: 'brace' },
  { value: 'lifting', text: 'lifting' },
  { value: 'tie', text: 'tie' },
  { value: 'duct', text: 'duct' },
  { value: 'plate', text: 'plate' },
  { value: 'other', text: 'other' },
];

/** Stands for values that differ, in a list of choices. */
const MIXED = '(they differ)';
const NONE = '(none)';

function sameOf<T>(list: readonly CastIn[], read: (castIn: CastIn) => T): T | undefined {
  const [first, ...rest] = list.map(read);
  return rest.every((one) => one === first) ? first : undefined;
}

/** Type, holding, recess, role, cross bar and tolerance of what is selected, alike for all of it. */
export function InsertFields({ desk }: { readonly desk: PanelDesk }) {
  const { castIns, isHanded } = desk;
  const { ids, isWhole, connection } = desk.selection.value;
  const { catalogue, holding } = desk.index.value.file.library;
  const chosen = new Set(ids);
  const what = isWhole && connection !== null ? connection : `insert ${ids.join(', ')} of ${desk.mark}`;
  const change = (label: string, recipe: Recipe) => (isHanded ? desk.handedWords : desk.commit(label, recipe));
  const set = (label: string, write: Parameters<typeof changeCastIns>[2]) =>
    change(`${label} of ${what}`, changeCastIns(desk.mark, chosen, write));
  const item = sameOf(castIns, (one) => one.item ?? NONE);
  const way = sameOf(castIns, (one) => one.holding ?? NONE);
  const face = sameOf(castIns, (one) => one.face);
  const role = sameOf(castIns, (one) => one.role);
  const mixed = (value: string | undefined) => (value === undefined ? [{ value: MIXED, text: MIXED }] : []);
  return (
    <section class={styles.block} aria-label="Inserts">
      <h3>{castIns.length === 1 ? 'The insert' : `Its ${castIns.length} inserts`}</h3>
      <div class={styles.pair}>
        <ChoiceField
          label="Type"
          value={item ?? MIXED}
          options={[
            ...mixed(item),
            ...(item === NONE ? [{ value: NONE, text: 'none: described in words' }] : []),
            ...catalogue.items.map(({ id }) => ({ value: id, text: id })),
          ]}
          onChange={(id) => {
            const type = catalogue.items.find((one) => one.id === id);
            if (type === undefined) return null;
            return set('Type', (castIn) => Object.assign(castIn, giveType({ ...castIn }, type, holding.ways)));
          }}
        />
        <ChoiceField
          label="Role"
          value={role ?? MIXED}
          options={[...mixed(role), ...ROLES]}
          onChange={(value) => {
            const next = ROLES.find((one) => one.value === value)?.value;
            if (next === undefined) return null;
            return set('Role', (castIn) => {
              castIn.role = next;
            });
          }}
        />
        {(isWhole || connection === null) && face !== undefined && face !== 'edge' && (
          <ChoiceField
            label="Face"
            value={face}
            options={[
              { value: 'outside', text: 'outside' },
              { value: 'inside', text: 'inside' },
            ]}
            onChange={(next) =>
              change(
                `Face of ${what}`,
                turnToFace(desk.live.peek().panel, chosen, connection, next === 'outside' ? 'outside' : 'inside'),
              )
            }
          />
        )}
        <ChoiceField
          label="Held by"
          value={way ?? MIXED}
          options={[
            ...mixed(way),
            { value: NONE, text: 'not decided' },
            ...holding.ways.map(({ id, name }) => ({ value: id, text: name })),
          ]}
          onChange={(id) => {
            const next = holding.ways.find((one) => one.id === id);
            if (next === undefined && id !== NONE) return null;
            return set('Holding', (castIn) => {
              castIn.holding = next?.id ?? null;
              // What holds it decides how deep its top lies.
              castIn.recess_mm = next?.recess_mm ?? castIn.recess_mm;
            });
          }}
        />
        <QuantityField
          label="Recess"
          quantity="length"
          value={sameOf(castIns, (one) => one.recess_mm) ?? null}
          isReadOnly={isHanded}
          onChange={(value) =>
            set('Recess', (castIn) => {
              castIn.recess_mm = value ?? 0;
            })
          }
        />
        <QuantityField
          label="Off its place at most"
          quantity="length"
          value={sameOf(castIns, (one) => one.tolerance_mm) ?? null}
          whenEmpty="as the rules say"
          isReadOnly={isHanded}
          onChange={(value) =>
            set('Tolerance', (castIn) => {
              castIn.tolerance_mm = value;
            })
          }
        />
        <QuantityField
          label="Cross bar turned to"
          quantity="degrees"
          value={sameOf(castIns, (one) => one.crossBar?.direction_deg ?? null) ?? null}
          whenEmpty="along x"
          isReadOnly={isHanded}
          onChange={(value) =>
            set('Cross bar', (castIn) => {
              castIn.crossBar =
                value === null
                  ? null
                  : {
                      diameter_mm: castIn.crossBar?.diameter_mm ?? null,
                      length_mm: castIn.crossBar?.length_mm ?? null,
                      direction_deg: value,
                    };
            })
          }
        />
      </div>
      {castIns.some((one) => one.role === 'lifting' || one.role === 'brace') && (
        <Notice kind="caution">
          A fixing insert is not a lifting insert unless its maker rates it so; the same holds for braces. Lifting and
          bracing are never computed here.
        </Notice>
      )}
      <div class={`${styles.acts} not-printed`}>
        <Button
          kind="danger"
          isDisabled={isHanded}
          shortcut="Delete"
          name={`Remove ${what}`}
          onPress={() => {
            const why = change(
              `${what.charAt(0).toUpperCase()}${what.slice(1)} removed`,
              removeCastIns(desk.mark, chosen),
            );
            if (why !== null) desk.refuse(why, null);
          }}
        >
          Remove
        </Button>
      </div>
    </section>
  );
}
