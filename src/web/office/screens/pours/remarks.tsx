import { useSignal } from '@preact/signals';
import { Button } from '../../../parts/button.tsx';
import { TextField } from '../../../parts/field.tsx';
import { Sign } from '../../../parts/signs.tsx';
import styles from './pour-view.module.css';

/** Lines of text that can be changed, added and taken away. */
export function Remarks({
  title,
  remarks,
  onChange,
}: {
  readonly title: string;
  readonly remarks: readonly string[];
  readonly onChange: (remarks: readonly string[]) => string | null;
}) {
  // A new field after each line that was taken.
  const added = useSignal(0);
  return (
    <div class={styles.remarks}>
      <h3>{title}</h3>
      {remarks.map((remark, k) => (
        <div key={`${k} ${remark}`} class={styles.remark}>
          <TextField
            label={`Line ${k + 1}`}
            value={remark}
            onChange={(value) => onChange(value === '' ? remarks.toSpliced(k, 1) : remarks.with(k, value))}
          />
          <Button kind="quiet" name={`Take line ${k + 1} away`} onPress={() => onChange(remarks.toSpliced(k, 1))}>
            <Sign name="cross" />
          </Button>
        </div>
      ))}
      <TextField
        key={`new ${added.value}`}
        label="Add a line"
        value=""
        onChange={(value) => {
          if (value === '') return null;
          const why = onChange([...remarks, value]);
          if (why === null) added.value += 1;
          return why;
        }}
      />
    </div>
  );
}
