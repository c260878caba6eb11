import { useSignal } from '@preact/signals';
import { lazy, Suspense } from 'preact/compat';
import { useRef } from 'preact/hooks';
import { download, fileNameOf } from '../../../parts/download.ts';
import { useNow } from '../../../parts/use-now.ts';
import { places } from '../../../pieces/places.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import { YardFrame } from '../../shell/yard-frame.tsx';
import { ChoosePerson } from '../start/choose-person.tsx';
import styles from './device.module.css';
import { countRecords, tellRoom, tellServer } from './device-words.ts';
import { Problems } from './problems.tsx';

/** It comes with the screens that a cold start does not wait for. */
const LearnedLine = lazy(async () => ({ default: (await import('../out-screens.ts')).LearnedLine }));

/** Where the records of this device are, and what can be done so that none is lost. */
export function DeviceScreen() {
  const { device } = useYard();
  const now = useNow();
  const said = useSignal<{ readonly kind: 'good' | 'unsure'; readonly words: string } | null>(null);
  const isChoosing = useSignal(false);
  const file = useRef<HTMLInputElement>(null);
  const sync = device.sync.value;
  const room = tellRoom(device.room.value);
  const job = device.job.value;

  /** Does something that may fail; says what it came to. */
  const doIt = async (act: () => Promise<string>) => {
    try {
      said.value = { kind: 'good', words: await act() };
    } catch (error) {
      said.value = { kind: 'unsure', words: error instanceof Error ? error.message : String(error) };
    }
  };
  const send = () =>
    doIt(async () => {
      await device.syncNow();
      const { unsent, isServerThere } = device.sync.value;
      if (unsent === 0 && isServerThere) return 'All is sent.';
      throw new Error(`Not all is sent: ${unsent} still on this device only. They stay here, and are tried again.`);
    });
  const save = () =>
    doIt(async () => {
      const day = new Date().toISOString().slice(0, 10);
      const files = await device.exportUnsent();
      for (const { name, text } of files)
        download(`onepour-unsent-${fileNameOf(name)}-${device.id.value}-${day}.json`, text, 'application/json');
      const photos = sync.unsentPhotos === 0 ? '' : ' Photos are not in it: they stay on this device only.';
      return `Saved to ${files.length === 1 ? 'a file' : `${files.length} files, one a job`}. The records stay here too, unsent, until the server has them.${photos}`;
    });
  const takeIn = (input: HTMLInputElement) =>
    doIt(async () => {
      const chosen = input.files?.[0];
      if (chosen === undefined) throw new Error('No file was chosen.');
      const { taken, had, unreadable } = await device.takeIn(await chosen.text());
      input.value = '';
      const lost = unreadable === 0 ? '' : `; ${unreadable} could not be read`;
      return `Taken in: ${taken} new, ${had} were here already${lost}. They are sent with ours.`;
    });

  if (isChoosing.value)
    return (
      <YardFrame title="Who works with this device?" back={null}>
        <ChoosePerson onChosen={() => (isChoosing.value = false)} />
        <FrameKeys>
          <BigKey onPress={() => (isChoosing.value = false)}>Back</BigKey>
        </FrameKeys>
      </YardFrame>
    );
  return (
    <YardFrame
      title="This device"
      back={places.pours()}
      keys={
        <>
          <BigKey onPress={() => (isChoosing.value = true)} more={device.person.value?.name ?? 'nobody is named'}>
            Change person
          </BigKey>
          <input
            ref={file}
            type="file"
            accept="application/json,.json"
            hidden
            tabIndex={-1}
            aria-hidden="true"
            onChange={({ currentTarget }) => void takeIn(currentTarget)}
          />
          <BigKey onPress={() => file.current?.click()} more="what another device saved">
            Take in a file
          </BigKey>
          <BigKey isDisabled={sync.unsent === 0} onPress={() => void save()} more="the last way out">
            Save unsent to a file
          </BigKey>
          <BigKey kind="main" isDisabled={sync.state !== 'idle'} onPress={() => void send()}>
            {sync.state === 'idle' ? 'Send now' : 'Sending …'}
          </BigKey>
        </>
      }
    >
      {said.value !== null && <Answer kind={said.value.kind} isSmall words={said.value.words} />}
      <Problems />
      <section aria-labelledby="where">
        <h2 id="where">Where the records are</h2>
        <ul class={styles.counts}>
          {countRecords(sync).map(({ count, words, isAtRisk }) => (
            <li key={words} class={isAtRisk ? styles.atRisk : ''}>
              <strong>{count.toLocaleString('en-GB')}</strong>
              <span>{words}</span>
            </li>
          ))}
        </ul>
        <p>{tellServer(sync, now)}</p>
        {sync.head !== null && (
          <p class={styles.small}>
            The server’s log ends at no. {sync.head.number}
            {sync.head.hash === null ? '' : ` · ${sync.head.hash.slice(0, 12)}`}
          </p>
        )}
      </section>
      <section aria-labelledby="room">
        <h2 id="room">Room</h2>
        {room.warning !== null && <Answer kind="wrong" isSmall words={room.warning} />}
        <p>{room.used}</p>
        <p>{room.kept}</p>
        {!device.room.value.isKept && (
          <BigKey
            kind="quiet"
            onPress={() =>
              void doIt(async () => {
                if (await device.askToKeep()) return 'The browser keeps the records now.';
                throw new Error(
                  'The browser did not promise it. Put this page on the home screen, open it there and ask again.',
                );
              })
            }
          >
            Ask the browser to keep them
          </BigKey>
        )}
      </section>
      <Suspense fallback={null}>
        <LearnedLine />
      </Suspense>
      <p class={styles.small}>
        {job === null ? 'No job is on this device.' : `Job: ${job.name}.`} This device: {device.id.value}
      </p>
    </YardFrame>
  );
}
