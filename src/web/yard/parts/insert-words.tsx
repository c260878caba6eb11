import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import { describeFace, describeHolding, describeType } from '../../../drawing/sheets/words.ts';
import styles from './insert-words.module.css';

/** What inserts of one assembly must look like, in words. Where they are is not said: the tape says it. */
export function InsertWords({ setOut, item }: { readonly setOut: PanelSetOut; readonly item: SetOutItem }) {
  const assembly = setOut.assemblies.find(({ letter }) => letter === item.assembly);
  const caps = assembly?.parts.filter(({ part }) => part.kind === 'cap') ?? [];
  return (
    <div class={styles.words}>
      <p class={styles.type}>{describeType(item)}</p>
      <dl class={styles.lines}>
        <div>
          <dt>face</dt>
          <dd>{describeFace(item)}</dd>
        </div>
        <div>
          <dt>held</dt>
          <dd>{describeHolding(item)}</dd>
        </div>
        {caps.length > 0 && (
          <div>
            <dt>cap</dt>
            <dd>{caps.map(({ part }) => part.name).join(', ')}</dd>
          </div>
        )}
      </dl>
      {assembly !== undefined && (
        <ul class={styles.checks}>
          {assembly.checkLines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
