import * as z from 'zod';
import { LONGEST_TEXT } from './record-text.ts';
import { deviceId } from './values.ts';

const jobId = z.string().regex(/^[a-z0-9]{12}$/, 'the id of a job: 12 small letters and digits');

/** Records of a device that no server has, as a file: a last way out. The texts are those that were hashed, in the order of their running numbers. */
const recordExport = z.strictObject({
  format: z.literal('onepour-records'),
  version: z.literal(1),
  job: jobId,
  device: deviceId,
  texts: z.array(z.string().max(LONGEST_TEXT)).readonly(),
});

export type RecordExport = z.infer<typeof recordExport>;

/** What reading such a file came to; `why` says where and what was expected. */
export type ExportReading =
  | { readonly ok: true; readonly value: RecordExport }
  | { readonly ok: false; readonly why: string };

/** Writes the file, one text a line so that a person can look at it. */
export function writeExport(content: Pick<RecordExport, 'job' | 'device' | 'texts'>): string {
  const { job, device, texts } = content;
  return `${JSON.stringify({ format: 'onepour-records', version: 1, job, device, texts }, null, 1)}\n`;
}

/** Reads the file. Its texts are not read as records here: one that is none is still worth keeping. */
export function readExport(text: string): ExportReading {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { ok: false, why: `no JSON: ${error instanceof Error ? error.message : error}` };
  }
  const head = z.object({ format: z.literal('onepour-records'), version: z.number() }).safeParse(value);
  if (!head.success) return { ok: false, why: 'no file of records: "format": "onepour-records" was expected' };
  if (head.data.version > 1)
    return { ok: false, why: `the file has version ${head.data.version}, this program reads 1: a newer one is needed` };
  const read = recordExport.safeParse(value);
  if (read.success) return { ok: true, value: read.data };
  const [issue] = read.error.issues;
  return { ok: false, why: issue === undefined ? 'no file of records' : `${issue.path.join('.')}: ${issue.message}` };
}
