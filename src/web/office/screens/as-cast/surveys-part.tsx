import type { AsCastReport, ControlResidual, RegisteredSurvey } from '../../../../assess/as-cast/as-cast-report.ts';
import { callPerson } from '../../../../assess/yard/rights.ts';
import type { Person } from '../../../../records/person.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './as-cast.module.css';

function UseMark({ isUsed, isSuspect }: ControlResidual) {
  if (isSuspect) return <StateMark state="fails" words="does not agree" />;
  return <StateMark state={isUsed ? 'passes' : 'strength not checked'} words={isUsed ? 'used' : 'left out'} />;
}

const COLUMNS: readonly Column<ControlResidual>[] = [
  { head: 'known point', isName: true, cell: ({ name }) => name },
  { head: 'left over', kind: 'number', cell: ({ residual }) => writeQuantity('length', residual) },
  { head: 'stands', kind: 'short', cell: (control) => <UseMark {...control} /> },
];

const BASIS: Readonly<Record<RegisteredSurvey['record']['body']['basis'], string>> = {
  instrument: 'with an instrument',
  tape: 'by tape',
  scaffold: 'by tape from where it stands',
};

function Survey({ survey, people }: { readonly survey: RegisteredSurvey; readonly people: readonly Person[] }) {
  const { record, controls, rms, notes } = survey;
  const { body, measuredAt, measuredBy, person } = record;
  return (
    <div class={styles.survey}>
      <h3>
        {`Surveyed ${BASIS[body.basis]} by ${callPerson(people, measuredBy ?? person)}, ${writeMoment(measuredAt)}`}
      </h3>
      <p class={styles.soft}>
        {body.tool === null
          ? 'Nobody read what is written on the tool.'
          : `Tool: ${body.tool.name ?? 'not named'}, no. ${body.tool.serial ?? 'not read'}, ${body.tool.calibratedUntil === null ? 'no calibration date read' : `calibrated until ${body.tool.calibratedUntil}`}.`}
        {body.file !== null && ` File ${body.file.name}: ${body.file.reading}.`}
        {rms !== null && ` The known points agree to ${writeQuantity('length', rms)} (root mean square).`}
      </p>
      {notes.length > 0 && (
        <Notice kind="caution" title="To be known of this survey">
          <ul class={styles.lines}>
            {notes.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Notice>
      )}
      {controls.length > 0 && (
        <Table
          caption="What the known points leave over"
          columns={COLUMNS}
          rows={controls}
          keyOf={({ name }) => name}
        />
      )}
    </div>
  );
}

/** The surveys that count: by whom, with what, and what their known points leave over. */
export function SurveysPart({ report, people }: { readonly report: AsCastReport; readonly people: readonly Person[] }) {
  if (report.surveys.length === 0) return null;
  return (
    <Section
      title="Surveys"
      lead="A survey lies on the panel as its known points say; what they leave over shows how well."
    >
      {report.surveys.map((survey) => (
        <Survey key={survey.record.id} survey={survey} people={people} />
      ))}
    </Section>
  );
}
