import type { ComponentChildren } from 'preact';
import { type Grouping, groupings, type LearnedGroup } from '../../../../assess/learn/learn-scatter.ts';
import type { Interval } from '../../../../engine/statistics/intervals.ts';
import {
  type GroupNames,
  nameGroup,
  nameGrouping,
  SOURCE_WORDS,
  tellStandout,
  tellTooFew,
  writeSigned,
} from '../../../../say/learn-words.ts';
import { Button } from '../../../parts/button.tsx';
import { ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { Table } from '../../../parts/table.tsx';
import styles from './learn.module.css';
import { writeLength } from './learn-names.ts';

/** What tells a group from the others of its grouping. */
export function keyOfGroup({ source, value }: LearnedGroup): string {
  return `${source} ${value ?? ''}`;
}

/** A value over the interval that holds the true one. */
function Estimate({
  value,
  interval: [low, high],
  write,
}: {
  readonly value: number;
  readonly interval: Interval;
  readonly write: (value: number) => string;
}) {
  return (
    <span class={styles.estimate}>
      <span>{write(value)}</span>
      <span class={styles.interval}>
        {write(low)} to {write(high)}
      </span>
    </span>
  );
}

const signed = (mm: number) => writeSigned(mm, writeLength);
const percent = (share: number) => `${Math.round(100 * share)} %`;

function Standout({ group }: { readonly group: LearnedGroup }) {
  const lines = group.found === null ? [] : tellStandout(group, writeLength);
  if (lines.length === 0) return <span class={styles.soft}>{group.found === null ? '–' : 'nothing'}</span>;
  return (
    <ul class={styles.lines}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

/** How inserts came out, put together by one thing at a time, group by group. */
export function GroupsPart({
  groups,
  by,
  shown,
  names,
  onGrouping,
  onShow,
}: {
  /** Of this grouping. */
  readonly groups: readonly LearnedGroup[];
  readonly by: Grouping;
  /** Key of the group in the pictures. */
  readonly shown: string | null;
  readonly names: GroupNames;
  readonly onGrouping: (by: Grouping) => void;
  readonly onShow: (key: string) => void;
}) {
  const found = (group: LearnedGroup, cell: (found: NonNullable<LearnedGroup['found']>) => ComponentChildren) =>
    group.found === null ? '–' : cell(group.found);
  return (
    <Section
      title="Bias and scatter"
      lead="Found less designed. Taped in the form: x along the form and y across it, from the datum; on an edge x along it and y above the bed. Surveyed: x and y of the drawing. Under each number: the interval that holds the true one in 95 of 100 cases."
      actions={
        <ChoiceField
          label="Inserts together"
          value={by}
          options={groupings.map((one) => ({ value: one, text: nameGrouping(one) }))}
          onChange={(value) => {
            onGrouping(value);
            return null;
          }}
        />
      }
    >
      {by === 'setter' && (
        <Notice kind="note" title="For finding causes, not for grading people">
          A wide scatter beside a name says where to look: at the panels that he was given, the bed, the way of holding,
          the tape, the hour. It says nothing about the person.
        </Notice>
      )}
      <Table<LearnedGroup>
        caption={`Bias and scatter ${nameGrouping(by)}`}
        rows={groups}
        keyOf={keyOfGroup}
        groupOf={({ source }) => SOURCE_WORDS[source].how}
        columns={[
          { head: 'which', kind: 'short', isName: true, cell: (group) => nameGroup(group, names) },
          {
            head: 'inserts',
            kind: 'number',
            cell: ({ count, found: has }) =>
              has === null ? <span title={tellTooFew(count)}>{count}: too few</span> : count,
          },
          {
            head: 'off in the mean, x',
            kind: 'number',
            cell: (group) =>
              found(group, ({ x }) => <Estimate value={x.mean} interval={x.meanInterval} write={signed} />),
          },
          {
            head: 'off in the mean, y',
            kind: 'number',
            cell: (group) =>
              found(group, ({ y }) => <Estimate value={y.mean} interval={y.meanInterval} write={signed} />),
          },
          {
            head: 'standard deviation, x',
            kind: 'number',
            cell: (group) =>
              found(group, ({ x }) => (
                <Estimate value={x.deviation} interval={x.deviationInterval} write={writeLength} />
              )),
          },
          {
            head: 'standard deviation, y',
            kind: 'number',
            cell: (group) =>
              found(group, ({ y }) => (
                <Estimate value={y.deviation} interval={y.deviationInterval} write={writeLength} />
              )),
          },
          {
            head: 'within tolerance',
            kind: 'number',
            cell: (group) =>
              found(group, ({ withinInterval }) => (
                <Estimate value={group.within / group.count} interval={withinInterval} write={percent} />
              )),
          },
          { head: 'beyond chance', kind: 'wide', cell: (group) => <Standout group={group} /> },
          {
            head: 'pictures',
            cell: (group) => (
              <Button
                kind="quiet"
                isOn={keyOfGroup(group) === shown}
                name={`${keyOfGroup(group) === shown ? 'below' : 'show'}: pictures of ${nameGroup(group, names)}, ${SOURCE_WORDS[group.source].how}`}
                onPress={() => onShow(keyOfGroup(group))}
              >
                {keyOfGroup(group) === shown ? 'below' : 'show'}
              </Button>
            ),
          },
        ]}
      />
      {groups.some(({ found: has }) => has === null) && (
        <p class={styles.soft}>Too few: ten measured alike are needed for a scatter (common practice).</p>
      )}
    </Section>
  );
}
