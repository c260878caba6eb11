import { useMemo } from 'preact/hooks';
import { reportStripped, type StrippedReport } from '../../../../assess/yard/after-stripping.ts';
import { judgeEarlyAge } from '../../../../assess/yard/early-age.ts';
import { tellEarlyAge, tellMayNot, tellPartsBack } from '../../../../say/piece-words.ts';
import { Section } from '../../../parts/page.tsx';
import { useNow } from '../../../parts/use-now.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import styles from './yard.module.css';

function Lines({ of }: { readonly of: readonly string[] }) {
  return (
    <ul class={styles.points}>
      {of.map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}

/** What came back of what went into the form, and how the inserts were found. */
function Stripped({ stripped: { isStripped, isOpenedUp, parts, inserts } }: { readonly stripped: StrippedReport }) {
  const faults = inserts.flatMap(({ item, faults: own }) => own.map((words) => `no. ${item.number}: ${words}`));
  return (
    <>
      {isStripped ? (
        <>
          <h3>Plates and other parts that are used again</h3>
          <Lines of={parts.length === 0 ? ['nothing of this piece is used again'] : tellPartsBack(parts)} />
        </>
      ) : (
        <p>Not recorded as stripped: nothing is counted back yet.</p>
      )}
      <h3>Inserts opened up</h3>
      {!isOpenedUp && <p>Nobody has opened up the inserts of this piece.</p>}
      {isOpenedUp && faults.length === 0 && <p>All are as they must be.</p>}
      <Lines of={faults} />
    </>
  );
}

/** What comes after the pour: the strength at its age and what may not be done yet, plates counted back, inserts opened up. */
export function AfterPart({ piece }: { readonly piece: OpenPiece }) {
  const now = useNow();
  const { context, plan, state, head } = piece;
  const stripped = useMemo(() => reportStripped(context, plan, state), [context, plan, state]);
  const age = judgeEarlyAge(context, plan, state, head.pour, now);
  if (age.kind === 'not poured' && !stripped.isStripped && !stripped.isOpenedUp) return null;
  return (
    <Section
      title="After the pour"
      lead="A strength that is reached lifts nothing by itself: when and at what a piece is lifted is for the lifting design to say."
    >
      <Lines of={tellEarlyAge(age)} />
      <Lines of={tellMayNot(age)} />
      <Stripped stripped={stripped} />
    </Section>
  );
}
