import { useSignal } from '@preact/signals';
import { memo } from 'preact/compat';
import { Link, useLocation } from 'wouter-preact';
import { planBed } from '../../../../assess/set-out/plan-bed.ts';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import type { Pour } from '../../../../job/documents/pour.ts';
import { listUnplanned } from '../../../../job/edit/commands/edit-pours.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { writeDay } from '../../../parts/day-field.tsx';
import { InSight } from '../../../parts/in-sight.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import type { PourFindings } from '../../../worker/pour-findings.ts';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import type { JobSession } from '../../state/session.ts';
import { AddPourDialog } from './add-pour-dialog.tsx';
import { BedView } from './bed-view.tsx';
import styles from './pours-list.module.css';
import { Readiness, usePourStrength } from './readiness.tsx';
import type { PoursFound } from './use-pour-findings.ts';

/** The figures and names around a bed make its room so many times as high. */
const ABOUT = 1.4;
/** Stops of a pour that its line shows; the pour's own screen has them all. */
const MOST_STOPS = 3;

/** Days in their order, each with its pours. */
function groupByDay(pours: readonly Pour[]): readonly (readonly [day: string, pours: readonly Pour[]])[] {
  const days = new Map<string, Pour[]>();
  for (const pour of pours) days.set(pour.date, [...(days.get(pour.date) ?? []), pour]);
  return [...days].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** Marks in a sentence, the first few by name. */
function nameMarks(marks: readonly string[]): string {
  return marks.length <= 12 ? marks.join(', ') : `${marks.slice(0, 12).join(', ')} and ${marks.length - 12} more`;
}

/** All pours, day by day, each as its bed looks from above. */
export function PoursList({ session, found }: { readonly session: JobSession; readonly found: PoursFound }) {
  const [, go] = useLocation();
  const adding = useSignal<readonly string[] | null>(null);
  const file = session.shown.value;
  const { pours } = file.job;
  const unplanned = listUnplanned(file);
  const hasBeds = file.library.yard.beds.length > 0;
  useCommands('Pours', [
    {
      name: 'Add a pour',
      key: 'N',
      isAllowed: () => hasBeds,
      run: () => {
        adding.value = [];
      },
    },
  ]);
  const add = (marks: readonly string[]) => {
    adding.value = marks;
  };
  return (
    <Page
      title="Pours"
      lead="What is cast on which bed on which day, and what stands against it."
      actions={
        hasBeds && (
          <Button kind="main" onPress={() => add([])} shortcut="N">
            Add a pour
          </Button>
        )
      }
    >
      {unplanned.length > 0 && hasBeds && (
        <Notice kind="note" title={`In no pour yet: ${countOf(unplanned.length, 'panel')}`}>
          <div class={styles.unplanned}>
            <span>{nameMarks(unplanned)}</span>
            <Button onPress={() => add(unplanned)}>Plan them</Button>
          </div>
        </Notice>
      )}
      {!hasBeds ? (
        <Empty title="The yard has no beds yet">
          <p>A pour is cast on a bed: its length, width and what it is made of decide how inserts are held.</p>
          <Link href={addresses.rules(session.id)}>Describe a bed under Rules</Link>
        </Empty>
      ) : (
        pours.length === 0 && (
          <Empty title="No pour is planned">
            <p>
              Choose a bed, a day and the panels that are cast on it. Folder, bench and bag labels follow from that.
            </p>
            <Button kind="main" onPress={() => add(unplanned)}>
              Add the first pour
            </Button>
          </Empty>
        )
      )}
      {groupByDay(pours).map(([day, ofDay]) => (
        <section key={day} class={styles.day} aria-label={writeDay(day)}>
          <h2 class={styles.dayHead}>{writeDay(day)}</h2>
          {ofDay.map((pour) => (
            <PourLine key={pour.id} job={session.id} file={file} pour={pour} found={found.byPour.get(pour.id)} />
          ))}
        </section>
      ))}
      {adding.value !== null && (
        <AddPourDialog
          session={session}
          marks={adding.value}
          onClose={() => {
            adding.value = null;
          }}
          onAdded={(id) => {
            adding.value = null;
            go(addresses.pour(session.id, id));
          }}
        />
      )}
    </Page>
  );
}

/** Drawn anew only when the job or what is found of this pour is another: findings come one pour after the other. */
const PourLine = memo(function PourLine({
  job,
  file,
  pour,
  found,
}: {
  readonly job: string;
  readonly file: JobFile;
  readonly pour: Pour;
  readonly found: PourFindings | undefined;
}) {
  const bed = file.library.yard.beds.find(({ id }) => id === pour.bed);
  if (bed === undefined) return null;
  const stops = found?.findings.filter(({ isStop }) => isStop) ?? [];
  return (
    <article class={styles.pour}>
      <div class={styles.about}>
        <div class={styles.line}>
          <Link class={styles.open} href={addresses.pour(job, pour.id)}>
            Pour {pour.id}
          </Link>
          <Readiness file={file} pour={pour} found={found} />
          <span class={styles.facts}>
            {bed.name}, {countOf(pour.pieces.length, 'piece')}
          </span>
        </div>
        <ul class={styles.stops}>
          {stops.slice(0, MOST_STOPS).map(({ words }) => (
            <li key={words} class={styles.stop}>
              <span class={styles.word}>STOP</span>
              <span>{words}</span>
            </li>
          ))}
          {stops.length > MOST_STOPS && (
            <li class={styles.more}>{stops.length - MOST_STOPS} more on the pour’s own screen</li>
          )}
          <StrengthLines file={file} pour={pour} />
        </ul>
      </div>
      <InSight aspect={bed.length_mm / bed.width_mm / ABOUT}>
        {() => <BedView plan={planBed(file, pour)} onMove={null} />}
      </InSight>
    </article>
  );
});

/** Connections of its panels that do not pass, a line for each state. */
function StrengthLines({ file, pour }: { readonly file: JobFile; readonly pour: Pour }) {
  const { warnings } = usePourStrength(file, pour);
  return (
    <>
      {warnings.map(({ state, text }) => (
        <li key={state} class={styles.strength}>
          <StateMark state={state} isBare />
          <span>{text}</span>
        </li>
      ))}
    </>
  );
}
