import { Dialog } from '../../parts/dialog.tsx';
import { commandGroups } from '../state/commands.ts';
import styles from './keys-dialog.module.css';

/** Every key that works on this screen. */
export function KeysDialog({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog title="Keys" onClose={onClose}>
      {[...commandGroups.value].reverse().map(({ title, commands }) => (
        <section key={title}>
          <h3>{title}</h3>
          <table class={styles.keys}>
            <tbody>
              {commands.map(({ key, name }) => (
                <tr key={key}>
                  <th scope="row">
                    <kbd>{key}</kbd>
                  </th>
                  <td>{name}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
    </Dialog>
  );
}
