import { describeGeneral, describeLibrary, describePanel, markOf } from './describe-difference.ts';
import type { JobDifference } from './job-difference.ts';
import { summariseDifference } from './summarise-difference.ts';

/** A difference in words: one line, and lines by panel beneath it. Small, so that it travels between a page and its worker. */
export interface DifferenceOutline {
  /** "2 inserts moved, 1 type changed, 14 panels unchanged" */
  readonly summary: string;
  readonly panels: readonly {
    readonly mark: string;
    readonly kind: 'added' | 'removed' | 'changed';
    readonly lines: readonly string[];
  }[];
  /** What many panels use, and what holds for all. */
  readonly others: readonly string[];
  /** Marks of panels that are another in anything, what they use included; in the later job. */
  readonly touched: readonly string[];
  readonly isSame: boolean;
}

export function outlineDifference(difference: JobDifference): DifferenceOutline {
  const { panels, library, general } = difference;
  const touched = new Set([...panels.map(markOf), ...library.flatMap((one) => one.panels)]);
  return {
    summary: summariseDifference(difference),
    panels: panels.map((panel) => ({ mark: markOf(panel), kind: panel.kind, lines: describePanel(panel) })),
    others: [...library.map(describeLibrary), ...general.map(describeGeneral)],
    touched: [...touched],
    isSame: panels.length + library.length + general.length === 0,
  };
}
