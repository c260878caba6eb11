import { type Signal, signal } from '@preact/signals';
import type { PanelChoice } from '../../../../assess/arrange-panels.ts';

const choices = new Map<string, Signal<PanelChoice>>();

/** What is searched for in the list of a job: as it was left when the person comes back from a panel. */
export function choiceOf(job: string): Signal<PanelChoice> {
  const choice = choices.get(job) ?? signal<PanelChoice>({ words: '', state: null, order: 'need' });
  choices.set(job, choice);
  return choice;
}
