import { useSignal } from '@preact/signals';
import type { Person } from '../../../../records/person.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { drawPersonId } from './draw-person-id.ts';
import { RoleChecks } from './role-checks.tsx';

/** Asks for a new person, or for what is changed of one. */
export function PersonDialog({
  person,
  onSave,
  onClose,
}: {
  /** Null: a new one. */
  readonly person: Person | null;
  /** Why it was not saved; null: it was. */
  readonly onSave: (person: Person) => Promise<string | null>;
  readonly onClose: () => void;
}) {
  const typed = useSignal<Person>(person ?? { id: drawPersonId(), name: null, roles: [], registration: null });
  const refused = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const set = (change: Partial<Person>): null => {
    // What was refused stays in sight until it is tried again: the dialog must not move under the hand.
    typed.value = { ...typed.value, ...change };
    return null;
  };
  const save = async () => {
    if (typed.value.name === null) {
      refused.value = 'The name is missing: it is what a tablet shows for choosing.';
      return;
    }
    isBusy.value = true;
    refused.value = await onSave(typed.value);
    isBusy.value = false;
    if (refused.value === null) onClose();
  };
  const { name, roles, registration } = typed.value;
  return (
    <Dialog
      title={person === null ? 'One more person' : `${person.name ?? 'A person'}: roles and registration`}
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={isBusy.value} onPress={() => void save()}>
            {person === null ? 'Add the person' : 'Save'}
          </Button>
        </>
      }
    >
      <TextField
        label="Name, as the tablets show it"
        value={name ?? ''}
        placeholder="M. Nobody"
        onChange={(text) => (text.length > 60 ? 'expected at most 60 signs' : set({ name: text === '' ? null : text }))}
      />
      <RoleChecks roles={roles} onChange={(next) => set({ roles: next })} />
      {roles.includes('design engineer') && (
        <TextField
          label="Registration: number and where"
          hint="Without it a decision as design engineer is flagged"
          value={registration ?? ''}
          onChange={(text) =>
            text.length > 200 ? 'expected at most 200 signs' : set({ registration: text === '' ? null : text })
          }
        />
      )}
      {refused.value !== null && (
        <Notice kind="fault" title="Not saved">
          {refused.value}
        </Notice>
      )}
    </Dialog>
  );
}
