import { Link, useLocation } from 'wouter-preact';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { addItem, copyName, removeItem } from '../../../../job/edit/commands/edit-library.ts';
import { findItemUses } from '../../../../job/find-uses.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Page, Section } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import styles from './catalogue.module.css';
import { editItemOf, type ItemPartProps } from './edit-item.ts';
import { LargePicture } from './insert-picture.tsx';
import { ItemDocuments } from './item-documents.tsx';
import { ItemRated } from './item-rated.tsx';
import { ItemSizes } from './item-sizes.tsx';
import { ItemSteel } from './item-steel.tsx';
import { ItemTests } from './item-tests.tsx';

function Buying({ item, edit }: ItemPartProps) {
  const { price } = item;
  return (
    <Section title="Buying">
      <Fields>
        <QuantityField
          label="Lead time"
          hint="Calendar days from order to delivery; without it no day to order by is known."
          quantity="days"
          value={item.leadTime_days}
          whenEmpty="not known"
          onChange={(leadTime_days) =>
            edit('lead time', (draft) => {
              draft.leadTime_days = leadTime_days;
            })
          }
        />
        <QuantityField
          label="Price"
          quantity="number"
          value={price?.amount ?? null}
          whenEmpty="not known"
          onChange={(amount) =>
            edit('price', (draft) => {
              draft.price = amount === null ? null : { amount, currency: price?.currency ?? 'EUR' };
            })
          }
        />
        {price !== null && (
          <TextField
            label="Currency"
            value={price.currency}
            onChange={(currency) =>
              edit('currency', (draft) => {
                draft.price = { ...price, currency };
              })
            }
          />
        )}
      </Fields>
    </Section>
  );
}

/** One insert with all that is known of it, each value checked as it is typed. */
export function ItemEditor({ session, item }: { readonly session: JobSession; readonly item: CatalogueItem }) {
  const [, go] = useLocation();
  const file = session.shown.value;
  const { items } = file.library.catalogue;
  const use = findItemUses(file).get(item.id);
  const edit = editItemOf(session, item);
  const isUsed = use !== undefined && use.count + use.details.length > 0;
  const copy = () => {
    const id = copyName(
      item.id,
      items.map((one) => one.id),
    );
    const why = session.commit(`Insert ${id} added, a copy of ${item.id}`, addItem({ ...item, id }, item.id));
    if (why === null) go(addresses.catalogueItem(session.id, id));
    else tell('fault', why);
  };
  const remove = () => {
    const why = session.commit(`Insert ${item.id} removed from the catalogue`, removeItem(item.id));
    if (why !== null) {
      tell('fault', why);
      return;
    }
    go(addresses.catalogue(session.id));
    tell('note', `${item.id} was removed.`, { text: 'Undo', run: () => session.undo() });
  };
  return (
    <Page
      title={item.id}
      lead={item.name}
      actions={
        <>
          <Button onPress={copy}>Copy it</Button>
          <Button kind="danger" isDisabled={isUsed} onPress={remove}>
            Remove it
          </Button>
        </>
      }
    >
      <div class={styles.editor}>
        <div class={styles.side}>
          <LargePicture item={item} />
          <Notice
            kind="note"
            title={
              isUsed ? `Used ${use.count} times in ${countOf(use.panels.length, 'panel')}` : 'Not used in this job'
            }
          >
            {isUsed ? (
              <>
                <p>
                  What is changed here changes their answers in this draft; issued revisions keep theirs. It can be
                  removed once nothing uses it.
                </p>
                <ul class={styles.uses}>
                  {use.details.map((detail) => (
                    <li key={`detail ${detail}`}>
                      standard detail <Link href={addresses.details(session.id)}>{detail}</Link>
                    </li>
                  ))}
                  {use.panels.map(({ mark, count }) => (
                    <li key={mark}>
                      {count} in <Link href={addresses.panel(session.id, mark)}>{mark}</Link>
                    </li>
                  ))}
                </ul>
              </>
            ) : (
              'It can be chosen for any insert of the job.'
            )}
          </Notice>
          <Link href={addresses.catalogue(session.id)}>The whole catalogue</Link>
        </div>
        <div class={styles.parts}>
          <ItemSizes item={item} edit={edit} onNamed={(id) => go(addresses.catalogueItem(session.id, id))} />
          <ItemSteel item={item} edit={edit} />
          <ItemDocuments item={item} edit={edit} />
          <ItemTests item={item} edit={edit} />
          <ItemRated item={item} edit={edit} />
          <Buying item={item} edit={edit} />
        </div>
      </div>
    </Page>
  );
}
