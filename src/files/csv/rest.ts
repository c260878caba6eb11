import * as z from 'zod';
import { explainIssues } from '../../job/explain-issue.ts';
import { type Fault, placeInFile } from '../../job/fault.ts';
import { parseJson } from '../json.ts';

/** Name of the file beside the schedules that holds what they cannot say. */
export const REST_FILE = 'job.json';

const list = z.array(z.unknown()).optional();

/** What schedules cannot say: rules, details, sections, bars. The contents are checked together with the schedules. */
const rest = z.strictObject({
  format: z.literal('onepour-schedules'),
  version: z.literal(1),
  project: z.unknown().optional(),
  revision: z.unknown().optional(),
  concretes: z.array(z.unknown()).default([]),
  library: z
    .strictObject({
      catalogue: z.strictObject({ id: z.string(), edition: z.string(), name: z.string() }).optional(),
      details: z.unknown().optional(),
      holding: z.unknown().optional(),
      rules: z.unknown().optional(),
      yard: z.unknown().optional(),
    })
    .default({}),
  /** By mark. */
  panels: z
    .record(z.string(), z.strictObject({ zones: list, edges: list, reinforcement: z.unknown().optional() }))
    .default({}),
  /** By type. */
  types: z.record(z.string(), z.strictObject({ tested: list, ratedLoads: list })).default({}),
  /** By mark. Fixture and inserts only where the schedules cannot say them. */
  connections: z
    .record(
      z.string(),
      z.strictObject({ hangers: list, hairpins: list, fixture: z.unknown().optional(), inserts: list }),
    )
    .default({}),
  /** By name. */
  pours: z.record(z.string(), z.strictObject({ remarks: list })).default({}),
});

export type Rest = z.infer<typeof rest>;

const restKeys = [
  'format',
  'version',
  ...Object.keys(rest.shape),
  'zones',
  'edges',
  'reinforcement',
  'tested',
  'ratedLoads',
  'hangers',
  'hairpins',
  'fixture',
  'inserts',
  'remarks',
];

/** Nothing beside the schedules. */
export const emptyRest: Rest = {
  format: 'onepour-schedules',
  version: 1,
  concretes: [],
  library: {},
  panels: {},
  types: {},
  connections: {},
  pours: {},
};

/** Reads the file beside the schedules; `undefined`: there is none. */
export function readRest(content: string | undefined): { readonly rest: Rest; readonly faults: readonly Fault[] } {
  if (content === undefined) return { rest: emptyRest, faults: [] };
  const parsed = parseJson(content);
  if ('fault' in parsed) return { rest: emptyRest, faults: [placeInFile(REST_FILE, parsed.fault)] };
  const read = rest.safeParse(parsed.value);
  if (read.success) return { rest: read.data, faults: [] };
  const faults = explainIssues(read.error.issues, parsed.value, restKeys);
  return { rest: emptyRest, faults: faults.map((fault) => placeInFile(REST_FILE, fault)) };
}
