import type { AsCastConnection, AsCastInsert, Remedy } from '../../../../assess/as-cast/as-cast-report.ts';
import { AS_CAST_WORDS } from '../../../../say/fit-words.ts';
import { STATE_WORDS } from '../../../../say/words.ts';
import { type ShownState, StateMark } from '../../../parts/state-mark.tsx';

/** Shape and colour beside the word. What a person still has to decide is never green. */
const CONNECTIONS: Readonly<Record<AsCastConnection['state'], ShownState>> = {
  fine: 'passes',
  'fine as it is': 'cannot be computed',
  'needs a remedy': 'fails',
  'not usable': 'fails',
  'not surveyed': 'strength not checked',
  decided: 'not covered',
  conflict: 'fails',
};

const INSERTS: Readonly<Record<AsCastInsert['state'], ShownState>> = {
  within: 'passes',
  off: 'fails',
  'not surveyed': 'strength not checked',
  conflict: 'fails',
};

const INSERT_WORDS: Readonly<Record<AsCastInsert['state'], string>> = {
  within: 'within',
  off: 'OFF',
  'not surveyed': 'not surveyed',
  conflict: 'two surveys differ',
};

const VERDICTS: Readonly<Record<Remedy['verdict'], ShownState>> = {
  works: 'passes',
  'does not work': 'fails',
  'not known': 'strength not checked',
};

/** Within tolerance it is what it was as designed: green only where that passes. */
export function ConnectionMark({ state, before }: Pick<AsCastConnection, 'state' | 'before'>) {
  if (state === 'fine' && before.state !== 'passes')
    return <StateMark state={before.state} words={`${AS_CAST_WORDS.fine}; as designed ${STATE_WORDS[before.state]}`} />;
  return <StateMark state={CONNECTIONS[state]} words={AS_CAST_WORDS[state]} />;
}

export function AsCastMark({ state }: { readonly state: AsCastInsert['state'] }) {
  return <StateMark state={INSERTS[state]} words={INSERT_WORDS[state]} />;
}

export function VerdictMark({ verdict }: { readonly verdict: Remedy['verdict'] }) {
  return <StateMark state={VERDICTS[verdict]} words={verdict} />;
}
