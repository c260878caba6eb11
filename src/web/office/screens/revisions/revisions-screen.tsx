import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'wouter-preact';
import { nextLetter } from '../../../../job/revision-letter.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Empty } from '../../../parts/notice.tsx';
import { Page, Section } from '../../../parts/page.tsx';
import { addresses } from '../../state/addresses.ts';
import { useCommands } from '../../state/commands.ts';
import { useOffice } from '../../state/office.ts';
import type { JobSession } from '../../state/session.ts';
import { CompareTwo } from './compare-two.tsx';
import { Difference } from './difference.tsx';
import { EditList } from './edit-list.tsx';
import { IssueDialog } from './issue-dialog.tsx';
import { IssuedList } from './issued-list.tsx';
import { KeptList } from './kept-list.tsx';

/** The letter under which the draft would be issued. */
function findLetter(session: JobSession): string {
  const issued = session.issued.value.map(({ letter }) => letter);
  const own = session.shown.value.job.revision?.letter;
  return own === undefined || issued.includes(own) ? nextLetter([...issued, ...(own === undefined ? [] : [own])]) : own;
}

/** What was issued, what changed since, and every edit. */
export function RevisionsScreen() {
  const { session, answers } = useOffice();
  const [, go] = useLocation();
  const isIssuing = useSignal(false);
  const issued = session.issued.value;
  const last = issued.at(-1);
  const letter = findLetter(session);
  useEffect(() => void session.loadIssued(), [session]);
  const issue = () => {
    isIssuing.value = true;
  };
  useCommands('Revisions', [{ name: `Issue revision ${letter}`, key: 'Shift+I', run: issue }]);
  return (
    <Page
      title="Revisions"
      lead="What is issued is frozen, with its fingerprint; sheets carry both letter and fingerprint. The draft goes on under the next letter."
      actions={
        <>
          <Button onPress={() => go(addresses.transmittal(session.id))}>Transmittal list</Button>
          <Button kind="main" shortcut="Shift+I" name={`Issue revision ${letter}`} onPress={issue}>
            Issue revision {letter}
          </Button>
        </>
      }
    >
      <Section
        title="The draft"
        lead={
          last === undefined
            ? 'Nothing was issued yet: all of it is new.'
            : `Against revision ${last.letter}, issued last.`
        }
      >
        {last === undefined ? (
          <p>
            {countOf(session.shown.value.job.panels.length, 'panel')},{' '}
            {countOf(session.shown.value.job.connections.length, 'connection')}.
          </p>
        ) : (
          <Difference
            job={session.id}
            before={{ kind: 'revision', letter: last.letter }}
            after={{ kind: 'draft' }}
            on={[session.shown.value, last.letter]}
          />
        )}
      </Section>
      <Section title="Issued">
        {issued.length === 0 ? (
          <Empty title="Nothing was issued yet">
            <p>
              Issue the draft as revision {letter} when others shall work by it: it is then kept as it is, for good.
            </p>
          </Empty>
        ) : (
          <IssuedList session={session} issued={issued} />
        )}
      </Section>
      {issued.length > 0 && (
        <Section title="Compare any two">
          <CompareTwo session={session} issued={issued} />
        </Section>
      )}
      <KeptList session={session} />
      <Section
        title="Every edit"
        lead="The latest first. To go back to a state is an edit of its own: nothing is lost by it."
      >
        <EditList session={session} />
      </Section>
      {isIssuing.value && (
        <IssueDialog
          session={session}
          answers={answers.byKey.value}
          letter={letter}
          onClose={() => {
            isIssuing.value = false;
          }}
        />
      )}
    </Page>
  );
}
