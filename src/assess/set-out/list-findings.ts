import type { PourPlan } from './plan-pour.ts';
import type { PanelSetOut } from './set-out.ts';
import { writeNumbers } from './write-numbers.ts';

/** A finding in words, with the panel and the insert's number on its sheet in front. A stop: it must not be poured so. */
export interface Finding {
  readonly isStop: boolean;
  readonly words: string;
}

/** Findings of one panel, stops first; what is the same of several inserts is told once, with their numbers on the sheet. */
export function listPanelFindings({ items, problems }: PanelSetOut): readonly Finding[] {
  const numbers = new Map(items.map(({ castIn, number }) => [castIn.id, number]));
  const told = new Map<string, { readonly isStop: boolean; readonly text: string; readonly of: number[] }>();
  for (const { severity, insert, text } of problems) {
    const isStop = severity === 'error';
    const name = JSON.stringify([isStop, text]);
    const finding = told.get(name) ?? { isStop, text, of: [] };
    told.set(name, finding);
    if (insert !== null) finding.of.push(numbers.get(insert)!);
  }
  return [...told.values()]
    .map(({ isStop, text, of }) => ({ isStop, words: of.length === 0 ? text : `no. ${writeNumbers(of)}: ${text}` }))
    .sort((a, b) => Number(b.isStop) - Number(a.isStop));
}

/** Everything that stands against a pour or wants a look, each once, stops first. */
export function listFindings({ problems, setOuts }: PourPlan): readonly Finding[] {
  const ofPour = problems.map(({ severity, text }): Finding => ({ isStop: severity === 'error', words: text }));
  const ofPanels = setOuts.flatMap((setOut) =>
    listPanelFindings(setOut).map(({ isStop, words }): Finding => ({ isStop, words: `${setOut.panel.mark} ${words}` })),
  );
  return [...ofPour, ...ofPanels].sort((a, b) => Number(b.isStop) - Number(a.isStop));
}
