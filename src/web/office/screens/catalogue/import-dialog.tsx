import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { mergeItems, takeItems } from '../../../../job/edit/commands/edit-library.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { FaultTable } from '../../../parts/fault-table.tsx';
import { ChoiceField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { EffectView } from '../../effect/effect-view.tsx';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import { useAsked } from '../../state/use-asked.ts';
import styles from './catalogue.module.css';

type How = 'add' | 'replace';

/** Shows what a catalogue.csv holds, what is wrong in it and what it would change, before it is taken. */
export function ImportDialog({
  session,
  name,
  content,
  onClose,
}: {
  readonly session: JobSession;
  readonly name: string;
  readonly content: string;
  readonly onClose: () => void;
}) {
  const how = useSignal<How>('add');
  const refused = useSignal<string | null>(null);
  const { file } = session;
  const asked = useAsked(
    () => askJobWorker(async (worker) => worker.readCatalogue(content, how.value)),
    [file, content, how.value],
  );
  const read = asked.isBusy ? null : asked.value;
  const taken = read?.ok === true ? read : null;
  const own = file.library.catalogue.items;
  const other = useMemo(
    () =>
      taken === null
        ? null
        : {
            library: {
              catalogue: { ...file.library.catalogue, items: mergeItems(own, taken.items, how.value) },
            },
          },
    [taken, file],
  );
  const known = new Set(own.map(({ id }) => id));
  const items = taken?.items ?? [];
  const added = items.filter(({ id }) => !known.has(id));
  const gone = how.value === 'replace' ? own.filter(({ id }) => !items.some((item) => item.id === id)) : [];
  const take = () => {
    if (taken === null) return;
    refused.value = session.commit(
      `Catalogue: ${countOf(items.length, 'insert')} from ${name}`,
      takeItems(taken.items, how.value),
    );
    if (refused.value !== null) return;
    tell('good', `${countOf(items.length, 'insert')} taken in from ${name}.`, {
      text: 'Undo',
      run: () => session.undo(),
    });
    onClose();
  };
  return (
    <Dialog
      title={`Take in ${name}`}
      isWide
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave the catalogue as it is</Button>
          <Button kind="main" isDisabled={taken === null} onPress={take}>
            Take it in
          </Button>
        </>
      }
    >
      <ChoiceField<How>
        label="What becomes of the catalogue"
        hint="Tests and rated loads, which a CSV cannot say, stay with inserts of the same type."
        value={how.value}
        options={[
          { value: 'add', text: 'add new types, replace the same' },
          { value: 'replace', text: 'the file is all of it' },
        ]}
        onChange={(value) => {
          how.value = value;
          return null;
        }}
      />
      {asked.why !== null && (
        <Notice kind="fault" title="It could not be read">
          {asked.why}
        </Notice>
      )}
      {read === null && asked.why === null && <p aria-busy="true">Reading …</p>}
      {read?.ok === false && (
        <>
          <Notice kind="fault" title={`${countOf(read.faults.length, 'fault')}, nothing is taken`}>
            Put right in the file what is listed, save it, and choose it again.
          </Notice>
          <FaultTable caption={`What is wrong in ${name}`} faults={read.faults} />
        </>
      )}
      {taken !== null && other !== null && (
        <div class={styles.steps}>
          <p>
            {countOf(items.length, 'insert')} read: {added.length} new
            {added.length === 0 ? '' : ` (${added.map(({ id }) => id).join(', ')})`}, {items.length - added.length}{' '}
            replace those of the same type
            {gone.length === 0
              ? ''
              : `; ${countOf(gone.length, 'type')} would go (${gone.map(({ id }) => id).join(', ')})`}
            {taken.kept.length === 0 ? '' : `; tests and rated loads stay with ${taken.kept.join(', ')}`}.
          </p>
          <EffectView session={session} parts={other} />
        </div>
      )}
      {refused.value !== null && (
        <Notice kind="fault" title="Not taken">
          {refused.value}
        </Notice>
      )}
    </Dialog>
  );
}
