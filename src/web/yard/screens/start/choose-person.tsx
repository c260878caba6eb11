import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigKey } from '../../parts/big-key.tsx';
import { nameRoles } from '../../state/name-roles.ts';
import styles from './start-screen.module.css';

/** Who works with this device now. Nobody proves who he is: a name on each record, as on a sheet. */
export function ChoosePerson({ onChosen }: { readonly onChosen: () => void }) {
  const { device } = useYard();
  const people = (device.job.value?.people ?? []).filter(({ name }) => name !== null);
  if (people.length === 0)
    return (
      <Answer kind="unsure" words="Nobody is on the people list">
        <p>
          Every record names who wrote it. In the office: Yard, People, add who works here, with their roles. They come
          here by themselves.
        </p>
      </Answer>
    );
  return (
    <section class={styles.part}>
      <h2>Who are you?</h2>
      <div class={styles.people}>
        {people.map(({ id, name, roles }) => (
          <BigKey
            key={id}
            isOn={device.person.value?.id === id}
            more={nameRoles(roles)}
            onPress={() => {
              void device.choosePerson(id);
              onChosen();
            }}
          >
            {name}
          </BigKey>
        ))}
      </div>
    </section>
  );
}
