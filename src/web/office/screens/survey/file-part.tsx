import { useSignal } from '@preact/signals';
import type { SurveySeparator } from '../../../../files/survey/survey-file.ts';
import { countOf } from '../../../../say/part-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { FaultTable } from '../../../parts/fault-table.tsx';
import { ChoiceField } from '../../../parts/field.tsx';
import { ChooseFiles, FileDrop } from '../../../parts/files.tsx';
import { Empty, Notice } from '../../../parts/notice.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import {
  DECIMAL_WORDS,
  exchangeAxes,
  SEPARATOR_WORDS,
  SURE_WORDS,
  tellColumns,
  UNIT_WORDS,
} from '../../../pieces/survey/reading-words.ts';
import styles from './survey.module.css';
import type { SurveyDesk } from './survey-desk.ts';

const KINDS = '.csv,.txt,.asc,.tsv,.dat,.xyz,.pts';

function options<T extends string>(words: Readonly<Record<T, string>>) {
  return (Object.entries(words) as [T, string][]).map(([value, text]) => ({ value, text }));
}

function PasteDialog({ desk, onClose }: { readonly desk: SurveyDesk; readonly onClose: () => void }) {
  const typed = useSignal('');
  return (
    <Dialog
      title="Points as text"
      isWide
      onClose={onClose}
      foot={
        <Button
          kind="main"
          isDisabled={typed.value.trim() === ''}
          onPress={() => {
            onClose();
            void desk.take('pasted points', new TextEncoder().encode(typed.value));
          }}
        >
          Read the points
        </Button>
      }
    >
      <label for="pasted-points">
        One point a line: name, east, north, height, in any order and with any separator.
      </label>
      <textarea
        id="pasted-points"
        class={styles.text}
        value={typed.value}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
    </Dialog>
  );
}

/** How the file was read: each part can be chosen otherwise. */
function Reading({ desk }: { readonly desk: SurveyDesk }) {
  const reading = desk.matched.value?.file.reading ?? null;
  if (reading === null) return null;
  const { separator, decimal, unit, columns } = reading;
  const order = columns.value;
  const choose = (choices: Parameters<SurveyDesk['choose']>[0]) => {
    void desk.choose(choices);
    return null;
  };
  const turned = exchangeAxes(order);
  return (
    <Fields>
      <ChoiceField<SurveySeparator>
        label="Between the cells"
        value={separator.value}
        options={options(SEPARATOR_WORDS)}
        hint={SURE_WORDS[separator.how]}
        onChange={(value) => choose({ separator: value })}
      />
      <ChoiceField
        label="Numbers"
        value={decimal.value}
        options={options(DECIMAL_WORDS)}
        hint={SURE_WORDS[decimal.how]}
        onChange={(value) => choose({ decimal: value })}
      />
      <ChoiceField
        label="Unit"
        value={unit.value}
        options={options(UNIT_WORDS)}
        hint={SURE_WORDS[unit.how]}
        onChange={(value) => choose({ unit: value })}
      />
      <ChoiceField
        label="Order of the cells"
        value="so"
        options={[
          { value: 'so', text: tellColumns(order) },
          { value: 'turned', text: tellColumns(turned) },
        ]}
        hint={SURE_WORDS[columns.how]}
        onChange={(value) => (value === 'turned' ? choose({ columns: turned }) : null)}
      />
    </Fields>
  );
}

/** The file of points: taken, and how it was read. */
export function FilePart({ desk }: { readonly desk: SurveyDesk }) {
  const isPasting = useSignal(false);
  const { file } = desk.draft.value;
  const matched = desk.matched.value;
  const take = async ([first]: readonly File[]) => {
    if (first !== undefined) await desk.take(first.name, new Uint8Array(await first.arrayBuffer()));
  };
  const actions = (
    <>
      <ChooseFiles
        accept={KINDS}
        {...(file === null ? { kind: 'main' as const } : {})}
        onFiles={(files) => void take(files)}
      >
        {file === null ? 'Choose a file' : 'Another file'}
      </ChooseFiles>
      <Button onPress={() => (isPasting.value = true)}>Paste points</Button>
      {file !== null && (
        <Button kind="danger" onPress={() => desk.clear()}>
          Put it away
        </Button>
      )}
    </>
  );
  return (
    <Section title="1 · File" lead={file === null ? undefined : file.name} actions={actions}>
      <FileDrop words="Let go: the points are read" onFiles={(files) => void take(files)} />
      {isPasting.value && <PasteDialog desk={desk} onClose={() => (isPasting.value = false)} />}
      {desk.fault.value !== null && (
        <Notice kind="fault" title="Not taken">
          {desk.fault.value}
        </Notice>
      )}
      {!desk.isKept.value && (
        <Notice kind="caution" title="On this page only">
          The browser has no room to keep what is begun here. Record it before the page is left.
        </Notice>
      )}
      {file === null && (
        <Empty title="No points yet">
          <p>
            Choose the file that the instrument or a spreadsheet gave: a point a line, with or without a heading.
            Measure each insert at its face, on a rod in it too where its lean counts, and at least three corners or
            marks of the panel (four show a slip).
          </p>
        </Empty>
      )}
      {file !== null && matched === null && desk.isBusy.value && <p aria-busy="true">Reading the points …</p>}
      {matched !== null && (
        <>
          <p>
            {`${countOf(matched.file.rows.length, 'point')}${matched.file.passedOver.length === 0 ? '' : `; ${matched.file.passedOver.length === 1 ? 'line' : 'lines'} ${matched.file.passedOver.join(', ')} without one`}.`}
          </p>
          <Reading desk={desk} />
          {matched.file.repeated.map(({ name, lines }) => (
            <Notice key={name} kind="caution" title={`“${name}” is there ${lines.length} times`}>
              {`On lines ${lines.join(', ')}: measured again, or a slip. One of them can be an insert.`}
            </Notice>
          ))}
          {matched.file.faults.length > 0 && (
            <>
              <Notice kind="fault" title={`${countOf(matched.file.faults.length, 'line')} could not be read`}>
                The others stand. If it is many, another choice above may be right.
              </Notice>
              <FaultTable caption="Lines that could not be read" faults={matched.file.faults} />
            </>
          )}
        </>
      )}
    </Section>
  );
}
