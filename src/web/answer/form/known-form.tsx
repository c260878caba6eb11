import type { UnansweredCase } from '../../../assess/out-of-place/answer.ts';
import type { KnownValues } from '../../../assess/out-of-place/case.ts';
import { propertyClasses } from '../../../engine/hardware/property-classes.ts';
import { standardNames } from '../../../engine/standards/standard-name.ts';
import { FIELD_NAMES } from '../../../say/case-fault-words.ts';
import { theme } from '../../parts/theme.ts';
import { units } from '../../parts/units.ts';
import { know, settings } from '../state/case-state.ts';
import { idOf } from '../state/go-to-field.ts';
import { findFault } from './case-form.tsx';
import styles from './form.module.css';
import { ListField, SideField } from './picked-field.tsx';
import { TypedField } from './typed-field.tsx';

/** Numbers that a maker's document or a drawing may give. */
type KnownNumber = {
  [F in keyof KnownValues]: number extends KnownValues[F] ? F : never;
}[keyof KnownValues];

const OF_INSERT: readonly KnownNumber[] = [
  'footDiameter_mm',
  'bodyDiameter_mm',
  'embedment_mm',
  'steelYield_MPa',
  'steelUltimate_MPa',
  'criticalEdge_mm',
  'engagement_mm',
];

const OF_PLACE: readonly KnownNumber[] = ['otherEdges_mm', 'drawnEdge1_mm', 'drawnEdge2_mm'];

/** A text that a job's document takes: no control signs, no first sign that a spreadsheet would reckon with. */
function cleanText(text: string): string {
  return text
    .replace(/\p{Cc}/gu, ' ')
    .replace(/^[=+\-@\s]+/, '')
    .trim()
    .slice(0, 200);
}

function DocumentField() {
  const { known, standard } = settings.value;
  const id = idOf('document');
  return (
    <div class={`${styles.field} ${styles.wide}`}>
      <label class={styles.label} for={id}>
        {FIELD_NAMES.document} for {standard}: its number
      </label>
      <div class={styles.box}>
        <input
          id={id}
          class={styles.input}
          autocomplete="off"
          placeholder="none in hand: it can be no pass"
          value={known.document?.document ?? ''}
          onChange={(event) => {
            const document = cleanText(event.currentTarget.value);
            know('document', document === '' ? null : { document, standard });
          }}
        />
      </div>
      {known.document !== null && known.document.standard !== standard && (
        <p class={styles.why}>It was named for {known.document.standard}: for these rules it does not count.</p>
      )}
    </div>
  );
}

function CheckBox({ field, text }: { readonly field: 'limitsCracks' | 'isDense'; readonly text: string }) {
  const { known } = settings.value;
  // Only what makes the answer better has to be known; without the tick it is assumed.
  const better = field === 'limitsCracks';
  return (
    <label class={styles.check}>
      <input
        id={idOf(field)}
        type="checkbox"
        checked={known[field] === better}
        onChange={(event) => know(field, event.currentTarget.checked ? better : null)}
      />
      {text}
    </label>
  );
}

/** What whoever answers may have in hand besides the twelve values. */
export function KnownForm({ faults }: { readonly faults: UnansweredCase['faults'] }) {
  const { known } = settings.value;
  const typed = (field: KnownNumber) => (
    <TypedField
      key={field}
      field={field}
      label={FIELD_NAMES[field]}
      quantity={field.endsWith('_MPa') ? 'stress' : 'length'}
      value={known[field]}
      onType={(value) => know(field, value)}
      whenEmpty={field.startsWith('drawn') ? 'not known' : 'assumed'}
      fault={findFault(faults, field)}
    />
  );
  return (
    <details class={styles.folded}>
      <summary>More that is known: product document, bars, drawing</summary>
      <div class={styles.form}>
        <p class={styles.hint}>
          Nothing here is needed. What stays empty is taken on the safe side; what is filled in lets the insert carry
          more.
        </p>
        <DocumentField />
        {OF_INSERT.map(typed)}
        <ListField
          field="boltClass"
          label={FIELD_NAMES.boltClass}
          value={known.boltClass}
          options={propertyClasses.map((name) => ({ value: name, text: name }))}
          whenEmpty="assumed"
          onPick={(value) => know('boltClass', value)}
        />
        <CheckBox field="limitsCracks" text="Bars or mesh hold cracks fine here (0.3 mm)" />
        <CheckBox field="isDense" text="Bars at the face stand at least 150 mm apart (up to 10 mm thick: 100 mm)" />
        {OF_PLACE.map((field) =>
          field === 'otherEdges_mm' ? (
            <div class={styles.wide} key={field}>
              {typed(field)}
            </div>
          ) : (
            typed(field)
          ),
        )}
      </div>
    </details>
  );
}

/** Rules, units, light: of this person, not of the case. */
export function RulesForm() {
  const { standard } = settings.value;
  return (
    <details class={styles.folded}>
      <summary>Rules, units, light</summary>
      <div class={styles.form}>
        <div class={styles.wide}>
          <ListField
            field="standard"
            label="Rules"
            value={standard}
            options={standardNames.map((name) => ({ value: name, text: name }))}
            whenEmpty={null}
            onPick={(value) => {
              if (value !== null) settings.value = { ...settings.value, standard: value };
            }}
          />
        </div>
        <SideField
          field="units"
          label="Units"
          value={units.value}
          options={[
            { value: 'metric', text: 'Metric' },
            { value: 'US', text: 'US' },
          ]}
          onPick={(value) => {
            units.value = value;
          }}
        />
        <SideField
          field="theme"
          label="Light"
          value={theme.value}
          options={[
            { value: 'system', text: 'Auto' },
            { value: 'light', text: 'Day' },
            { value: 'dark', text: 'Night' },
          ]}
          onPick={(value) => {
            theme.value = value;
          }}
        />
      </div>
    </details>
  );
}
