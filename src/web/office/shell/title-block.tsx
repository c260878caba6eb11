import type { ComponentChildren } from 'preact';
import { CONNECTION_STATES } from '../../../assess/connection-answer.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Theme, theme } from '../../parts/theme.ts';
import { type UnitSystem, units } from '../../parts/units.ts';
import type { Office } from '../state/office.ts';
import type { Saving } from '../state/saver.ts';
import { writeClock } from '../state/write-moment.ts';
import styles from './title-block.module.css';

function Cell({
  caption,
  children,
  kind,
}: {
  readonly caption: string;
  readonly children: ComponentChildren;
  readonly kind?: 'wide' | 'connections' | 'edits';
}) {
  return (
    <div class={`${styles.cell} ${kind === undefined ? '' : styles[kind]}`}>
      <dt>{caption}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function tellSaving(saving: Saving): string {
  switch (saving.kind) {
    case 'saved':
      return `Saved ${writeClock(new Date(saving.at))}`;
    case 'saving':
      return `Saving ${saving.count} …`;
    case 'waiting':
      return `${saving.count} on this ${saving.isKept ? 'device' : 'page'} only`;
    case 'conflict':
      return 'Edited elsewhere too';
  }
}

/** The words of a small select: what is chosen stands in the block itself. */
function Pick<T extends string>({
  name,
  value,
  options,
  onChange,
}: {
  readonly name: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}) {
  return (
    <select
      class={styles.pick}
      aria-label={name}
      value={value}
      onChange={(event) => {
        const chosen = options.find(([option]) => option === event.currentTarget.value);
        if (chosen !== undefined) onChange(chosen[0]);
      }}
    >
      {options.map(([option, text]) => (
        <option key={option} value={option}>
          {text}
        </option>
      ))}
    </select>
  );
}

/** What stands at the foot of every screen, as at the foot of a drawing. */
export function TitleBlock({ office: { session, answers } }: { readonly office: Office }) {
  const { job, library } = session.shown.value;
  const saving = session.saver.saving.value;
  const progress = answers.progress.value;
  // Answers of connections that were removed meanwhile do not count.
  const all = job.connections.flatMap(({ key }) => answers.byKey.value.get(key) ?? []);
  const counts = CONNECTION_STATES.map((state) => ({ state, count: all.filter((one) => one.state === state).length }));
  return (
    <footer class={styles.block}>
      <dl class={styles.cells}>
        <Cell caption="Job" kind="wide">
          {job.project.number === null ? job.project.name : `${job.project.number} ${job.project.name}`}
        </Cell>
        <Cell caption="Revision">
          {job.revision === null ? 'none' : `${job.revision.letter} ${job.revision.status}`}
        </Cell>
        <Cell caption="Checked by">{library.rules.standard}</Cell>
        <Cell caption="Connections" kind="connections">
          <span class={styles.counts}>
            {counts.map(({ state, count }) =>
              count === 0 ? null : (
                <span key={state} title={state}>
                  <StateMark state={state} words={String(count)} />
                  <span class="aloud">{state}</span>
                </span>
              ),
            )}
            {progress !== null && (
              <progress
                class={styles.progress}
                max={Math.max(1, progress.total)}
                value={progress.done}
                aria-label="Connections computed"
              />
            )}
          </span>
        </Cell>
        <Cell caption="Units">
          <Pick<UnitSystem>
            name="Units"
            value={units.value}
            options={[
              ['metric', 'mm kN MPa'],
              ['US', 'in kip psi'],
            ]}
            onChange={(value) => {
              units.value = value;
            }}
          />
        </Cell>
        <Cell caption="Light">
          <Pick<Theme>
            name="Light or dark"
            value={theme.value}
            options={[
              ['system', 'as the system'],
              ['light', 'light'],
              ['dark', 'dark'],
            ]}
            onChange={(value) => {
              theme.value = value;
            }}
          />
        </Cell>
        <Cell caption="Edits" kind="edits">
          <span class={styles[saving.kind]} role="status" title={saving.kind === 'waiting' ? saving.why : undefined}>
            {tellSaving(saving)}
          </span>
        </Cell>
      </dl>
      <p class={styles.caution}>
        An aid for a competent person: local codes and the licensed design engineer decide. A fixing insert is not a
        lifting insert unless its maker rates it so.
      </p>
    </footer>
  );
}
