import { useSignal } from '@preact/signals';
import { useLocation } from 'wouter-preact';
import { planBed } from '../../../../assess/set-out/plan-bed.ts';
import type { Pour } from '../../../../job/documents/pour.ts';
import { changePiece, changePour, type PourChange } from '../../../../job/edit/commands/edit-pours.ts';
import { DayField } from '../../../parts/day-field.tsx';
import { ChoiceField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { StateLines } from '../../../parts/state-lines.tsx';
import { TextLines } from '../../../parts/text-lines.tsx';
import { addresses } from '../../state/addresses.ts';
import type { JobSession } from '../../state/session.ts';
import { BedView } from './bed-view.tsx';
import { PieceTable } from './piece-table.tsx';
import styles from './pour-view.module.css';
import { Readiness, usePourStrength } from './readiness.tsx';
import type { PoursFound } from './use-pour-findings.ts';

/** What stands against a pour, its bed with the pieces under the hand, and all that is said of it. */
export function PourPlanView({
  session,
  pour,
  found,
}: {
  readonly session: JobSession;
  readonly pour: Pour;
  readonly found: PoursFound;
}) {
  const [, go] = useLocation();
  const refused = useSignal<string | null>(null);
  const file = session.shown.value;
  const plan = planBed(file, pour);
  const { warnings } = usePourStrength(file, pour);
  const findings = found.byPour.get(pour.id);
  const nameOf = (index: number) => `${pour.pieces[index]?.panel} no. ${pour.pieces[index]?.serial}`;
  const move = {
    preview: (index: number, along: number | null) => {
      refused.value = null;
      session.preview(along === null ? null : changePiece(pour.id, index, { along_mm: along }));
    },
    drop: (index: number, along: number) => {
      refused.value = session.commit(
        `${nameOf(index)} moved on the bed of pour ${pour.id}`,
        changePiece(pour.id, index, { along_mm: along }),
      );
    },
  };
  const change = (what: string, values: PourChange) =>
    session.commit(`Pour ${pour.id}: ${what}`, changePour(pour.id, values));
  return (
    <>
      <Section
        title="The bed from above"
        lead="Drag a piece along the bed, or use the arrow keys (with Shift in large steps); exact places are typed below."
      >
        <div class={styles.bed}>
          <BedView plan={plan} onMove={move} />
        </div>
        {refused.value !== null && (
          <Notice kind="fault" title="It does not go there">
            {refused.value}
          </Notice>
        )}
        <PieceTable session={session} plan={plan} pour={pour} />
      </Section>
      <div class={styles.split}>
        <Section title="The pour">
          <Fields>
            <TextField
              label="Name"
              value={pour.id}
              onChange={(id) => {
                const why = change(`named ${id}`, { id });
                if (why === null) go(addresses.pour(session.id, id));
                return why;
              }}
            />
            <DayField label="Day" value={pour.date} onChange={(date) => change(`on ${date}`, { date })} />
            <ChoiceField
              label="Bed"
              value={pour.bed}
              options={file.library.yard.beds.map(({ id, name, form }) => ({ value: id, text: `${name} (${form})` }))}
              onChange={(bed) => change(`on bed ${bed}`, { bed })}
            />
            <QuantityField
              label="Strength before it is lifted out"
              hint="As the lifting design says; it stands on the sheets."
              quantity="stress"
              value={pour.strengthAtStrip_MPa}
              whenEmpty="not given"
              onChange={(strengthAtStrip_MPa) => change('strength before lifting out', { strengthAtStrip_MPa })}
            />
          </Fields>
          <TextLines
            lines={pour.remarks}
            onChange={(remarks) => change('remarks', { remarks: [...remarks] })}
            title="Remarks on the cover"
          />
          <Notice kind="caution">
            Lifting a panel out, braces and props follow rules of their own, at the strength that the concrete has then.
            Nothing here checks them.
          </Notice>
        </Section>
        <Section title="What stands against it">
          <div class={styles.state} role="status">
            <Readiness file={file} pour={pour} found={findings} />
            {found.isBusy && findings !== undefined && <span>looking again …</span>}
          </div>
          {warnings.length > 0 && (
            <Notice kind="caution" title="Connections in these panels do not pass: the design engineer decides">
              <StateLines lines={warnings} />
            </Notice>
          )}
          {findings?.findings.length === 0 && warnings.length === 0 && <p>Nothing was found against this pour.</p>}
          <ul class={styles.findings}>
            {findings?.findings.map(({ isStop, words }) => (
              <li key={words} class={`${styles.finding} ${isStop ? styles.isStop : ''}`}>
                <span class={styles.word}>{isStop ? 'STOP' : 'look at'}</span>
                <span>{words}</span>
              </li>
            ))}
          </ul>
        </Section>
      </div>
    </>
  );
}
