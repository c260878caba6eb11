import type { PassingInsert } from '../../../../assess/choose/choice.ts';
import { drawInsertInSlab } from '../../../../drawing/sketch/insert-in-slab.ts';
import { asSeen, describeChanges, describeCost, describeDelivery, tellUse } from '../../../../say/choice-words.ts';
import type { Sight } from '../../../../say/move-words.ts';
import { nameMode } from '../../../../say/words.ts';
import { Button } from '../../../parts/button.tsx';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { personWriter, writeQuantity } from '../../../parts/units.ts';
import { RatioBar } from '../connection/ratio-bar.tsx';
import styles from './choosing-screen.module.css';

function Fact({
  name,
  text,
  isLate = false,
}: {
  readonly name: string;
  readonly text: string;
  readonly isLate?: boolean;
}) {
  if (text === '') return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd class={isLate ? styles.late : undefined}>{text}</dd>
    </div>
  );
}

export interface Ground {
  /** Concrete below the face [mm]; null: the connection is on an edge. */
  readonly thickness: number | null;
  readonly sight: Sight;
}

/** Behind an edge concrete is drawn as deep as this [mm]. */
const BEHIND_EDGE = 260;

/** One insert with which the connection passes, with all that its rank comes from. */
export function RankedInsert({
  insert,
  rank,
  ground,
  isPresent,
  isLocked,
  onTake,
}: {
  readonly insert: PassingInsert;
  readonly rank: number;
  readonly ground: Ground;
  /** It stands there already. */
  readonly isPresent: boolean;
  /** Of a handed partner: chosen for its source. */
  readonly isLocked: boolean;
  readonly onTake: () => void;
}) {
  const { item, ratio, governing, lookAlikes, delivery, isAsDesigned, notes } = insert;
  const changes = describeChanges(insert, asSeen(ground.sight, personWriter));
  const drawing = drawInsertInSlab(item, ground.thickness ?? BEHIND_EDGE, ground.thickness !== null);
  return (
    <li class={`${styles.item} ${isPresent ? styles.present : ''}`}>
      <span class={styles.rank}>{rank}</span>
      <div class={styles.picture}>
        <DrawingView drawing={drawing} title={`${item.id} in the concrete, to scale`} />
      </div>
      <div>
        <p class={styles.name}>
          {item.id} {isPresent && <span class={styles.small}>– there now</span>}
        </p>
        <p class={styles.small}>
          {item.name}, {item.thread} × {writeQuantity('length', item.length_mm)}, {item.finish}
        </p>
      </div>
      <div class={styles.used}>
        <RatioBar ratio={ratio} state="passes" />
        <p class={styles.small}>
          {nameMode(governing.mode)} ({governing.combination})
        </p>
      </div>
      <dl class={styles.facts}>
        <Fact name="in use" text={tellUse(insert)} />
        <Fact name="lead time" text={describeDelivery(insert)} isLate={delivery.kind === 'late'} />
        <Fact name="cost" text={describeCost(insert)} />
        <Fact name="look-alikes" text={lookAlikes.join(', ')} />
      </dl>
      {isAsDesigned ? (
        <span class={`${styles.small} ${styles.take}`}>as it stands</span>
      ) : (
        <span class={styles.take}>
          <Button
            isDisabled={isLocked}
            name={`Take this one: ${item.id}`}
            kind={rank === 1 ? 'main' : 'plain'}
            onPress={onTake}
          >
            Take this one
          </Button>
        </span>
      )}
      {(changes.length > 0 || notes.length > 0) && (
        <div class={styles.more}>
          {changes.map((text) => (
            <p key={text} class={styles.changes}>
              with it: {text}
            </p>
          ))}
          {notes.map((text) => (
            <p key={text} class={styles.small}>
              {text}
            </p>
          ))}
        </div>
      )}
    </li>
  );
}
