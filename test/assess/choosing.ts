import type { ChooseOptions, ConnectionChoice, PassingInsert, RejectedInsert } from '../../src/assess/choose/choice.ts';
import { chooseConnection } from '../../src/assess/choose/choose-connection.ts';
import { JobDraft } from '../../src/assess/choose/job-draft.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { mustRead } from '../job/read.ts';
import { type Json, type SampleParts, sampleItem, sampleJob } from '../job/sample-job.ts';

/** Nothing but the insert may change. */
export const SWAP_ONLY: ChooseOptions = { move: 0, drills: false, strongerBolts: false, daysToPour: null };

/** Values that let splitting be released: edges are 500 mm away, the panel is 180 mm thick. */
const SPLITTING = { criticalEdge_mm: 200, minimumThickness_mm: 150 };

/** A ferrule of a length, foot and embedment following from it. */
export function makeItem(id: string, length: number, changes: Json = {}): Json {
  return sampleItem({ id, length_mm: length, embedment_mm: length - 7, splitting: SPLITTING, ...changes });
}

/** A job of the sample's panel and connection, with a catalogue. */
export function readJob(parts: SampleParts): JobFile {
  return mustRead(sampleJob({ items: [makeItem('F16', 103)], ...parts }));
}

/** The choice for a connection of a job, the first where none is named. */
export function choose(parts: SampleParts, options: Partial<ChooseOptions> = {}, mark = 'C1'): ConnectionChoice {
  const file = readJob(parts);
  const connection = file.job.connections.find((candidate) => candidate.mark === mark)!;
  return chooseConnection(new JobDraft(file), connection, { ...SWAP_ONLY, ...options });
}

export function namesOf(inserts: readonly (PassingInsert | RejectedInsert)[]): readonly string[] {
  return inserts.map(({ item }) => item.id);
}

/** Why an insert is not among the ranked: the kind, and its reasons in one line. */
export function whyNot({ rejected }: ConnectionChoice, id: string): string {
  const found = rejected.find(({ item }) => item.id === id);
  return found === undefined ? 'passes' : `${found.why}: ${found.reasons.join('; ')}`;
}

/** One combination of loads. */
export function loads(combination: Json): Json {
  return { kind: 'loads', combinations: [{ name: 'wind', N_kN: 0, Vx_kN: 0, Vy_kN: 0, ...combination }] };
}
