import { useMemo } from 'preact/hooks';
import { poolPulls, reportPullTests } from '../../../../assess/proof-load/pull-tests.ts';
import { tellPooled } from '../../../../say/pull-words.ts';
import { Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import styles from './bolt-up.module.css';

/** Pull tests of all pieces of a job together, by type and concrete; nothing where none was made. */
export function JobPullsPart({ pieces }: { readonly pieces: readonly OpenPiece[] }) {
  const pulled = pieces.filter(({ state }) => state.beside.has('proof-loaded'));
  const pools = useMemo(
    () => poolPulls(pulled.map(({ context, plan, state }) => reportPullTests(context, plan, state))),
    // States and plans are values: the same list of them gives the same tests.
    pulled.flatMap(({ state, plan }) => [state, plan]),
  );
  if (pools.length === 0) return null;
  return (
    <Section
      title="Pull tests of the job"
      lead="All pieces together, by type of insert and concrete; only what was pulled by a plan, with the cone free."
    >
      <ul class={styles.lines}>
        {pools.map((pool) => (
          <li key={`${pool.type} ${pool.concrete}`}>{tellPooled(pool)}</li>
        ))}
      </ul>
    </Section>
  );
}
