import { useSignal } from '@preact/signals';
import { Button } from '../../../parts/button.tsx';
import { writeDay } from '../../../parts/day-field.tsx';
import { Section } from '../../../parts/page.tsx';
import { PrintSheets } from '../../../parts/print-sheets.tsx';
import type { PartsView, PourPartsView } from '../../../worker/parts-view.ts';
import { Labels } from './labels.tsx';
import { BenchTable, LineTable } from './need-tables.tsx';

/** Labels on one upright sheet. */
const PER_SHEET = 8;

/** What is laid out for one pour, what goes into which bag, and what goes to the site. */
export function PourParts({ pour }: { readonly pour: PourPartsView }) {
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

/** One casting of a panel, in each way in which pours cast it. */
export function PanelParts({ mark, view }: { readonly mark: string; readonly view: PartsView }) {
  return (
    <>
      {view.panels
        .filter((panel) => panel.mark === mark)
        .map(({ pour, serials, lines }) => (
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
        ))}
    </>
  );
}
