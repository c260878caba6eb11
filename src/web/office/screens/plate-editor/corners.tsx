import type { Polygon } from '../../../../engine/geometry/point.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField } from '../../../parts/field.tsx';
import { Table } from '../../../parts/table.tsx';
import styles from './plate-editor.module.css';

/** A polygon as its corners, each to be typed. */
export function Corners({
  name,
  corners,
  onChange,
}: {
  readonly name: string;
  readonly corners: Polygon;
  readonly onChange: (corners: [number, number][]) => string | null;
}) {
  const all = () => corners.map(([x, y]): [number, number] => [x, y]);
  const put = (k: number, axis: 0 | 1, value: number | null) => {
    const next = all();
    const corner = next[k];
    if (corner === undefined || value === null) return null;
    corner[axis] = value;
    return onChange(next);
  };
  const addAfter = (k: number) => {
    const [from, to] = [corners[k], corners[(k + 1) % corners.length]];
    if (from === undefined || to === undefined) return;
    onChange(all().toSpliced(k + 1, 0, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]));
  };
  return (
    <Table
      caption={`Corners of the ${name}`}
      rows={corners.map((at, k) => ({ at, k }))}
      keyOf={({ k }) => String(k)}
      columns={[
        { head: 'corner', cell: ({ k }) => k + 1, isName: true },
        {
          head: 'x',
          cell: ({ at, k }) => (
            <div class={styles.cell}>
              <QuantityField
                isInTable
                label={`x of corner ${k + 1}`}
                quantity="length"
                value={at[0]}
                onChange={(value) => put(k, 0, value)}
              />
            </div>
          ),
        },
        {
          head: 'y',
          cell: ({ at, k }) => (
            <div class={styles.cell}>
              <QuantityField
                isInTable
                label={`y of corner ${k + 1}`}
                quantity="length"
                value={at[1]}
                onChange={(value) => put(k, 1, value)}
              />
            </div>
          ),
        },
        {
          head: '',
          cell: ({ k }) => (
            <div class={styles.row}>
              <Button kind="quiet" name={`Add after corner ${k + 1}`} onPress={() => addAfter(k)}>
                Add after
              </Button>
              <Button
                kind="quiet"
                name={`Remove corner ${k + 1}`}
                isDisabled={corners.length <= 3}
                onPress={() => onChange(all().toSpliced(k, 1))}
              >
                Remove
              </Button>
            </div>
          ),
        },
      ]}
    />
  );
}
