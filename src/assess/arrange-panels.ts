import type { ConnectionState } from './connection-answer.ts';
import { isInState, type PanelStatus, STATES_BY_NEED } from './panel-status.ts';

/** How a list of panels is ordered. */
export type PanelOrder = 'need' | 'ratio' | 'mark' | 'pour' | 'job';

/** Which panels are listed. */
export interface PanelChoice {
  /** Every word must be in the mark, the concrete, a connection's mark, an insert type or a pour. */
  readonly words: string;
  /** A state that one of its connections is in, or all where they pass; null: any. */
  readonly state: ConnectionState | null;
  readonly order: PanelOrder;
}

const byName = new Intl.Collator('en', { numeric: true }).compare;

function needOf({ worst, computing, castIns, loose, unheld }: PanelStatus): number {
  if (worst !== null && worst.state !== 'passes') return STATES_BY_NEED.indexOf(worst.state);
  if (computing > 0) return 4;
  if (castIns.length === 0) return 5;
  if (loose > 0) return 6;
  return unheld > 0 ? 7 : 8;
}

const ratioOf = ({ highest }: PanelStatus) => highest?.ratio ?? -1;

const ORDERS: Readonly<Record<PanelOrder, (a: PanelStatus, b: PanelStatus) => number>> = {
  need: (a, b) => needOf(a) - needOf(b) || ratioOf(b) - ratioOf(a),
  // Nothing left to hold is more than any number.
  ratio: (a, b) => (ratioOf(a) === ratioOf(b) ? 0 : ratioOf(b) > ratioOf(a) ? 1 : -1),
  mark: (a, b) => byName(a.panel.mark, b.panel.mark),
  pour: (a, b) => byName(a.pours[0] ?? '\uFFFF', b.pours[0] ?? '\uFFFF') || byName(a.panel.mark, b.panel.mark),
  job: () => 0,
};

function textOf({ panel, connections, castIns, pours }: PanelStatus): string {
  return [
    panel.mark,
    panel.concrete,
    ...connections.map(({ mark }) => mark),
    ...new Set(castIns.map(({ item, description }) => item ?? description ?? '')),
    ...pours,
  ]
    .join(' ')
    .toLowerCase();
}

/** The panels that are wanted, in the order that is wanted; those that are equal in it stay in the order of the job. */
export function arrangePanels(
  panels: readonly PanelStatus[],
  { words, state, order }: PanelChoice,
): readonly PanelStatus[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return panels
    .filter((one) => state === null || isInState(one, state))
    .filter((one) => {
      if (wanted.length === 0) return true;
      const text = textOf(one);
      return wanted.every((word) => text.includes(word));
    })
    .sort(ORDERS[order]);
}
