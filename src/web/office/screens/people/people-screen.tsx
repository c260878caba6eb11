import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { Dialog } from '../../../parts/dialog.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { useCommands } from '../../state/commands.ts';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import styles from './people.module.css';
import { PersonDialog } from './person-dialog.tsx';

/** What stands over the list. */
type Over =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'new' }
  | { readonly kind: 'change' | 'erase'; readonly person: Person };

const NOTHING: Over = { kind: 'nothing' };

function Registration({ person: { roles, registration } }: { readonly person: Person }) {
  if (registration !== null) return <>{registration}</>;
  return roles.includes('design engineer') ? <span class={styles.missing}>missing</span> : <>–</>;
}

/** People whom records name: who they are, and as what they may decide. */
export function PeopleScreen() {
  const people = useSignal<readonly Person[] | null>(null);
  const failed = useSignal<string | null>(null);
  const over = useSignal<Over>(NOTHING);
  const load = async () => {
    const called = await calls.listPeople();
    failed.value = tellCall(called);
    if (called.kind === 'answered') people.value = called.value.people;
  };
  useEffect(() => {
    const again = () => void load();
    again();
    addEventListener('focus', again);
    return () => removeEventListener('focus', again);
  }, []);
  const save = async (person: Person): Promise<string | null> => {
    const called = await calls.savePerson(person);
    if (called.kind === 'answered') people.value = called.value.people;
    return tellCall(called);
  };
  const add = () => {
    over.value = { kind: 'new' };
  };
  const close = () => {
    over.value = NOTHING;
  };
  const erase = async (person: Person) => {
    const refused = await save({ ...person, name: null });
    if (refused !== null) tell('fault', `The name was not erased: ${refused}`);
    else tell('note', 'The name is erased. What was recorded under it stays, without a name.');
    close();
  };
  useCommands('People', [{ name: 'One more person', key: 'N', run: add }]);
  const named = people.value?.filter(({ name }) => name !== null) ?? [];
  const erased = (people.value?.length ?? 0) - named.length;
  const columns: readonly Column<Person>[] = [
    { head: 'name', isName: true, cell: ({ name }) => name },
    { head: 'roles', kind: 'wide', cell: ({ roles }) => roles.map((role) => ROLE_WORDS[role]).join(', ') || 'none' },
    { head: 'registration', cell: (person) => <Registration person={person} /> },
    {
      head: 'more',
      cell: (person) => (
        <div class={styles.tools}>
          <Button
            kind="quiet"
            name={`Change ${person.name ?? ''}`}
            onPress={() => {
              over.value = { kind: 'change', person };
            }}
          >
            Change
          </Button>
          <Button
            kind="quiet"
            name={`Erase the name ${person.name ?? ''}`}
            onPress={() => {
              over.value = { kind: 'erase', person };
            }}
          >
            Erase the name
          </Button>
        </div>
      ),
    },
  ];
  const shown = over.value;
  return (
    <>
      <Page
        title="People"
        lead="Those who check, decide and pour. A record keeps who did it by a number; names and roles stand here, for all jobs of this office. Nobody has to prove yet who he is: the list tells tablets whom to offer, and by which roles a decision counts."
        actions={
          <Button kind="main" shortcut="N" name="One more person" onPress={add}>
            One more person
          </Button>
        }
      >
        {failed.value !== null && (
          <Notice kind="fault">
            <p>{failed.value}</p>
            <Button onPress={() => void load()}>Try again</Button>
          </Notice>
        )}
        {people.value === null && failed.value === null && <p aria-busy="true">Looking …</p>}
        {people.value !== null && named.length === 0 && (
          <Empty title="Nobody is on the list yet">
            <p>Before a tablet can record anything, it must know who holds it. Add the people of the yard.</p>
            <Button onPress={add}>One more person</Button>
          </Empty>
        )}
        {named.length > 0 && <Table caption="People" columns={columns} rows={named} keyOf={({ id }) => id} />}
        {erased > 0 && (
          <p class={styles.erased}>
            {countOf(erased, 'name')} erased; {erased === 1 ? 'its' : 'their'} records stay.
          </p>
        )}
      </Page>
      {shown.kind === 'new' && <PersonDialog person={null} onSave={save} onClose={close} />}
      {shown.kind === 'change' && <PersonDialog person={shown.person} onSave={save} onClose={close} />}
      {shown.kind === 'erase' && (
        <Dialog
          title={`Erase the name ${shown.person.name ?? ''}?`}
          onClose={close}
          foot={
            <>
              <Button onPress={close}>Keep it</Button>
              <Button kind="danger" onPress={() => void erase(shown.person)}>
                Erase the name
              </Button>
            </>
          }
        >
          <p>
            The name goes for good. What was recorded stays, under a person without a name; roles and registration stay
            too, since decisions count by them.
          </p>
        </Dialog>
      )}
    </>
  );
}
