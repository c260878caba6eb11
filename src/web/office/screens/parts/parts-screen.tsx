import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { Link } from 'wouter-preact';
import type { YardLists } from '../../../../assess/parts/parts-answer.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { DayField, findToday } from '../../../parts/day-field.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { ChoiceField } from '../../../parts/field.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { PartsList, PartsView } from '../../../worker/parts-view.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { useOffice } from '../../state/office.ts';
import { tellError, useAsked } from '../../state/use-asked.ts';
import { NeedTable, ShortTable } from './need-tables.tsx';
import { PanelParts, PourParts } from './part-scopes.tsx';
import styles from './parts.module.css';
import { StockBlock } from './stock-block.tsx';
import { readKeptStock } from './stock-store.ts';

const WHOLE = 'job';

function Findings({ view }: { readonly view: PartsView }) {
  const list = (title: string, kind: 'fault' | 'note' | 'caution', points: readonly string[]) =>
    points.length > 0 && (
      <Notice kind={kind} title={title}>
        <ul class={styles.points}>
          {points.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
      </Notice>
    );
  return (
    <div class={styles.findings}>
      {list('Cannot be made as it stands', 'fault', view.errors)}
      {list('Not decided, so that the counts are not complete', 'note', view.open)}
      {list('Does not agree', 'note', view.differences)}
      {list('Look-alikes: easily taken for each other', 'caution', view.lookAlikes)}
      {list('Of the stock', 'note', view.notes)}
      {list('Set out and counted, strength not checked', 'note', view.loose)}
    </div>
  );
}

function State({ view, hasStock }: { readonly view: PartsView; readonly hasStock: boolean }) {
  const short = new Set(view.shortages.map(({ kind }) => kind.id)).size;
  const words: ComponentChildren[] = [
    ...(hasStock && short > 0
      ? [<StateMark key="short" state="fails" words={`short of ${countOf(short, 'kind')}`} />]
      : []),
    ...(hasStock && short === 0
      ? [<StateMark key="none short" state="passes" words="nothing is short for a pour" />]
      : []),
    ...(view.errors.length > 0
      ? [<StateMark key="errors" state="cannot be computed" words={`${view.errors.length} cannot be made`} />]
      : []),
    ...(view.open.length > 0
      ? [<StateMark key="open" state="strength not checked" words={`${view.open.length} not decided`} />]
      : []),
  ];
  return (
    <div class={styles.state} role="status">
      {words}
      {!hasStock && (
        <span>Without a stock list nothing is known to be there: all that is needed is to be ordered.</span>
      )}
    </div>
  );
}

/** What each pour, panel and the whole job takes, and what of it is short. */
export function PartsScreen() {
  const { session } = useOffice();
  const { file } = session;
  const stock = useSignal(readKeptStock(session.id));
  const today = useSignal(findToday());
  const scope = useSignal(WHOLE);
  const lists: YardLists = { stock: stock.value?.rows ?? null, orders: null, today: today.value };
  const asked = useAsked(() => askJobWorker(async (worker) => worker.parts(lists)), [file, stock.value, today.value]);
  const view = asked.value;
  const [kind, name = ''] = scope.value.split(/:(.*)/s);
  const asScope = { pour: kind === 'pour' ? name : null, panel: kind === 'panel' ? name : null };
  const save = async (list: PartsList) => {
    try {
      const text = await askJobWorker(async (worker) => worker.partsList(list, asScope, lists));
      const of = scope.value === WHOLE ? (file.job.project.number ?? file.job.project.name) : name;
      download(`${fileNameOf(`${of} ${list}`)}.csv`, text, 'text/csv');
    } catch (error) {
      tell('fault', `The list was not written: ${tellError(error)}`);
    }
  };
  const isEmpty = view !== null && view.needs.length === 0;
  return (
    <Page
      title="Parts"
      lead="What the job, a pour or one casting of a panel takes: inserts, what holds them, bars, and bolts for the site."
      actions={
        view !== null &&
        !isEmpty && (
          <>
            <Button kind="main" onPress={() => void save('parts')}>
              Parts as CSV
            </Button>
            {kind !== 'panel' && <Button onPress={() => void save('bench')}>Bench as CSV</Button>}
            <Button onPress={() => void save('labels')}>Labels as CSV</Button>
            <Button onPress={() => print()}>Print</Button>
          </>
        )
      }
    >
      <div class={`${styles.bar} not-printed`}>
        <div class={styles.choice}>
          <ChoiceField
            label="Of"
            value={scope.value}
            options={[
              { value: WHOLE, text: 'the whole job' },
              ...file.job.pours.map(({ id, date }) => ({ value: `pour:${id}`, text: `pour ${id}, ${date}` })),
              ...file.job.panels.map(({ mark }) => ({ value: `panel:${mark}`, text: `panel ${mark}` })),
            ]}
            onChange={(value) => {
              scope.value = value;
              return null;
            }}
          />
        </div>
        <div class={styles.choice}>
          <DayField
            label="Counted from"
            value={today.value}
            onChange={(value) => {
              today.value = value;
              return null;
            }}
          />
        </div>
      </div>
      {asked.why !== null && (
        <Notice kind="fault" title="The parts could not be counted">
          {asked.why}
        </Notice>
      )}
      {view === null && asked.why === null && <p aria-busy="true">Counting the parts …</p>}
      {isEmpty && (
        <Empty title="Nothing is cast in yet">
          <p>Parts are counted from the inserts of the panels and the way in which each is held.</p>
          <Link href={addresses.panels(session.id)}>To the panels</Link>
        </Empty>
      )}
      {view !== null && !isEmpty && (
        <>
          {scope.value === WHOLE && (
            <>
              <State view={view} hasStock={stock.value !== null} />
              <StockBlock
                job={session.id}
                stock={stock.value}
                onStock={(next) => {
                  stock.value = next;
                }}
              />
              {view.shortages.length > 0 && stock.value !== null && (
                <Section
                  title="Short"
                  lead="At hand is what is in stock, or comes before the day on which the bench is laid."
                >
                  <ShortTable shortages={view.shortages} today={view.today} />
                </Section>
              )}
              <Section
                title="The whole job"
                lead={
                  view.unplanned.length === 0
                    ? 'Each panel as often as pours cast it, from the day above on.'
                    : `Each panel as often as pours cast it, from the day above on; in no pour, counted once each: ${view.unplanned.join(', ')}.`
                }
              >
                <NeedTable needs={view.needs} today={view.today} />
              </Section>
              <Findings view={view} />
            </>
          )}
          {kind === 'pour' && <PourParts key={name} file={file} id={name} />}
          {kind === 'panel' && <PanelParts key={name} file={file} mark={name} />}
        </>
      )}
    </Page>
  );
}
