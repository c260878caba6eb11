import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { Office } from '../harness.ts';
import type { Screen, ScreenOptions } from './screen.ts';

/** The first job of a store, such as the demo. */
async function findJob({ server }: Office): Promise<string> {
  const listed = (await (await fetch(`${server.address}/api/jobs`)).json()) as {
    readonly jobs: readonly { readonly id: string }[];
  };
  const id = listed.jobs[0]?.id;
  if (id === undefined) throw new Error('the store has no job; expected the demo');
  return id;
}

/** Opens a screen of that job, such as `pours/T12`. */
export async function openDemo(office: Office, path: string, options: ScreenOptions = {}): Promise<Screen> {
  const screen = await office.open(`/job/${await findJob(office)}/${path}`, options);
  screen.page.setDefaultTimeout(15_000);
  return screen;
}

/** The job as the server has it. */
export async function readServed(office: Office): Promise<JobFile> {
  const { address } = office.server;
  const opened = (await (await fetch(`${address}/api/jobs/${await findJob(office)}`)).json()) as {
    readonly file: JobFile;
  };
  return opened.file;
}
