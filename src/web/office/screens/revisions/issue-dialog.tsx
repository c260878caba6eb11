import { useSignal } from '@preact/signals';
import type { ConnectionAnswer } from '../../../../assess/connection-answer.ts';
import type { Revision } from '../../../../job/documents/pour.ts';
import { listIssueWarnings } from '../../../../say/issue-words.ts';
import { Button } from '../../../parts/button.tsx';
import { tellCall } from '../../../parts/call.ts';
import { DayField, findToday } from '../../../parts/day-field.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { CheckField, ChoiceField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields } from '../../../parts/page.tsx';
import { StateLines } from '../../../parts/state-lines.tsx';
import { tell } from '../../state/messages.ts';
import { calls } from '../../state/office-calls.ts';
import type { Saving } from '../../state/saver.ts';
import type { JobSession } from '../../state/session.ts';
import styles from './issue-dialog.module.css';
import { type Recipient, RecipientRows } from './recipient-rows.tsx';

type Status = Revision['status'];

const STATUSES: readonly { readonly value: Status; readonly text: string }[] = [
  { value: 'preliminary', text: 'preliminary' },
  { value: 'for approval', text: 'for approval' },
  { value: 'for construction', text: 'for construction: it may be poured by it' },
  { value: 'void', text: 'void' },
];

/** Why the draft cannot be issued at this moment; null: it can. */
function findWait(saving: Saving, missing: number): string | null {
  if (saving.kind === 'saving') return 'The last edits are being saved …';
  if (saving.kind === 'waiting') return `${saving.why}: what is on this device only cannot be issued yet.`;
  if (saving.kind === 'conflict') return 'The job was edited elsewhere too: decide about that first.';
  return missing > 0 ? `${missing} connections are being computed …` : null;
}

/** Freezes the draft under a letter, after its states were looked at. */
export function IssueDialog({
  session,
  answers,
  letter,
  onClose,
}: {
  readonly session: JobSession;
  readonly answers: ReadonlyMap<string, ConnectionAnswer>;
  readonly letter: string;
  readonly onClose: () => void;
}) {
  const { connections } = session.shown.value.job;
  const last = session.issued.value.at(-1);
  const typed = useSignal({
    letter,
    status: (last?.status === 'void' ? 'preliminary' : (last?.status ?? 'preliminary')) as Status,
    date: findToday(),
    note: '',
    recipients: (last?.recipients ?? []) as readonly Recipient[],
  });
  const isRead = useSignal(false);
  const isBusy = useSignal(false);
  const failed = useSignal<string | null>(null);
  const set = (change: Partial<typeof typed.value>): null => {
    typed.value = { ...typed.value, ...change };
    return null;
  };
  const known = connections.flatMap(({ key }) => answers.get(key) ?? []);
  const warnings = listIssueWarnings(known);
  const wait = findWait(session.saver.saving.value, connections.length - known.length);
  const { value } = typed;
  const mustBeRead = value.status === 'for construction' && warnings.length > 0;
  const issue = async () => {
    isBusy.value = true;
    const note = value.note === '' ? null : value.note;
    const called = await calls.issue(session.id, { ...value, note, base: session.saver.version });
    isBusy.value = false;
    failed.value = tellCall(called);
    if (called.kind === 'refused' && called.status === 409) await session.refresh();
    if (called.kind !== 'answered') return;
    await session.refresh(false);
    await session.loadIssued();
    tell(
      'good',
      `Revision ${value.letter} is issued, ${value.status}: fingerprint ${called.value.fingerprint.slice(0, 12)}.`,
    );
    onClose();
  };
  return (
    <Dialog
      title={`Issue revision ${value.letter}`}
      isWide
      onClose={onClose}
      foot={
        <>
          {wait !== null && (
            <span class={styles.wait} role="status">
              {wait}
            </span>
          )}
          <Button onPress={onClose}>Leave it</Button>
          <Button
            kind="main"
            isDisabled={wait !== null || isBusy.value || (mustBeRead && !isRead.value)}
            onPress={() => void issue()}
          >
            Issue {value.letter}, {value.status}
          </Button>
        </>
      }
    >
      {failed.value !== null && <Notice kind="fault">{failed.value}</Notice>}
      <Fields>
        <TextField
          label="Letter"
          value={value.letter}
          onChange={(text) => (text === '' ? 'expected a letter' : set({ letter: text }))}
        />
        <ChoiceField label="Status" value={value.status} options={STATUSES} onChange={(status) => set({ status })} />
        <DayField label="Date" value={value.date} onChange={(date) => set({ date })} />
      </Fields>
      <TextField
        label="Note: what it is for"
        value={value.note}
        placeholder="Brackets of grid C moved after the site meeting"
        onChange={(note) => set({ note })}
      />
      {warnings.length === 0 ? (
        wait === null && connections.length > 0 && <p>Every connection passes.</p>
      ) : (
        <Notice
          kind="caution"
          title={
            mustBeRead
              ? 'Panels will be poured by this revision, with connections that do not pass'
              : 'Not every connection passes'
          }
        >
          <StateLines lines={warnings} />
          {mustBeRead && (
            <CheckField
              label="I have read these, and issue it for construction all the same"
              isOn={isRead.value}
              onChange={(isOn) => {
                isRead.value = isOn;
              }}
            />
          )}
        </Notice>
      )}
      <RecipientRows recipients={value.recipients} onChange={(recipients) => set({ recipients })} />
    </Dialog>
  );
}
