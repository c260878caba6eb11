import { useSignal } from '@preact/signals';
import { Button } from '../../../parts/button.tsx';
import { tell } from '../../state/messages.ts';
import { tellError } from '../../state/use-asked.ts';

/** A key that writes a file; while it does it cannot be pressed again. */
export function PrintKey({
  words,
  name,
  onWrite,
}: {
  readonly words: string;
  /** Read aloud, where several say the same. */
  readonly name?: string;
  /** Rejects where it is not written. */
  readonly onWrite: () => Promise<void>;
}) {
  const isWriting = useSignal(false);
  const write = async () => {
    isWriting.value = true;
    try {
      await onWrite();
    } catch (error) {
      tell('fault', `${words}: not written. ${tellError(error)}`);
    }
    isWriting.value = false;
  };
  return (
    <Button kind="quiet" isDisabled={isWriting.value} name={name ?? words} onPress={() => void write()}>
      {isWriting.value ? 'Writing …' : words}
    </Button>
  );
}
