import { signal } from '@preact/signals';

/** A line that tells of something that happened; it goes by itself, and can be sent away. */
export interface Message {
  readonly id: number;
  readonly kind: 'note' | 'good' | 'fault';
  readonly text: string;
  /** Something to do about it: undo, open. */
  readonly action?: { readonly text: string; readonly run: () => void };
}

/** How long a line stays [ms]; a fault stays until it is sent away. */
const STAYS = 7000;

export const messages = signal<readonly Message[]>([]);

export function dismiss(id: number): void {
  messages.value = messages.value.filter((message) => message.id !== id);
}

/** Shows a line. The same text again takes the place of the first. */
export function tell(kind: Message['kind'], text: string, action?: Message['action']): void {
  const id = performance.now() + Math.random();
  const others = messages.value.filter((message) => message.text !== text);
  messages.value = [...others.slice(-2), { id, kind, text, ...(action === undefined ? {} : { action }) }];
  if (kind !== 'fault') setTimeout(() => dismiss(id), STAYS);
}
