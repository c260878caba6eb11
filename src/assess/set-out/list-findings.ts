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

/**
 * What stands against a pour, stops first: its own findings and the stops of its panels in full, and of each panel how many more there are to look
 * at, which its own list tells.
 */
export function listFindings({ problems, setOuts }: PourPlan): readonly Finding[] {
  const ofPour = problems.map(({ severity, text }): Finding => ({ isStop: severity === 'error', words: text }));
  const ofPanels = setOuts.flatMap((setOut): Finding[] => {
    const { mark } = setOut.panel;
    const findings = listPanelFindings(setOut);
    const stops = findings.filter(({ isStop }) => isStop);
    const count = findings.length - stops.length;
    return [
      ...stops.map(({ words }) => ({ isStop: true, words: `${mark} ${words}` })),
      ...(count === 0 ? [] : [{ isStop: false, words: `${mark}: ${count} to look at, on its list of inserts` }]),
    ];
  });
  return [...ofPour, ...ofPanels].sort((a, b) => Number(b.isStop) - Number(a.isStop));
}
