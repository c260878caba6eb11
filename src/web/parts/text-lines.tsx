import { useSignal } from '@preact/signals';
import { Button } from './button.tsx';
import { TextField } from './field.tsx';
import { Sign } from './signs.tsx';
import styles from './text-lines.module.css';

/** Lines of text that can be changed, added and taken away. */
export function TextLines({
  title,
  lines,
  onChange,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly onChange: (lines: readonly string[]) => string | null;
}) {
  // A new field after each line that was taken.
  const added = useSignal(0);
  return (
    <div class={styles.lines}>
      <h3>{title}</h3>
      {lines.map((line, k) => (
        <div key={`${k} ${line}`} class={styles.line}>
          <TextField
            label={`Line ${k + 1}`}
            value={line}
            onChange={(value) => onChange(value === '' ? lines.toSpliced(k, 1) : lines.with(k, value))}
          />
          <Button kind="quiet" name={`Take line ${k + 1} away`} onPress={() => onChange(lines.toSpliced(k, 1))}>
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
          const why = onChange([...lines, value]);
          if (why === null) added.value += 1;
          return why;
        }}
      />
    </div>
  );
}
