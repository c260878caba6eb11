import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import { movePoint, type Pose } from '../../../../engine/survey/pose.ts';
import type { SurveyRow } from '../../../../files/survey/survey-file.ts';
import type { CastIn } from '../../../../job/documents/cast-in.ts';
import type { Panel } from '../../../../job/documents/panel.ts';
import { frameOf } from '../../../../job/face-frame.ts';
import type { SurveyPair } from '../../../pieces/survey/survey-draft.ts';
import { listCorners, spotOf } from '../../../pieces/survey/survey-targets.ts';
import styles from './survey.module.css';

type Flat = readonly [number, number];
type ReadPair = SurveyPair & { readonly row: SurveyRow };

/** The picture's width in its own units; around the panel, and how much larger than true what is off is drawn. */
const WIDTH = 1000;
const AROUND = 46;
const LARGER = 10;
/** A number needs that much room beside its insert. */
const CROWDED = 44;

interface Joined {
  readonly line: number;
  readonly from: Flat;
  readonly to: Flat;
  readonly isConfirmed: boolean;
}

/** Where an insert is designed, as the drawing shows it. */
function flatSpot(panel: Panel, castIn: CastIn): Flat {
  const [x = 0, y = 0] = spotOf(panel, castIn).at;
  return [x, y];
}

/** Where a pair's point is designed; null: it has no place of its own. */
function findDesigned(panel: Panel, items: readonly SetOutItem[], { meaning }: SurveyPair): Flat | null {
  if (meaning.is === 'insert' || meaning.is === 'rod') {
    const castIn = items.find((item) => item.castIn.key === meaning.key)?.castIn;
    return castIn === undefined ? null : flatSpot(panel, castIn);
  }
  if (meaning.is === 'mark') return [meaning.x, meaning.y];
  if (meaning.is !== 'corner') return null;
  const corner = [...listCorners(panel, true), ...listCorners(panel, false)].find(({ name }) => name === meaning.name);
  return corner === undefined ? null : [corner.at[0], corner.at[1]];
}

/** The panel as drawn: inserts as designed hollow, surveyed points solid, pairs joined. What a pair is off is drawn larger, and says so. */
export function SurveyPicture({
  panel,
  items,
  pairs,
  pose,
  face,
  lit,
  tell,
}: {
  readonly panel: Panel;
  readonly items: readonly SetOutItem[];
  readonly pairs: readonly ReadPair[];
  /** Null: how the points lie on the panel is not known. */
  readonly pose: Pose | null;
  /** In front of which face points without heights were taken; null: they have heights. */
  readonly face: 'outside' | 'inside' | null;
  /** Line of the file under the hand. */
  readonly lit: number | null;
  readonly tell: (pair: ReadPair) => string;
}) {
  const xs = panel.outline_mm.map(([x]) => x);
  const ys = panel.outline_mm.map(([, y]) => y);
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const scale = (WIDTH - 2 * AROUND) / Math.max(Math.max(...xs) - left, (top - Math.min(...ys)) * 1.6);
  const width = (Math.max(...xs) - left) * scale + 2 * AROUND;
  const height = (top - Math.min(...ys)) * scale + 2 * AROUND;
  const put = ([x, y]: Flat): Flat => [AROUND + (x - left) * scale, AROUND + (top - y) * scale];
  const placeOf = (castIn: CastIn) => put(flatSpot(panel, castIn));
  const path = (ring: readonly Flat[]) =>
    `M${ring
      .map((at) =>
        put(at)
          .map((v) => v.toFixed(1))
          .join(' '),
      )
      .join('L')}Z`;
  const joined = pairs.flatMap((pair): Joined[] => {
    if (pose === null) return [];
    const [seenX = 0, seenY = 0] = movePoint(pose, pair.row.at_mm);
    // The mirror of the face that is not drawn is its own inverse.
    const [x, y] = face === null ? [seenX, seenY] : frameOf(panel, { face, edge: null }).toFace([seenX, seenY]);
    const designed = findDesigned(panel, items, pair);
    const from = designed ?? [x, y];
    const to: Flat = [from[0] + LARGER * (x - from[0]), from[1] + LARGER * (y - from[1])];
    return [{ line: pair.row.line, from: put(from), to: put(to), isConfirmed: pair.isConfirmed }];
  });
  const under = pairs.find(({ row }) => row.line === lit);
  return (
    <figure class={styles.picture}>
      <svg
        viewBox={`0 0 ${width.toFixed(0)} ${height.toFixed(0)}`}
        role="img"
        aria-label={`Panel ${panel.mark} as drawn: ${items.length} inserts as designed, ${joined.length} surveyed points`}
      >
        <path
          class={styles.panel}
          fill-rule="evenodd"
          d={[panel.outline_mm, ...panel.openings_mm].map(path).join('')}
        />
        {listCorners(panel, false).map(({ name, at }) => {
          const [x, y] = put([at[0], at[1]]);
          return <rect key={name} class={styles.corner} x={x - 7} y={y - 7} width={14} height={14} />;
        })}
        {items.map(({ castIn, number }) => {
          const [x, y] = placeOf(castIn);
          const isCrowded = items.some((other) => {
            const [ox, oy] = placeOf(other.castIn);
            return ox > x && ox - x < CROWDED && Math.abs(oy - y) < CROWDED;
          });
          return (
            <g key={castIn.key}>
              <circle class={styles.designed} cx={x} cy={y} r={9} />
              <text
                class={styles.number}
                x={x + (isCrowded ? -13 : 13)}
                y={y - 9}
                text-anchor={isCrowded ? 'end' : 'start'}
              >
                {number}
              </text>
            </g>
          );
        })}
        {joined.map(({ line, from, to, isConfirmed }) => (
          <g key={line} class={line === lit ? styles.lit : isConfirmed ? styles.confirmed : styles.suggested}>
            <path d={`M${from.join(' ')}L${to.join(' ')}`} />
            <circle cx={to[0]} cy={to[1]} r={line === lit ? 8 : 5} />
          </g>
        ))}
      </svg>
      <figcaption>
        {pose === null
          ? 'Hollow: as designed. Where the surveyed points lie on the panel is not known yet.'
          : `Hollow: as designed. Solid: surveyed, what is off drawn ${LARGER} times as large. `}
        {under !== undefined && <strong>{`${under.row.name ?? `line ${under.row.line}`}: ${tell(under)}`}</strong>}
      </figcaption>
    </figure>
  );
}
