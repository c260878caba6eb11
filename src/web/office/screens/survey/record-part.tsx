import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { mayDo } from '../../../../assess/yard/rights.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { Button } from '../../../parts/button.tsx';
import { QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { FactWriter, factOf } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { listOpenOfSurvey } from '../../../pieces/survey/make-survey.ts';
import { readTool, type TypedTool } from '../../../pieces/survey/read-tool.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { WhoDecides } from '../yard/who-works.tsx';
import styles from './survey.module.css';
import type { SurveyDesk } from './survey-desk.ts';

/** With which instrument, and what stands against it; then the survey is recorded. */
export function RecordPart({
  desk,
  yard,
  piece,
  body,
  onRecorded,
}: {
  readonly desk: SurveyDesk;
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly body: BodyOf<'surveyed'>;
  readonly onRecorded: () => void;
}) {
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const asked = useSignal(false);
  const draft = desk.draft.value;
  const matched = desk.matched.value;
  if (matched === null) return null;
  const tool = readTool(draft.tool);
  const person = yard.device.person.value;
  const right = mayDo(person, 'survey');
  const open = [
    ...listOpenOfSurvey(draft, matched.file),
    ...(typeof tool === 'string' ? [tool] : []),
    ...(person === null
      ? ['Say first who surveyed, or records it for whoever did.']
      : right.may
        ? []
        : [`${right.why}.`]),
  ];
  const change = (part: keyof TypedTool) => (text: string) => {
    if (text.length > 200) return 'expected at most 200 signs';
    desk.tell({ tool: { ...draft.tool, [part]: text } });
    return null;
  };
  const record = async () => {
    asked.value = true;
    if (open.length > 0 || typeof tool === 'string') return;
    if (await writer.write([{ ...factOf(piece, null), kind: 'surveyed', body: { ...body, tool } }])) {
      desk.clear();
      onRecorded();
    }
  };
  return (
    <Section
      title="5 · Record it"
      lead="A survey stands beside others of the piece; nothing is decided by it. It can be taken back, and stays in the history."
      actions={
        <Button kind="main" onPress={() => void record()}>
          Record this survey
        </Button>
      }
    >
      <Fields>
        <WhoDecides yard={yard} />
        <TextField
          label="Instrument"
          value={draft.tool.name}
          placeholder="not named: a gap"
          onChange={change('name')}
        />
        <TextField
          label="Its number"
          value={draft.tool.serial}
          placeholder="not read: a gap"
          onChange={change('serial')}
        />
        <TextField
          label="Calibrated until"
          value={draft.tool.until}
          placeholder="2027-03-31"
          hint="year-month-day, as its sticker says"
          onChange={change('until')}
        />
        <QuantityField
          label="A point of it is sure to ± (one σ)"
          quantity="length"
          value={draft.instrument}
          onChange={(value) => {
            if (value === null || value <= 0 || value > 50) return 'expected more than 0, at most 50 mm';
            desk.tell({ instrument: value });
            return null;
          }}
        />
        <TextField
          label="In words"
          value={draft.note}
          placeholder="not needed"
          onChange={(text) => {
            if (text.length > 1000) return 'expected at most 1000 signs';
            desk.tell({ note: text });
            return null;
          }}
        />
      </Fields>
      {open.length > 0 && (
        <Notice kind={asked.value ? 'fault' : 'note'} title={asked.value ? 'Not recorded' : 'Before it is recorded'}>
          <ul class={styles.points}>
            {open.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Notice>
      )}
      {writer.fault.value !== null && (
        <Notice kind="fault" title="Not recorded">
          {`${writer.fault.value} All of it is still here.`}
        </Notice>
      )}
    </Section>
  );
}
