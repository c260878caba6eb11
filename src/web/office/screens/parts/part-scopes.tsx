import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import { Button } from '../../../parts/button.tsx';
import { writeDay } from '../../../parts/day-field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { PrintSheets } from '../../../parts/print-sheets.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { PourPartsView } from '../../../worker/parts-view.ts';
import { type Asked, useAsked } from '../../state/use-asked.ts';
import { Labels } from './labels.tsx';
import { BenchTable, LineTable } from './need-tables.tsx';

/** Labels on one upright sheet. */
const PER_SHEET = 8;

/** What is laid out for a pour, what goes into which bag, and what goes to the site. */
function Pour({ pour }: { readonly pour: PourPartsView }) {
  const isPrinting = useSignal(false);
  const sheets = Array.from({ length: Math.ceil(pour.labels.length / PER_SHEET) }, (_, k) =>
    pour.labels.slice(k * PER_SHEET, (k + 1) * PER_SHEET),
  );
  return (
    <>
      <Section
        title={`Bench of pour ${pour.id}`}
        lead={`${writeDay(pour.date)}, ${pour.bed}: ${pour.panels.map(({ mark, serials }) => `${serials.length} × ${mark}`).join(', ')}. Laid out the day before.`}
      >
        <BenchTable pour={pour} />
      </Section>
      <Section
        title="Labels of the bags"
        lead="One bag a piece; with its mark, number and revision."
        actions={
          pour.labels.length > 0 && (
            <Button
              onPress={() => {
                isPrinting.value = true;
              }}
            >
              Print the labels
            </Button>
          )
        }
      >
        {pour.labels.length === 0 ? <p>No piece of this pour takes anything.</p> : <Labels labels={pour.labels} />}
      </Section>
      {pour.site.length > 0 && (
        <Section title="For the site" lead="These go with the panels; no pour waits for them.">
          <LineTable caption={`Bolts and washers of pour ${pour.id}`} lines={pour.site} />
        </Section>
      )}
      {isPrinting.value && (
        <PrintSheets
          paper="standing"
          sheets={sheets.map((labels) => <Labels key={labels[0]?.panel} labels={labels} />)}
          onDone={() => {
            isPrinting.value = false;
          }}
        />
      )}
    </>
  );
}

/** What the worker says, or that it is being counted. */
function Counted<T>({ asked, show }: { readonly asked: Asked<T>; readonly show: (value: T) => ComponentChildren }) {
  if (asked.why !== null)
    return (
      <Notice kind="fault" title="The parts could not be counted">
        {asked.why}
      </Notice>
    );
  return asked.value === null ? <p aria-busy="true">Counting …</p> : show(asked.value);
}

/** What one pour takes. */
export function PourParts({ file, id }: { readonly file: JobFile; readonly id: string }) {
  const asked = useAsked(() => askJobWorker(async (worker) => worker.pourParts(id)), [file, id]);
  return <Counted asked={asked} show={(pour) => <Pour pour={pour} />} />;
}

/** One casting of a panel, in each way in which pours cast it. */
export function PanelParts({ file, mark }: { readonly file: JobFile; readonly mark: string }) {
  const asked = useAsked(() => askJobWorker(async (worker) => worker.panelParts(mark)), [file, mark]);
  return (
    <Counted
      asked={asked}
      show={(castings) =>
        castings.map(({ pour, serials, lines }) => (
          <Section
            key={pour}
            title={`One casting of ${mark}`}
            lead={pour === null ? 'in no pour yet' : `pour ${pour}, no. ${serials.join(', ')}`}
          >
            {lines.length === 0 ? (
              <p>Nothing is cast into it.</p>
            ) : (
              <LineTable caption={`Parts of ${mark}`} lines={lines} />
            )}
          </Section>
        ))
      }
    />
  );
}
