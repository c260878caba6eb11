import type { Draft } from 'immer';
import type { Rules } from '../../../../job/documents/rules.ts';
import { changeRules } from '../../../../job/edit/commands/edit-library.ts';
import { ENVIRONMENT_WORDS, EXPOSURE_WORDS } from '../../../../say/rule-words.ts';
import { ChoiceField, QuantityField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { TextLines } from '../../../parts/text-lines.tsx';
import type { JobSession } from '../../state/session.ts';

const EXPOSURES = ['X0', 'XC1', 'XC2', 'XC3', 'XC4', 'XD1', 'XD2', 'XD3', 'XS1', 'XS2', 'XS3'] as const;
const ENVIRONMENTS = ['C1', 'C2', 'C3', 'C4', 'C5', 'CX'] as const;

interface LengthRule {
  readonly label: string;
  readonly hint: string;
  readonly read: (rules: Rules) => number;
  readonly write: (rules: Draft<Rules>, value: number) => void;
}

const LENGTHS: readonly LengthRule[] = [
  {
    label: 'Place, ±',
    hint: 'How far an insert may be off along each axis, where it says nothing itself.',
    read: ({ tolerances }) => tolerances.position_mm,
    write: ({ tolerances }, value) => {
      tolerances.position_mm = value;
    },
  },
  {
    label: 'Level, ±',
    hint: 'How far its top may be off in height.',
    read: ({ tolerances }) => tolerances.level_mm,
    write: ({ tolerances }, value) => {
      tolerances.level_mm = value;
    },
  },
  {
    label: 'Thickness of a panel, ±',
    hint: 'Chairs and depth of the form are judged by it.',
    read: ({ tolerances }) => tolerances.thickness_mm,
    write: ({ tolerances }, value) => {
      tolerances.thickness_mm = value;
    },
  },
  {
    label: 'Form, ±',
    hint: 'Length and width of the form; its diagonals may differ by twice as much.',
    read: ({ tolerances }) => tolerances.form_mm,
    write: ({ tolerances }, value) => {
      tolerances.form_mm = value;
    },
  },
  {
    label: 'Below a trowelled face, aimed',
    hint: 'Never proud: the screed would hit it.',
    read: ({ belowFace }) => belowFace.aim_mm,
    write: ({ belowFace }, value) => {
      belowFace.aim_mm = value;
    },
  },
  {
    label: 'Below a trowelled face, at most',
    hint: 'Deeper than that it is called wrong.',
    read: ({ belowFace }) => belowFace.most_mm,
    write: ({ belowFace }, value) => {
      belowFace.most_mm = value;
    },
  },
  {
    label: 'Clearance to bars and other items',
    hint: 'Less than that is a clash.',
    read: ({ clearance_mm }) => clearance_mm,
    write: (rules, value) => {
      rules.clearance_mm = value;
    },
  },
  {
    label: 'Cover behind the foot',
    hint: 'Least concrete between the foot and the far face.',
    read: ({ cover }) => cover.behindFoot_mm,
    write: ({ cover }, value) => {
      cover.behindFoot_mm = value;
    },
  },
];

/** Tolerances, distances and what the air does to steel. */
export function PlacingRules({ session }: { readonly session: JobSession }) {
  const { rules } = session.shown.value.library;
  const edit = (what: string, change: (draft: Draft<Rules>) => void) =>
    session.commit(`Rules: ${what}`, changeRules(change));
  return (
    <Section
      title="Placing and life"
      anchor="placing"
      lead="What the sheets ask of the yard; none of it is in the ratios of strength."
    >
      <Fields>
        {LENGTHS.map(({ label, hint, read, write }) => (
          <QuantityField
            key={label}
            label={label}
            hint={hint}
            quantity="length"
            value={read(rules)}
            onChange={(value) => (value === null ? 'expected a length' : edit(label, (draft) => write(draft, value)))}
          />
        ))}
        <ChoiceField
          label="Exposure class"
          hint="EN 206, of the concrete: decides the cover that steel needs."
          value={rules.exposure}
          options={EXPOSURES.map((value) => ({ value, text: `${value}: ${EXPOSURE_WORDS[value]}` }))}
          onChange={(exposure) =>
            edit(`exposure ${exposure}`, (draft) => {
              draft.exposure = exposure;
            })
          }
        />
        <ChoiceField
          label="Corrosivity"
          hint="ISO 9223, of the air: decides how long zinc lasts and which stainless grade is asked for."
          value={rules.environment}
          options={ENVIRONMENTS.map((value) => ({ value, text: `${value}: ${ENVIRONMENT_WORDS[value]}` }))}
          onChange={(environment) =>
            edit(`corrosivity ${environment}`, (draft) => {
              draft.environment = environment;
            })
          }
        />
      </Fields>
      <TextLines
        title="Statements on every sheet"
        lines={rules.statements}
        onChange={(statements) =>
          edit('statements', (draft) => {
            draft.statements = [...statements];
          })
        }
      />
    </Section>
  );
}
