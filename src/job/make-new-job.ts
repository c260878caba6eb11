import type { StandardName } from '../engine/standards/standard-name.ts';
import { defaultRules } from './default-rules.ts';
import { defaultYard } from './default-yard.ts';
import type { JobFile } from './documents/job-file.ts';
import { JOB_FILE_VERSION } from './documents/job-file-version.ts';
import type { Panel } from './documents/panel.ts';
import { emptyCatalogue, emptyDetails, emptyHolding } from './empty-library.ts';

/** What a new job begins with. */
export interface NewJob {
  readonly name: string;
  readonly number: string | null;
  readonly standard: StandardName;
  /** Where catalogue, details, holding parts and yard come from; null: nothing is in them yet. */
  readonly library: JobFile['library'] | null;
  /** f_ck of its first concrete [MPa]. */
  readonly strength_MPa: number;
  /** A job holds a panel at least. Its concrete is the job's first, whatever is written in it. */
  readonly panel: Panel;
}

/** The name of a concrete by its strength: `C40`. */
function nameConcrete(strength_MPa: number): string {
  return `C${String(Math.round(strength_MPa * 10) / 10).replace('.', '-')}`;
}

/** A job with one panel and the rules of a standard; what nobody decided yet is the standard's own or on the safe side. */
export function makeNewJob({ name, number, standard, library, strength_MPa, panel }: NewJob): JobFile {
  const rules =
    standard === defaultRules.standard
      ? defaultRules
      : { ...defaultRules, id: 'own-rules', name: `${standard}, nothing decided beside it`, standard };
  const documents = {
    catalogue: library?.catalogue ?? emptyCatalogue,
    details: library?.details ?? emptyDetails,
    holding: library?.holding ?? emptyHolding,
    rules,
    yard: library?.yard ?? defaultYard,
  };
  const pin = ({ id, edition }: { readonly id: string; readonly edition: string }) => ({ id, edition });
  const concrete = nameConcrete(strength_MPa);
  return {
    format: 'onepour-job',
    version: JOB_FILE_VERSION,
    job: {
      project: { name, number, designEngineer: null, remarks: [] },
      pins: {
        catalogue: pin(documents.catalogue),
        details: pin(documents.details),
        holding: pin(documents.holding),
        rules: pin(documents.rules),
        yard: pin(documents.yard),
      },
      revision: null,
      concretes: [{ id: concrete, name: null, strength28_MPa: strength_MPa, ages: [], lightweight: false }],
      panels: [{ ...panel, concrete }],
      castIns: [],
      connections: [],
      pours: [],
    },
    library: documents,
  };
}
