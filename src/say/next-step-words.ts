import type { Decisive } from '../assess/connection-answer.ts';
import type { NextStep } from '../assess/next-step.ts';
import { findNextStep } from '../assess/next-step.ts';
import { type PanelStatus, STATES_BY_NEED } from '../assess/panel-status.ts';
import { showRatio } from './numbers.ts';
import { countOf } from './part-words.ts';
import { nameMode } from './words.ts';

/** What usually helps against a failure mode; what really does is computed where the connection is open. */
const HELPS: Readonly<Record<Decisive, string>> = {
  'steel-tension': 'take a larger thread or a stronger bolt',
  'concrete-cone': 'move it from the edge or take a longer insert',
  'pull-out': 'take an insert with a larger foot or stronger concrete',
  'blow-out': 'move it from the edge or take a larger foot',
  splitting: 'move it from the edge or make the panel thicker',
  'bar-steel': 'take more or thicker bars',
  'bar-anchorage': 'anchor the bars longer',
  'steel-shear': 'take a larger thread or a stronger bolt',
  'pry-out': 'take a longer insert or set them wider apart',
  'concrete-edge': 'move it from the edge or give it hairpins',
  'interaction-steel': 'take a larger thread',
  'interaction-concrete': 'move it from the edge or take a longer insert',
  'interaction-all': 'move it from the edge or take a larger insert',
  'plate-bending': 'take a thicker plate',
};

const alsoWords = (more: number, what: string) => (more === 0 ? '' : `; ${more} more ${what}`);

/** As much of a reason as a row has room for [signs]. */
const ROOM = 100;

/** The first clause of a reason; where that is long too, its first words. */
function shorten(text: string | undefined): string {
  const [clause = ''] = (text ?? '').split(/; | \(/);
  return clause.length <= ROOM ? clause : `${clause.slice(0, clause.lastIndexOf(' ', ROOM))} …`;
}

/** The next step about a panel in words. `handedOf`: a handed partner is edited in its source. */
export function tellNextStep(step: NextStep, handedOf: string | null): string {
  switch (step.kind) {
    case 'computing':
      return 'being computed';
    case 'fails': {
      const { mark, ratio, governing } = step.connection;
      const by = governing === null ? '' : ` by ${nameMode(governing.mode)}, ${showRatio(ratio)}`;
      const help = governing === null ? 'see why' : HELPS[governing.mode];
      return `${mark} fails${by}: ${handedOf === null ? help : `change it in ${handedOf}`}${alsoWords(step.more, step.more === 1 ? 'fails' : 'fail')}`;
    }
    case 'cannot be computed':
      return `${step.connection.mark} cannot be computed: ${shorten(step.connection.reasons[0])}${alsoWords(step.more, 'too')}`;
    case 'not covered':
      return `${step.connection.mark} is not covered: ${shorten(step.connection.reasons[0])}${alsoWords(step.more, 'too')}`;
    case 'strength not checked':
      return step.more === 0
        ? `no load is given for ${step.connection.mark}: strength not checked`
        : `no loads are given for ${step.connection.mark} and ${step.more} more: strength not checked`;
    case 'empty':
      return 'nothing is cast in yet: place the first connection';
    case 'loose':
      return `${countOf(step.inserts, 'fixing insert')} in no connection: strength not checked`;
    case 'unheld':
      return `holding of ${countOf(step.inserts, 'insert')} not decided`;
    case 'unplanned':
      return 'in no pour yet';
    case 'pour':
      return `next: the folder of pour ${step.pour}`;
  }
}

const NEEDS = {
  fails: ['has a connection that fails', 'have connections that fail'],
  'cannot be computed': ['has one that cannot be computed', 'have some that cannot be computed'],
  'not covered': ['has one that is not covered', 'have some that are not covered'],
  'strength not checked': ['has strength not checked', 'have strength not checked'],
} as const;

/** The panel to begin with: the most urgent state, then the highest ratio. */
function findFirst(panels: readonly PanelStatus[]): PanelStatus | null {
  const needOf = ({ worst }: PanelStatus) =>
    worst === null || worst.state === 'passes' ? STATES_BY_NEED.length : STATES_BY_NEED.indexOf(worst.state);
  let first: PanelStatus | null = null;
  for (const one of panels) {
    if (needOf(one) === STATES_BY_NEED.length) continue;
    const need = first === null ? -1 : needOf(one) - needOf(first);
    if (need < 0 || (need === 0 && (one.highest?.ratio ?? 0) > (first?.highest?.ratio ?? 0))) first = one;
  }
  return first;
}

/** What a whole job needs, in a line or two. Panels count under each state that one of their connections is in. */
export function tellJob(panels: readonly PanelStatus[]): string {
  const computing = panels.reduce((sum, one) => sum + one.computing, 0);
  const needs = STATES_BY_NEED.flatMap((state) => {
    if (state === 'passes') return [];
    const count = panels.filter(({ counts }) => counts[state] > 0).length;
    return count === 0 ? [] : [`${count} ${NEEDS[state][count === 1 ? 0 : 1]}`];
  });
  const unheld = panels.reduce((sum, one) => sum + one.unheld, 0);
  const loose = panels.reduce((sum, one) => sum + one.loose, 0);
  const first = findFirst(panels);
  const connections = panels.reduce((sum, one) => sum + one.connections.length, 0);
  const parts = [
    ...(computing > 0 ? [`${countOf(computing, 'connection')} being computed`] : []),
    ...(needs.length > 0 ? [`Of ${countOf(panels.length, 'panel')}, ${needs.join(', ')}`] : []),
    ...(first === null
      ? []
      : [`Begin with ${first.panel.mark}: ${tellNextStep(findNextStep(first), first.panel.handedOf)}`]),
    ...(needs.length === 0 && computing === 0 && connections > 0
      ? [connections === 1 ? 'The one connection passes' : `All ${connections} connections pass`]
      : []),
    ...(connections === 0 ? ['No connection is placed yet: open a panel and place the first'] : []),
    ...(loose > 0 ? [`${countOf(loose, 'fixing insert')} in no connection: strength not checked`] : []),
    ...(unheld > 0 ? [`Holding of ${countOf(unheld, 'insert')} is not decided`] : []),
  ];
  return `${parts.join('. ')}.`;
}
