import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';

/** One thing that can be done: button, list of keys and keyboard use the same object. */
export interface Command {
  /** In words, as a list shows it. */
  readonly name: string;
  /** As written: `Ctrl+Z`, `Shift+D`, `ArrowLeft`, `?`. Ctrl is Command on a Mac. */
  readonly key: string;
  readonly isAllowed?: () => boolean;
  readonly run: () => void;
  /** Works while a field has the focus too. */
  readonly isEverywhere?: boolean;
}

/** Commands of the screens that are open, the innermost last. */
const groups = signal<readonly { readonly title: string; readonly commands: readonly Command[] }[]>([]);

export const commandGroups = groups;

function writeKey(event: KeyboardEvent): string {
  const modifiers = [
    ...(event.ctrlKey || event.metaKey ? ['Ctrl'] : []),
    ...(event.altKey ? ['Alt'] : []),
    // Of signs such as "?" Shift is a part.
    ...(event.shiftKey && (event.key.length > 1 || /[a-z]/i.test(event.key)) ? ['Shift'] : []),
  ];
  const key = event.key === ' ' ? 'Space' : event.key.length === 1 ? event.key.toUpperCase() : event.key;
  return [...modifiers, key].join('+');
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || target.matches('input:not([type=checkbox], [type=radio]), select, textarea'))
  );
}

function handle(event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  const key = writeKey(event);
  const typing = isTyping(event.target);
  // A question over the screen has the keyboard to itself.
  if (document.querySelector('dialog[open]') !== null) return;
  for (const { commands } of [...groups.peek()].reverse()) {
    const command = commands.find((one) => one.key === key && (!typing || one.isEverywhere === true));
    if (command === undefined || command.isAllowed?.() === false) continue;
    event.preventDefault();
    command.run();
    return;
  }
}

/** Starts listening; once for the page. */
export function listenForCommands(): void {
  addEventListener('keydown', handle);
}

/** Offers commands while a screen is open. The list is taken as it is at each drawing of the screen. */
export function useCommands(title: string, commands: readonly Command[]): void {
  useEffect(() => {
    const group = { title, commands };
    groups.value = [...groups.peek(), group];
    return () => {
      groups.value = groups.peek().filter((one) => one !== group);
    };
  });
}
