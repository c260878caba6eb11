import { useYard } from '../../../pieces/yard.ts';
import { BigKey, KeyRow } from '../../parts/big-key.tsx';
import styles from './device.module.css';

/** Everybody whom the office has named, a key each. */
export function PersonChoice({ onDone }: { readonly onDone: () => void }) {
  const { device } = useYard();
  const people = (device.job.value?.people ?? []).filter(({ name }) => name !== null);
  const choose = (id: string) => void device.choosePerson(id).then(onDone);
  return (
    <section class={styles.people}>
      {people.length === 0 && (
        <p>The office has named nobody yet. People are added there, then fetched with “Send now”.</p>
      )}
      <div class={styles.names}>
        {people.map(({ id, name, roles }) => (
          <BigKey
            key={id}
            isOn={device.person.value?.id === id}
            onPress={() => choose(id)}
            more={roles.join(', ') || 'no role'}
          >
            {name}
          </BigKey>
        ))}
      </div>
      <KeyRow>
        <BigKey onPress={onDone}>Back</BigKey>
      </KeyRow>
    </section>
  );
}
