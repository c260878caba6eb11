import type { SurveyRow } from '../../../../files/survey/survey-file.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { CheckField, QuantityField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { listReadPairs } from '../../../pieces/survey/make-survey.ts';
import type { SurveyPreview } from '../../../pieces/survey/preview-survey.ts';
import { isControl, type SurveyPair, USUAL_SIGMA } from '../../../pieces/survey/survey-draft.ts';
import { tellMeaning } from './meaning-choice.ts';
import styles from './survey.module.css';
import type { SurveyDesk } from './survey-desk.ts';

interface ControlRow extends SurveyPair {
  readonly row: SurveyRow;
  readonly control: BodyOf<'surveyed'>['controls'][number];
}

/** No place of a known point is less sure than that [mm]. */
const MOST_SIGMA = 100;

function usualSigma({ meaning: { is } }: SurveyPair): number {
  return is === 'corner' || is === 'side' || is === 'mark' ? USUAL_SIGMA[is] : USUAL_SIGMA.corner;
}

/** Points by which the panel is found: how sure each is, what it leaves over, and which does not agree with the others. */
export function ControlsPart({
  desk,
  piece,
  body,
  preview,
}: {
  readonly desk: SurveyDesk;
  readonly piece: OpenPiece;
  readonly body: BodyOf<'surveyed'>;
  readonly preview: SurveyPreview;
}) {
  const matched = desk.matched.value;
  if (matched === null) return null;
  const { items } = piece.plan.setOut;
  const rows = listReadPairs(desk.draft.value, matched.file)
    .filter(isControl)
    .flatMap((pair, k): ControlRow[] => {
      const control = body.controls[k];
      return control === undefined ? [] : [{ ...pair, control }];
    });
  const residualOf = ({ control: { name } }: ControlRow) => preview.controls.find((one) => one.name === name) ?? null;
  const hasSuspect = preview.controls.some(({ isSuspect }) => isSuspect);
  const columns: readonly Column<ControlRow>[] = [
    {
      head: 'known point',
      isName: true,
      cell: ({ row, meaning }) => `${row.name ?? `line ${row.line}`}: ${tellMeaning(items, meaning)}`,
    },
    {
      head: 'where it is drawn',
      cell: ({ row, meaning, control }) =>
        meaning.is === 'mark'
          ? (['x', 'y'] as const).map((axis) => (
              <QuantityField
                key={axis}
                label={`${axis} of mark ${row.name ?? row.line}`}
                quantity="length"
                value={meaning[axis]}
                onChange={(value) => {
                  desk.mean(row.line, { ...meaning, [axis]: value ?? 0 });
                  return null;
                }}
              />
            ))
          : control.design_mm.map((value) => writeQuantity('length', value)).join(' · '),
    },
    {
      head: 'sure to ± (one σ)',
      cell: (pair) => (
        <QuantityField
          label={`How sure ${pair.row.name ?? pair.row.line} is`}
          isInTable
          quantity="length"
          value={pair.sigma ?? usualSigma(pair)}
          onChange={(value) => {
            if (value === null || value <= 0 || value > MOST_SIGMA)
              return `expected more than 0, at most ${MOST_SIGMA} mm`;
            desk.weigh(pair.row.line, { sigma: value });
            return null;
          }}
        />
      ),
    },
    {
      head: 'left over',
      kind: 'number',
      cell: (pair) => {
        const found = residualOf(pair);
        if (found === null || Number.isNaN(found.residual)) return '–';
        return <span class={found.isSuspect ? styles.off : undefined}>{writeQuantity('length', found.residual)}</span>;
      },
    },
    {
      head: 'counts',
      kind: 'wide',
      cell: ({ row, isUsed, note }) => (
        <span class={styles.why}>
          <CheckField
            label={isUsed ? 'used' : 'left out'}
            isOn={isUsed}
            onChange={(isOn) => desk.weigh(row.line, { isUsed: isOn, ...(isOn ? { note: '' } : {}) })}
          />
          {!isUsed && (
            <TextField
              label={`Why ${row.name ?? row.line} is left out`}
              value={note}
              placeholder="why"
              onChange={(text) => {
                if (text.length > 500) return 'expected at most 500 signs';
                desk.weigh(row.line, { note: text });
                return null;
              }}
            />
          )}
        </span>
      ),
    },
  ];
  return (
    <Section
      title="3 · Known points of the panel"
      lead={
        preview.rms === null
          ? 'They bring the instrument’s frame onto the panel.'
          : `They bring the instrument’s frame onto the panel; what they leave over is ${writeQuantity('length', preview.rms)} on average (root mean square).`
      }
    >
      {preview.notes.map((words) => (
        <Notice key={words} kind={hasSuspect ? 'fault' : 'caution'}>
          {words}
        </Notice>
      ))}
      {rows.length === 0 ? (
        <p>No point is a corner, a side or a mark yet: without them nobody knows where the points lie on the panel.</p>
      ) : (
        <Table caption="Known points" columns={columns} rows={rows} keyOf={({ row }) => String(row.line)} />
      )}
    </Section>
  );
}
