import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from '../../parts/button.tsx';
import { Empty } from '../../parts/notice.tsx';
import { addresses } from '../state/addresses.ts';
import { Answers } from '../state/answers.ts';
import { useArrival } from '../state/arrive.ts';
import { useCommands } from '../state/commands.ts';
import { writeTitle } from '../state/name-screen.ts';
import { type Office, OfficeContext } from '../state/office.ts';
import { JobSession } from '../state/session.ts';
import { tellError } from '../state/use-asked.ts';
import { ConflictDialog } from './conflict-dialog.tsx';
import { FindDialog } from './find-dialog.tsx';
import { Head } from './head.tsx';
import styles from './job-shell.module.css';
import { KeysDialog } from './keys-dialog.tsx';
import { Messages } from './messages.tsx';
import { TitleBlock } from './title-block.tsx';

type Opening =
  | { readonly kind: 'opening' }
  | { readonly kind: 'open'; readonly office: Office }
  | { readonly kind: 'failed'; readonly why: string };

/** What is over the screen. */
type Over = 'nothing' | 'keys' | 'find';

/** An open job: its head, the screen, and the title block below, as on a drawing. */
export function JobShell({ id, children }: { readonly id: string; readonly children: ComponentChildren }) {
  const opening = useSignal<Opening>({ kind: 'opening' });
  const tries = useSignal(0);
  useEffect(() => {
    const state: { office: Office | null; isGone: boolean } = { office: null, isGone: false };
    opening.value = { kind: 'opening' };
    const opened = JobSession.open(id).catch(tellError);
    void opened.then((session) => {
      if (state.isGone) {
        if (typeof session !== 'string') session.close();
        return;
      }
      if (typeof session === 'string') {
        opening.value = { kind: 'failed', why: session };
        return;
      }
      state.office = { session, answers: new Answers(session) };
      opening.value = { kind: 'open', office: state.office };
    });
    return () => {
      state.isGone = true;
      state.office?.answers.close();
      state.office?.session.close();
    };
  }, [id, tries.value]);

  const { value } = opening;
  useEffect(() => {
    if (value.kind !== 'open')
      document.title = writeTitle(value.kind === 'opening' ? 'Opening the job' : 'This job cannot be opened', null);
  }, [value.kind]);
  if (value.kind === 'opening')
    return (
      <main class={styles.wait} aria-busy="true">
        <p>Opening the job …</p>
      </main>
    );
  if (value.kind === 'failed')
    return (
      <main class={styles.wait}>
        <Empty title="This job cannot be opened">
          <p>{value.why}</p>
          <Button
            kind="main"
            onPress={() => {
              tries.value += 1;
            }}
          >
            Try again
          </Button>
          <a href={addresses.jobs()}>All jobs</a>
        </Empty>
      </main>
    );
  return (
    <OfficeContext.Provider value={value.office}>
      <Frame office={value.office}>{children}</Frame>
    </OfficeContext.Provider>
  );
}

function Frame({ office, children }: { readonly office: Office; readonly children: ComponentChildren }) {
  const over = useSignal<Over>('nothing');
  const { session } = office;
  const { done, undone } = session.history.stacks.value;
  const main = useRef<HTMLElement>(null);
  const { number, name } = session.file.job.project;
  const screen = useArrival(main, number ?? name);
  const show = (what: Over) => {
    over.value = what;
  };
  const close = () => show('nothing');
  useCommands('Everywhere in a job', [
    { name: 'Undo', key: 'Ctrl+Z', isAllowed: () => done.length > 0, run: () => session.undo() },
    { name: 'Redo', key: 'Ctrl+Shift+Z', isAllowed: () => undone.length > 0, run: () => session.redo() },
    { name: 'Redo', key: 'Ctrl+Y', isAllowed: () => undone.length > 0, run: () => session.redo() },
    {
      name: 'Find a panel, connection or insert type',
      key: 'Ctrl+K',
      isEverywhere: true,
      run: () => show('find'),
    },
    { name: 'Keys', key: '?', run: () => show('keys') },
  ]);
  return (
    <div class={styles.frame}>
      <a class={styles.skip} href="#screen">
        To the screen
      </a>
      <Head office={office} onFind={() => show('find')} onKeys={() => show('keys')} />
      <main ref={main} class={styles.screen} id="screen" tabIndex={-1} aria-label={screen}>
        {children}
      </main>
      <TitleBlock office={office} />
      <Messages />
      {session.conflict.value !== null && <ConflictDialog session={session} conflict={session.conflict.value} />}
      {over.value === 'find' && <FindDialog session={session} onClose={close} />}
      {over.value === 'keys' && <KeysDialog onClose={close} />}
    </div>
  );
}
