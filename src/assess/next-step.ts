import type { ConnectionAnswer } from './connection-answer.ts';
import type { PanelStatus } from './panel-status.ts';

/** What a panel needs next. `connection`: where to go for it. */
export type NextStep =
  | { readonly kind: 'computing' }
  | {
      readonly kind: 'fails' | 'cannot be computed' | 'not covered';
      readonly connection: ConnectionAnswer;
      readonly more: number;
    }
  | { readonly kind: 'strength not checked'; readonly connection: ConnectionAnswer; readonly more: number }
  | { readonly kind: 'empty' }
  | { readonly kind: 'loose'; readonly inserts: number }
  | { readonly kind: 'unheld'; readonly inserts: number }
  | { readonly kind: 'unplanned' }
  | { readonly kind: 'pour'; readonly pour: string };

/** The one thing to do next about a panel: what does not hold comes before what is not known, that before what is not planned. */
export function findNextStep(status: PanelStatus): NextStep {
  const { worst, counts, castIns, loose, unheld, pours, computing } = status;
  if (worst !== null && worst.state !== 'passes' && (computing === 0 || worst.state === 'fails'))
    return { kind: worst.state, connection: worst, more: counts[worst.state] - 1 };
  if (computing > 0) return { kind: 'computing' };
  if (castIns.length === 0) return { kind: 'empty' };
  if (loose > 0) return { kind: 'loose', inserts: loose };
  if (unheld > 0) return { kind: 'unheld', inserts: unheld };
  const [pour] = pours;
  return pour === undefined ? { kind: 'unplanned' } : { kind: 'pour', pour };
}
