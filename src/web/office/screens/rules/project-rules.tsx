import type { Draft } from 'immer';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import { TextField } from '../../../parts/field.tsx';
import { Fields, Section } from '../../../parts/page.tsx';
import { TextLines } from '../../../parts/text-lines.tsx';
import type { JobSession } from '../../state/session.ts';

/** What stands in the head of every sheet. */
export function ProjectRules({ session }: { readonly session: JobSession }) {
  const { project } = session.shown.value.job;
  const edit = (what: string, change: (project: Draft<JobFile>['job']['project']) => void) =>
    session.commit(`Project: ${what}`, ({ job }) => change(job.project));
  return (
    <Section title="The project" anchor="project" lead="It stands in the head of every sheet.">
      <Fields>
        <TextField
          label="Name"
          value={project.name}
          onChange={(name) =>
            edit('name', (draft) => {
              draft.name = name;
            })
          }
        />
        <TextField
          label="Number"
          value={project.number ?? ''}
          onChange={(number) =>
            edit('number', (draft) => {
              draft.number = number === '' ? null : number;
            })
          }
        />
        <TextField
          label="Design engineer"
          hint="Who decides where this program does not."
          value={project.designEngineer ?? ''}
          onChange={(name) =>
            edit('design engineer', (draft) => {
              draft.designEngineer = name === '' ? null : name;
            })
          }
        />
      </Fields>
      <TextLines
        title="Remarks"
        lines={project.remarks}
        onChange={(remarks) =>
          edit('remarks', (draft) => {
            draft.remarks = [...remarks];
          })
        }
      />
    </Section>
  );
}
