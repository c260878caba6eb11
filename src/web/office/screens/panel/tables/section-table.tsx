import type { Panel } from '../../../../../job/documents/panel.ts';
import { changePanel } from '../../../../../job/edit/commands/edit-face.ts';
import { Button } from '../../../../parts/button.tsx';
import { ChoiceField, QuantityField } from '../../../../parts/field.tsx';
import { Sign } from '../../../../parts/signs.tsx';
import { Table } from '../../../../parts/table.tsx';
import { writeQuantity } from '../../../../parts/units.ts';
import type { PanelDesk } from '../desk/panel-desk.ts';
import { say } from './say.ts';
import styles from './tables.module.css';

type LayerKind = Panel['layers'][number]['kind'];

const KINDS = (['structural', 'outer skin', 'insulation', 'liner', 'cavity'] as const).map((value) => ({
  value,
  text: value,
}));
const DATUMS = (['bottom-left', 'bottom-right', 'top-left', 'top-right'] as const).map((value) => ({
  value,
  text: value.replace('-', ' '),
}));
const TURNS = ([0, 90, 180, 270] as const).map((turn) => ({ value: String(turn), text: `${turn}°`, turn }));
const FACES = (['outside', 'inside'] as const).map((value) => ({ value, text: value }));

/** Thickness, layers, battered edges, and how the panel lies in the form. */
export function SectionTable({ desk }: { readonly desk: PanelDesk }) {
  const { panel, index } = desk.live.value;
  const { mark, isHanded } = desk;
  const change = (label: string, write: Parameters<typeof changePanel>[1]) =>
    isHanded ? desk.handedWords : desk.commit(`${label} of ${mark}`, changePanel(mark, write));
  const setLayers = (layers: Panel['layers']) =>
    change('Layers', (draft) => {
      draft.layers = layers;
      // What it is made of adds up to how thick it is.
      if (layers.length > 0) draft.thickness_mm = layers.reduce((sum, { thickness_mm }) => sum + thickness_mm, 0);
    });
  const { layers } = panel;
  const replace = (k: number, part: Partial<Panel['layers'][number]>) =>
    setLayers(layers.map((layer, i) => (i === k ? { ...layer, ...part } : layer)));
  const batter = (edge: number) => panel.edges.find((one) => one.edge === edge)?.batter_deg ?? 0;
  return (
    <div class={styles.columns}>
      <section class={styles.stack}>
        <h3>Concrete and form</h3>
        <div class={styles.pair}>
          <QuantityField
            label="Thickness"
            quantity="length"
            value={panel.thickness_mm}
            isReadOnly={isHanded || layers.length > 0}
            {...(layers.length > 0 ? { hint: 'the sum of its layers' } : {})}
            onChange={(value) =>
              change('Thickness', (draft) => {
                draft.thickness_mm = value ?? panel.thickness_mm;
              })
            }
          />
          <ChoiceField
            label="Concrete"
            value={panel.concrete}
            options={index.file.job.concretes.map(({ id, name }) => ({ value: id, text: name ?? id }))}
            onChange={(id) =>
              change('Concrete', (draft) => {
                draft.concrete = id;
              })
            }
          />
          <ChoiceField
            label="Face down in the form"
            value={panel.faceDown}
            options={FACES}
            onChange={(value) =>
              change('Face down', (draft) => {
                draft.faceDown = value;
              })
            }
          />
          <ChoiceField
            label="Turned on the bed"
            value={String(panel.inForm.turn_deg)}
            options={TURNS}
            onChange={(value) =>
              change('Turn in the form', (draft) => {
                const turn_deg = TURNS.find((one) => one.value === value)?.turn ?? 0;
                draft.inForm = { ...panel.inForm, turn_deg };
              })
            }
          />
          <ChoiceField
            label="Datum corner, seen from above"
            value={panel.inForm.datum}
            options={DATUMS}
            onChange={(datum) =>
              change('Datum corner', (draft) => {
                draft.inForm = { ...panel.inForm, datum };
              })
            }
          />
        </div>
      </section>
      <section class={styles.stack}>
        <div class={styles.headRow}>
          <h3>Layers, from outside to inside</h3>
          <Button
            isDisabled={isHanded}
            onPress={() =>
              say(
                setLayers(
                  layers.length === 0
                    ? [{ kind: 'structural', thickness_mm: panel.thickness_mm }]
                    : [...layers, { kind: 'insulation', thickness_mm: 50 }],
                ),
              )
            }
          >
            Add a layer
          </Button>
        </div>
        {layers.length === 0 ? (
          <p class={styles.hint}>One layer of concrete over the whole thickness.</p>
        ) : (
          <Table
            caption="Layers from outside to inside"
            rows={layers.map((layer, k) => ({ layer, k }))}
            keyOf={({ k }) => String(k)}
            columns={[
              {
                head: 'Layer',
                cell: ({ layer, k }) => (
                  <ChoiceField<LayerKind>
                    isInTable
                    label={`Layer ${k + 1}`}
                    value={layer.kind}
                    options={KINDS}
                    onChange={(kind) => replace(k, { kind })}
                  />
                ),
              },
              {
                head: 'Thickness',
                kind: 'number',
                cell: ({ layer, k }) => (
                  <QuantityField
                    isInTable
                    label={`Thickness of layer ${k + 1}`}
                    quantity="length"
                    value={layer.thickness_mm}
                    isReadOnly={isHanded}
                    onChange={(value) => replace(k, { thickness_mm: value ?? layer.thickness_mm })}
                  />
                ),
              },
              {
                head: 'Remove',
                cell: ({ k }) => (
                  <Button
                    kind="quiet"
                    isDisabled={isHanded}
                    name={`Remove layer ${k + 1}`}
                    onPress={() => say(setLayers(layers.filter((_, i) => i !== k)))}
                  >
                    <Sign name="cross" />
                  </Button>
                ),
              },
            ]}
          />
        )}
      </section>
      <section class={styles.stack}>
        <h3>Edges</h3>
        <Table
          caption="Edges of the outline"
          rows={panel.outline_mm.map((at, edge) => ({ at, edge }))}
          keyOf={({ edge }) => String(edge)}
          columns={[
            { head: 'Edge', isName: true, cell: ({ edge }) => String(edge) },
            {
              head: 'Length',
              kind: 'number',
              cell: ({ at, edge }) => {
                const [x, y] = panel.outline_mm[(edge + 1) % panel.outline_mm.length]!;
                return writeQuantity('length', Math.hypot(x - at[0], y - at[1]));
              },
            },
            {
              head: 'Batter, off square to the face',
              kind: 'number',
              cell: ({ edge }) => (
                <QuantityField
                  isInTable
                  label={`Batter of edge ${edge}`}
                  quantity="degrees"
                  value={batter(edge)}
                  isReadOnly={isHanded}
                  onChange={(value) =>
                    change(`Batter of edge ${edge}`, (draft) => {
                      const others = draft.edges.filter((one) => one.edge !== edge);
                      draft.edges = (value ?? 0) === 0 ? others : [...others, { edge, batter_deg: value ?? 0 }];
                    })
                  }
                />
              ),
            },
          ]}
        />
      </section>
    </div>
  );
}
