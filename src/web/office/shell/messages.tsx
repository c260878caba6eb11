import { Button } from '../../parts/button.tsx';
import { Sign } from '../../parts/signs.tsx';
import { dismiss, messages } from '../state/messages.ts';
import styles from './messages.module.css';

/** Lines that tell of what happened, over the lower edge of the screen. */
export function Messages() {
  return (
    <div class={`${styles.messages} not-printed`} role="status" aria-live="polite">
      {messages.value.map(({ id, kind, text, action }) => (
        <div key={id} class={`${styles.message} ${styles[kind]}`}>
          <span>{text}</span>
          {action !== undefined && (
            <Button
              kind="quiet"
              onPress={() => {
                dismiss(id);
                action.run();
              }}
            >
              {action.text}
            </Button>
          )}
          <Button kind="quiet" name="Send this line away" onPress={() => dismiss(id)}>
            <Sign name="cross" />
          </Button>
        </div>
      ))}
    </div>
  );
}
