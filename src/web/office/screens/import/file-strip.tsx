import { Button } from '../../../parts/button.tsx';
import { download } from '../../../parts/download.ts';
import { Sign } from '../../../parts/signs.tsx';
import styles from './import.module.css';
import type { WorkFile } from './import-store.ts';
import type { ImportWork } from './import-work.ts';

const SEPARATORS: Readonly<Record<string, string>> = { ';': 'semicolons', ',': 'commas', '\t': 'tabs' };

/** What was recognised in a file, in words. */
function describe({ name, grid, text }: WorkFile): string {
  if (grid === null) return name.toLowerCase().endsWith('.json') ? 'JSON' : `${text.split('\n').length} lines of text`;
  const rows = Math.max(0, grid.rows.length - 1);
  const decimal =
    grid.decimalMark === null ? 'whole numbers' : `decimal ${grid.decimalMark === '.' ? 'points' : 'commas'}`;
  return `${rows} ${rows === 1 ? 'row' : 'rows'}, ${SEPARATORS[grid.separator] ?? grid.separator} between columns, ${decimal}`;
}

/** The files that were given, with what was recognised in each. */
export function FileStrip({ work }: { readonly work: ImportWork }) {
  const reading = work.reading.value;
  const faults = reading === null || reading.ok ? [] : reading.faults;
  const save = async (name: string) => {
    if (work.isStale.value) await work.readAgain();
    const file = work.files.value.find((one) => one.name === name);
    if (file !== undefined) download(file.name, file.text, 'text/plain');
  };
  return (
    <ul class={styles.files} aria-label="Files">
      {work.files.value.map((file) => {
        const count = faults.filter(
          (fault) => fault.file === file.name.toLowerCase() || fault.file === file.name,
        ).length;
        return (
          <li key={file.name} class={styles.file}>
            <strong>{file.name}</strong>
            <span class={styles.faint}>{describe(file)}</span>
            {count > 0 && (
              <span class={styles.count}>
                {count} {count === 1 ? 'fault' : 'faults'}
              </span>
            )}
            {file.isTyped && (
              <Button kind="quiet" onPress={() => void save(file.name)}>
                Download as put right
              </Button>
            )}
            <Button kind="quiet" name={`Leave ${file.name} out`} onPress={() => work.leave(file.name)}>
              <Sign name="cross" />
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
