import type { Browser, Page } from 'playwright-core';

/** The longest task of the page's main thread [ms]: of the processor's time, which what else runs on the machine does not lengthen, and by the clock. */
export interface LongestTask {
  readonly processor: number;
  readonly clock: number;
}

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds by the clock, and of the thread's own time. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** Traces the tasks of a page while something is done on it. */
export async function traceTasks(browser: Browser, page: Page, act: () => Promise<void>): Promise<LongestTask> {
  await browser.startTracing(page, { categories: ['toplevel'] });
  let events: readonly TraceEvent[];
  try {
    await act();
  } finally {
    const trace: { readonly traceEvents: readonly TraceEvent[] } = JSON.parse(
      (await browser.stopTracing()).toString('utf8'),
    );
    events = trace.traceEvents;
  }
  const main = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(threadOf),
  );
  const tasks = events.filter((event) => event.dur !== undefined && main.has(threadOf(event)));
  if (tasks.length === 0) throw new Error('the trace holds no task of the page');
  const longest = (key: 'dur' | 'tdur') => Math.round(Math.max(...tasks.map((task) => task[key] ?? 0)) / 100) / 10;
  return { processor: longest('tdur'), clock: longest('dur') };
}

function threadOf({ pid, tid }: TraceEvent): string {
  return `${pid} ${tid}`;
}
