import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { useOffline } from '../../state/use-offline.ts';
import styles from './start-screen.module.css';

/** Whether one can walk out of the network with this device. */
export function OfflineState() {
  const { device } = useYard();
  const { kind, words, more } = useOffline();
  const { isKept, isNearlyFull } = device.room.value;
  return (
    <section class={styles.part}>
      <h2>Without the network</h2>
      <Answer kind={kind} words={words}>
        <p>{more}</p>
      </Answer>
      {isNearlyFull && (
        <Answer kind="wrong" words="The room on this device is nearly used up">
          <p>Send what is here, then clear other things off the device.</p>
        </Answer>
      )}
      {!isKept && (
        <BigKey kind="quiet" onPress={() => void device.askToKeep()}>
          Ask the browser to keep it
        </BigKey>
      )}
    </section>
  );
}
