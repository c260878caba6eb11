import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button, type ButtonProps } from './button.tsx';
import styles from './files.module.css';

const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;

/** Takes files that are dropped anywhere on the page, and says so while they are over it. */
export function FileDrop({
  words,
  onFiles,
}: {
  /** What becomes of them. */
  readonly words: string;
  readonly onFiles: (files: readonly File[]) => void;
}) {
  const isOver = useSignal(false);
  const take = useRef(onFiles);
  take.current = onFiles;
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (!holdsFiles(event) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      isOver.value = true;
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) isOver.value = false;
    };
    const drop = (event: DragEvent) => {
      if (!isOver.value) return;
      event.preventDefault();
      isOver.value = false;
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length > 0) take.current(files);
    };
    addEventListener('dragover', over);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, []);
  return isOver.value ? <div class={styles.over}>{words}</div> : null;
}

/** A button that lets the person choose files. */
export function ChooseFiles({
  children,
  accept,
  kind,
  onFiles,
}: {
  readonly children: ComponentChildren;
  /** Endings, such as `.json,.csv`. */
  readonly accept: string;
  readonly kind?: ButtonProps['kind'];
  readonly onFiles: (files: readonly File[]) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button {...(kind === undefined ? {} : { kind })} onPress={() => input.current?.click()}>
        {children}
      </Button>
      <input
        ref={input}
        type="file"
        accept={accept}
        multiple
        hidden
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          // The same file can be chosen again after it was put right elsewhere.
          event.currentTarget.value = '';
          if (files.length > 0) onFiles(files);
        }}
      />
    </>
  );
}
