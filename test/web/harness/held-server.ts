import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { OpenJob } from '../../../src/wire/jobs.ts';
import { type Served, serve } from '../../server/serve.ts';
import { change } from '../../store/edits.ts';

/** A call on its way: the server has not seen it, or the page has not heard of it. */
interface Hold {
  readonly pattern: RegExp;
  readonly where: 'before' | 'after';
  readonly done: Promise<void>;
}

/** A real server behind a wire that a test holds up, cuts, or answers itself. */
export class HeldServer {
  readonly #served: Served;
  #holds: Hold[] = [];
  #answers: { readonly pattern: RegExp; readonly status: number; readonly body: object }[] = [];
  isAway = false;
  /** Answers to calls that were made are lost. */
  isDeaf = false;
  readonly asked: string[] = [];

  private constructor(served: Served) {
    this.#served = served;
  }

  static async start(): Promise<HeldServer> {
    return new HeldServer(await serve());
  }

  end(): Promise<void> {
    return this.#served.end();
  }

  /** Takes the place of `fetch`. */
  readonly fetch = async (url: string, init: { method: 'GET' | 'POST' | 'DELETE'; body?: string }) => {
    const name = `${init.method} ${url}`;
    this.asked.push(name);
    await this.#pass(name, 'before');
    if (this.isAway) throw new TypeError('no server');
    const own = this.#answers.find(({ pattern }) => pattern.test(`${name}${init.body ?? ''}`));
    if (own !== undefined) return new Response(JSON.stringify(own.body), { status: own.status });
    const body = init.body === undefined ? undefined : JSON.parse(init.body);
    const answer = await this.#served.call(init.method, url, body);
    await this.#pass(name, 'after');
    if (this.isDeaf) throw new TypeError('no answer');
    return new Response(JSON.stringify(answer.body), { status: answer.status });
  };

  async #pass(name: string, where: Hold['where']): Promise<void> {
    const hold = this.#holds.find((one) => one.where === where && one.pattern.test(name));
    await hold?.done;
  }

  /** Holds calls up, before the server sees them or before the page hears of them, until the answer is called. */
  hold(pattern: RegExp, where: Hold['where'] = 'before'): () => void {
    let release = () => {};
    const done = new Promise<void>((resolve) => {
      release = resolve;
    });
    const hold = { pattern, where, done };
    this.#holds.push(hold);
    return () => {
      this.#holds = this.#holds.filter((one) => one !== hold);
      release();
    };
  }

  /** Answers calls with such an address and body from now on in place of the server; what is given back ends it. */
  answer(pattern: RegExp, status: number, message: string): () => void {
    return this.answerWith(pattern, status, { error: 'faults', message });
  }

  answerWith(pattern: RegExp, status: number, body: object): () => void {
    const own = { pattern, status, body };
    this.#answers.push(own);
    return () => {
      this.#answers = this.#answers.filter((one) => one !== own);
    };
  }

  async create(file: JobFile): Promise<string> {
    return (await this.#served.store.createJob(file)).id;
  }

  async read(id: string): Promise<OpenJob> {
    const opened = await this.#served.store.openJob(id);
    if (opened.kind !== 'done') throw new Error('the job is not there');
    return opened.value;
  }

  /** Somebody else gives the project another name. */
  async renameElsewhere(id: string, name: string): Promise<void> {
    const { version, file } = await this.read(id);
    const { edit } = change(file, crypto.randomUUID(), ({ job }) => {
      job.project.name = name;
    });
    const saved = await this.#served.store.saveEdits(id, { base: version, editor: 'somebody else', edits: [edit] });
    if (saved.kind !== 'done') throw new Error(`the edit of somebody else was not saved: ${saved.kind}`);
  }

  get store(): Served['store'] {
    return this.#served.store;
  }
}
