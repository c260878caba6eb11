import { useId } from 'preact/hooks';
import styles from './import.module.css';
import type { WorkFile } from './import-store.ts';
import type { ImportWork } from './import-work.ts';

/** A file whose cells cannot be told apart, or that is no table: its text, to be put right in place. */
export function TextEditor({ work, file }: { readonly work: ImportWork; readonly file: WorkFile }) {
  const id = useId();
  return (
    <div class={styles.text}>
      <label for={id}>Text of {file.name}</label>
      <textarea
        id={id}
        spellcheck={false}
        rows={14}
        value={file.text}
        onInput={(event) => work.typeText(file.name, event.currentTarget.value)}
      />
    </div>
  );
}
