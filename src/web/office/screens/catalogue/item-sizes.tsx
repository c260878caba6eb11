import { threadNames } from '../../../../engine/hardware/threads.ts';
import { findOtherFoot } from '../../../../job/other-foot.ts';
import { CheckField, ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { type ItemPartProps, needed } from './edit-item.ts';
import { OptionalGroup } from './optional-group.tsx';

function Foot({ item, edit }: ItemPartProps) {
  const { foot } = item;
  return (
    <>
      <ChoiceField
        label="Foot given by"
        hint="A diameter for a round foot, else the bearing area that the maker states."
        value={foot.kind}
        options={[
          { value: 'diameter', text: 'diameter' },
          { value: 'area', text: 'net bearing area' },
        ]}
        onChange={(kind) =>
          kind === foot.kind
            ? null
            : edit(`foot given by ${kind}`, (draft) => {
                draft.foot = findOtherFoot(item);
              })
        }
      />
      {foot.kind === 'diameter' ? (
        <QuantityField
          label="Foot diameter"
          quantity="length"
          value={foot.diameter_mm}
          onChange={needed((value) =>
            edit('foot diameter', (draft) => {
              if (draft.foot.kind === 'diameter') draft.foot.diameter_mm = value;
            }),
          )}
        />
      ) : (
        <QuantityField
          label="Net bearing area"
          quantity="area"
          value={foot.area_mm2}
          onChange={needed((value) =>
            edit('bearing area', (draft) => {
              if (draft.foot.kind === 'area') draft.foot.area_mm2 = value;
            }),
          )}
        />
      )}
      <QuantityField
        label="Foot thickness"
        quantity="length"
        value={foot.thickness_mm}
        whenEmpty="not known"
        onChange={(value) =>
          edit('foot thickness', (draft) => {
            draft.foot.thickness_mm = value;
          })
        }
      />
      <CheckField
        label="Full round head (else only tests count)"
        isOn={foot.isFullHead}
        onChange={(isOn) =>
          edit(isOn ? 'full head' : 'not a full head', (draft) => {
            draft.foot.isFullHead = isOn;
          })
        }
      />
    </>
  );
}

function CrossHole({ item, edit }: ItemPartProps) {
  return (
    <>
      <OptionalGroup
        title="Cross hole"
        none="The body has no cross hole."
        give="Give its cross hole"
        fields={[
          { key: 'diameter_mm', label: 'Diameter of the hole' },
          { key: 'fromFoot_mm', label: 'Its height above the end of the foot' },
          { key: 'boreThere_mm', label: 'Bore of the body there', hint: '0 where the body is solid.' },
        ]}
        value={item.crossHole}
        onChange={(value) =>
          edit(value === null ? 'no cross hole' : 'cross hole', (draft) => {
            draft.crossHole = value;
          })
        }
      />
      <OptionalGroup
        title="Cross bar that the maker asks for"
        none="None. A cross bar holds the insert in place; it adds nothing to a resistance."
        give="Give the cross bar"
        fields={[
          { key: 'diameter_mm', label: 'Diameter of the bar' },
          { key: 'length_mm', label: 'Length of the bar' },
        ]}
        value={item.crossBar}
        onChange={(value) =>
          edit(value === null ? 'no cross bar' : 'cross bar', (draft) => {
            draft.crossBar = value;
          })
        }
      />
    </>
  );
}

/** Names and sizes. */
export function ItemSizes({ item, edit, onNamed }: ItemPartProps & { readonly onNamed: (id: string) => void }) {
  const lengths = [
    ['length_mm', 'Length', undefined],
    ['embedment_mm', 'Embedment', 'From the top to the bearing side of the foot.'],
    ['bodyDiameter_mm', 'Body diameter', undefined],
    ['threadDepth_mm', 'Depth of thread', undefined],
    ['threadStartsBelowTop_mm', 'Thread starts below the top by', undefined],
  ] as const;
  return (
    <Section title="Sizes" lead="From the maker’s drawing.">
      <Fields>
        <TextField
          label="Type"
          hint="All that use it follow when it gets another name."
          value={item.id}
          onChange={(id) => {
            const why = edit(`named ${id}`, (draft) => {
              draft.id = id;
            });
            if (why === null) onNamed(id);
            return why;
          }}
        />
        <TextField
          label="Name"
          value={item.name}
          onChange={(name) =>
            edit('name', (draft) => {
              draft.name = name;
            })
          }
        />
        <ChoiceField
          label="Thread"
          value={item.thread}
          options={threadNames.map((name) => ({ value: name, text: name }))}
          onChange={(thread) =>
            edit(`thread ${thread}`, (draft) => {
              draft.thread = thread;
            })
          }
        />
        {lengths.map(([key, label, hint]) => (
          <QuantityField
            key={key}
            label={label}
            hint={hint}
            quantity="length"
            value={item[key]}
            onChange={needed((value) =>
              edit(label.toLowerCase(), (draft) => {
                draft[key] = value;
              }),
            )}
          />
        ))}
        <Foot item={item} edit={edit} />
      </Fields>
      <CrossHole item={item} edit={edit} />
    </Section>
  );
}
