import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { Link } from 'wouter-preact';
import { Button } from '../../../parts/button.tsx';
import { Empty } from '../../../parts/notice.tsx';
import type { Yard } from '../../../pieces/yard.ts';
import { addresses } from '../../state/addresses.ts';
import { useYardDesk } from './use-yard-desk.ts';

/** What a screen about the yard needs; what stands in the way of it is said, with the next step. */
export function DeskFrame({
  job,
  notInForce,
  children,
}: {
  readonly job: string;
  /** What a screen shows that can do without records, where nothing is issued; undefined: the next step. */
  readonly notInForce?: () => ComponentChildren;
  readonly children: (yard: Yard, letter: string) => ComponentChildren;
}) {
  const tries = useSignal(0);
  const desk = useYardDesk(job, tries.value);
  const again = () => {
    tries.value += 1;
  };
  switch (desk.kind) {
    case 'opening':
      return <p aria-busy="true">Looking at what the yard has recorded …</p>;
    case 'open':
      return <>{children(desk.yard, desk.letter)}</>;
    case 'failed':
      return (
        <Empty title="The records cannot be read">
          <p>{desk.why}</p>
          <Button kind="main" onPress={again}>
            Try again
          </Button>
        </Empty>
      );
    case 'elsewhere':
      return (
        <Empty title="Another window of this browser follows another job">
          <p>The records of one job at a time are followed here. Nothing is lost by it.</p>
          <Button kind="main" onPress={again}>
            Follow this job
          </Button>
        </Empty>
      );
    case 'not in force':
      if (notInForce !== undefined) return <>{notInForce()}</>;
      return (
        <Empty title="No revision is for construction">
          <p>
            The yard works by an issued revision only: tablets show nothing of a draft, of one for approval, or of a
            void one. Issue a revision for construction, and the pieces of its pours stand here and on the tablets.
          </p>
          <Link href={addresses.revisions(job)}>Revisions</Link>
        </Empty>
      );
  }
}
