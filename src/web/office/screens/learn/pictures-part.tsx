import type { LearnedGroup } from '../../../../assess/learn/learn-scatter.ts';
import { drawHistogram } from '../../../../drawing/as-cast/histogram-picture.ts';
import { drawScatter } from '../../../../drawing/as-cast/scatter-picture.ts';
import { drawDistance } from '../../../../drawing/learn/distance-picture.ts';
import { trendAt } from '../../../../engine/statistics/intervals.ts';
import type { ScatterEllipse } from '../../../../engine/statistics/scatter.ts';
import { type GroupNames, nameGroup, SOURCE_WORDS, tellGroup } from '../../../../say/learn-words.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Section } from '../../../parts/page.tsx';
import { unitOf, units, writeValue } from '../../../parts/units.ts';
import styles from './learn.module.css';
import { writeLength } from './learn-names.ts';

const SQUARE = { width: 116, height: 116, text: 3 } as const;
const FLAT = { width: 110, height: 56, text: 3 } as const;

const ovalOf = ({ centre, half, angle }: ScatterEllipse) => ({ middle: centre, half, turn: angle });

/** One group as people would rather look at it: its scatter, how many are how far off, and whether that goes with the distance. */
export function PicturesPart({ group, names }: { readonly group: LearnedGroup; readonly names: GroupNames }) {
  const { points, found, source, count } = group;
  const number = (mm: number) => writeValue('length', mm);
  const unit = unitOf('length');
  const name = nameGroup(group, names);
  const tolerances = [...new Set(points.map(({ tolerance }) => tolerance))].sort((a, b) => a - b);
  const { how, axes } = SOURCE_WORDS[source];
  const dots = points.map(({ at, tolerance }) => ({
    ...{ number: null, by: at },
    isOff: Math.max(...at.map(Math.abs)) > tolerance,
  }));
  const ovals =
    found === null
      ? { ellipse: null, inner: null }
      : { ellipse: ovalOf(found.ellipse), inner: ovalOf(found.ellipseOfOne) };
  const ovalWords =
    found === null
      ? 'No ellipse: too few.'
      : 'Dashed ellipses: one standard deviation, and what holds 95 of 100 where the scatter is normal.';
  return (
    <Section
      title={`Pictures: ${name}, ${how}`}
      lead={`${count} inserts, all in ${unit}. One dot an insert, black where it is beyond its tolerance; boxes and dashed lines: tolerance. ${ovalWords}`}
    >
      <ul class={styles.lines}>
        {tellGroup(group, writeLength).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <div class={styles.plots} key={units.value}>
        <figure class={styles.figure}>
          <DrawingView
            drawing={drawScatter({ points: dots, tolerances, ...ovals }, SQUARE, number)}
            title={`Scatter of ${count} inserts, ${name}, ${how}. ${ovalWords}`}
          />
          <figcaption>
            x to the right: {axes[0]}; y up: {axes[1]}; {unit}, n = {count}
          </figcaption>
        </figure>
        {(['x', 'y'] as const).map((axis, k) => {
          const trend = (axis === 'x' ? found?.trendX : found?.trendY) ?? null;
          return (
            <div class={styles.stack} key={axis}>
              <figure class={styles.figure}>
                <DrawingView
                  drawing={drawHistogram(
                    { values: points.map(({ at }) => at[k]!), tolerances, words: `How many are how far off, ${axis}` },
                    FLAT,
                    number,
                  )}
                  title={`How many of ${count} inserts are how far off ${axes[k]}`}
                />
                <figcaption>
                  Off {axes[k]}, {unit}; n = {count}
                </figcaption>
              </figure>
              <figure class={styles.figure}>
                <DrawingView
                  drawing={drawDistance(
                    {
                      points: points.map(({ at, from, tolerance }) => ({
                        at: [from[k]!, at[k]!],
                        isOff: Math.abs(at[k]!) > tolerance,
                      })),
                      ...{ tolerances, lineAt: trend === null ? null : (from) => trendAt(trend, from) },
                      words: `Off over the distance from the datum, ${axis}`,
                    },
                    FLAT,
                    number,
                  )}
                  title={`How far ${count} inserts are off ${axes[k]} over their distance from the datum, with the line through them and the band that holds it in 95 of 100 cases`}
                />
                <figcaption>
                  Distance from the datum along it to the right, {unit}; n = {count}.{' '}
                  {trend === null
                    ? 'No line: too few, or all at one distance.'
                    : 'Line of least squares; the band holds it in 95 of 100 cases.'}
                </figcaption>
              </figure>
            </div>
          );
        })}
      </div>
    </Section>
  );
}
