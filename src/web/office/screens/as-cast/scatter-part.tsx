import { useMemo } from 'preact/hooks';
import type { AsCastReport } from '../../../../assess/as-cast/as-cast-report.ts';
import { findScatter } from '../../../../assess/as-cast/scatter-of-inserts.ts';
import { drawHistogram } from '../../../../drawing/as-cast/histogram-picture.ts';
import { drawScatter } from '../../../../drawing/as-cast/scatter-picture.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Section } from '../../../parts/page.tsx';
import { units, writeQuantity, writeValue } from '../../../parts/units.ts';
import styles from './as-cast.module.css';

const ROOM = { width: 110, height: 110, text: 3 } as const;
const FLAT = { width: 110, height: 52, text: 3 } as const;

/** How all inserts of the piece lie about their designed places: one dot an insert, and how many lie how far off. */
export function ScatterPart({ report }: { readonly report: AsCastReport }) {
  const scatter = useMemo(() => findScatter(report.inserts), [report]);
  const { points, tolerances, ellipse, mean, least } = scatter;
  if (points.length === 0) return null;
  const number = (mm: number) => writeValue('length', mm);
  const count = points.length;
  const oval =
    ellipse === null
      ? `Fewer than ${least} inserts: too few for an ellipse of their scatter.`
      : `The middle of all ${count} lies ${writeQuantity('length', Math.hypot(...mean))} off. Dashed: the ellipse that holds 95 of 100 where the scatter is normal and as this piece shows it.`;
  return (
    <Section
      title="All together"
      lead={`Every insert in its own face, x to the right and y up. Boxes and dashed lines: tolerance. ${oval}`}
    >
      <div class={styles.plots} key={units.value}>
        <DrawingView
          drawing={drawScatter({ points, tolerances, ellipse }, ROOM, number)}
          title={`Scatter of ${count} inserts about their designed places. ${oval}`}
        />
        <div class={styles.stack}>
          {(['x', 'y'] as const).map((axis, k) => (
            <DrawingView
              key={axis}
              drawing={drawHistogram(
                {
                  values: points.map(({ by }) => by[k]!),
                  tolerances,
                  words: `Inserts by how far they are off along ${axis}`,
                },
                FLAT,
                number,
              )}
              title={`How many inserts are how far off along ${axis}`}
            />
          ))}
        </div>
      </div>
    </Section>
  );
}
