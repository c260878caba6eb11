import { useSignal } from '@preact/signals';
import { Link, useLocation } from 'wouter-preact';
import { findThread } from '../../../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { nameCatalogue } from '../../../../job/edit/commands/edit-library.ts';
import { findItemUses, type ItemUse } from '../../../../job/find-uses.ts';
import { FINISH_WORDS } from '../../../../say/item-words.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { download, fileNameOf } from '../../../parts/download.ts';
import { ChoiceField, TextField } from '../../../parts/field.tsx';
import { ChooseFiles, FileDrop } from '../../../parts/files.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Fields, Page, Section } from '../../../parts/page.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import { tellError } from '../../state/use-asked.ts';
import { AddItemDialog } from './add-item-dialog.tsx';
import styles from './catalogue.module.css';
import { ImportDialog } from './import-dialog.tsx';
import { SmallPicture } from './insert-picture.tsx';

const ALL = 'all';

/** What is to be known of an insert beside its sizes. */
function listFlags({ qualification, tested, ratedLoads }: CatalogueItem): readonly string[] {
  return [
    qualification === null ? 'no qualification document: never passes' : `document for ${qualification.standard}`,
    ...(tested.length > 0 ? [countOf(tested.length, 'test')] : []),
    ...(ratedLoads.length > 0 ? [`rated for ${[...new Set(ratedLoads.map(({ role }) => role))].join(' and ')}`] : []),
  ];
}

function Card({
  session,
  item,
  use,
}: {
  readonly session: JobSession;
  readonly item: CatalogueItem;
  readonly use: ItemUse | undefined;
}) {
  return (
    <article class={styles.card}>
      <div class={styles.picture}>
        <SmallPicture item={item} />
      </div>
      <div class={styles.words}>
        <Link class={styles.open} href={addresses.catalogueItem(session.id, item.id)}>
          {item.id}
        </Link>
        <p>{item.name}</p>
        <dl class={styles.facts}>
          <dt>thread</dt>
          <dd>{item.thread}</dd>
          <dt>length</dt>
          <dd>{writeQuantity('length', item.length_mm)}</dd>
          <dt>embedment</dt>
          <dd>{writeQuantity('length', item.embedment_mm)}</dd>
          <dt>foot</dt>
          <dd>
            {item.foot.kind === 'diameter'
              ? `round, ${writeQuantity('length', item.foot.diameter_mm)}`
              : writeQuantity('area', item.foot.area_mm2)}
            {item.foot.isFullHead ? '' : ', not a full head'}
          </dd>
          <dt>steel</dt>
          <dd>
            {writeQuantity('stress', item.steel.yield_MPa)} yield, {FINISH_WORDS[item.finish]}
          </dd>
          <dt>used</dt>
          <dd>
            {use === undefined || use.count === 0
              ? 'not in this job'
              : `${use.count} in ${countOf(use.panels.length, 'panel')}`}
          </dd>
        </dl>
        <p class={styles.flags}>{listFlags(item).join(', ')}</p>
      </div>
    </article>
  );
}

/** All inserts, hanging from the face of the concrete at one scale. */
export function ItemList({ session }: { readonly session: JobSession }) {
  const [, go] = useLocation();
  const isAdding = useSignal(false);
  const given = useSignal<{ readonly name: string; readonly content: string } | null>(null);
  const thread = useSignal(ALL);
  const file = session.shown.value;
  const { catalogue } = file.library;
  const uses = findItemUses(file);
  const threads = [...new Set(catalogue.items.map((item) => item.thread))].sort(
    (a, b) => findThread(a).diameter - findThread(b).diameter,
  );
  const items = catalogue.items.filter((item) => thread.value === ALL || item.thread === thread.value);
  const take = async ([first]: readonly File[]) => {
    if (first === undefined) return;
    given.value = { name: first.name, content: await first.text() };
  };
  const save = async () => {
    try {
      const text = await askJobWorker(async (worker) => worker.writeCatalogue());
      download(`${fileNameOf(`${catalogue.id} ${catalogue.edition}`)}.csv`, text, 'text/csv');
    } catch (error) {
      tell('fault', `The catalogue was not written: ${tellError(error)}`);
    }
  };
  const choose = (files: readonly File[]) => void take(files);
  return (
    <Page
      title="Catalogue"
      lead="The inserts that the yard buys. All drawings at 1:5, hanging from the face of the concrete."
      actions={
        <>
          <Button
            kind="main"
            onPress={() => {
              isAdding.value = true;
            }}
          >
            Add an insert
          </Button>
          <ChooseFiles accept=".csv,.txt" onFiles={choose}>
            Take in a CSV
          </ChooseFiles>
          <Button onPress={() => void save()}>Save as CSV</Button>
        </>
      }
    >
      <FileDrop words="Let go: read as catalogue.csv" onFiles={choose} />
      <Notice kind="note" title="A changed catalogue changes the answers of this draft">
        Issued revisions keep the catalogue that they were issued with.
      </Notice>
      <Fields>
        <ChoiceField
          label="Shown"
          value={thread.value}
          options={[
            { value: ALL, text: `all ${catalogue.items.length}` },
            ...threads.map((name) => ({ value: name, text: `thread ${name}` })),
          ]}
          onChange={(value) => {
            thread.value = value;
            return null;
          }}
        />
      </Fields>
      {catalogue.items.length === 0 && (
        <Empty title="The catalogue is empty">
          <p>
            Add the inserts that the yard buys one by one, or take in a CSV file of them (docs/job-files.md has the
            columns).
          </p>
        </Empty>
      )}
      <div class={styles.cards}>
        {items.map((item) => (
          <Card key={item.id} session={session} item={item} use={uses.get(item.id)} />
        ))}
      </div>
      <Section title="The catalogue itself" lead="Its edition is what the job says that it was made with.">
        <Fields>
          <TextField
            label="Name"
            value={catalogue.name}
            onChange={(name) => session.commit('Catalogue named', nameCatalogue({ name }))}
          />
          <TextField
            label="Edition"
            value={catalogue.edition}
            onChange={(edition) => session.commit(`Catalogue edition ${edition}`, nameCatalogue({ edition }))}
          />
        </Fields>
      </Section>
      {isAdding.value && (
        <AddItemDialog
          session={session}
          onClose={() => {
            isAdding.value = false;
          }}
          onAdded={(id) => go(addresses.catalogueItem(session.id, id))}
        />
      )}
      {given.value !== null && (
        <ImportDialog
          session={session}
          name={given.value.name}
          content={given.value.content}
          onClose={() => {
            given.value = null;
          }}
        />
      )}
    </Page>
  );
}
