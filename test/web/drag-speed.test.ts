import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { useOffice } from './harness.ts';

/**
 * Budgets of the project [ms], on a panel of 120 inserts while one of a four-insert connection is dragged. `work`: handler, engine, render and layout of
 * one frame. `painted`: from the event to the frame that shows it.
 */
const BUDGETS = [
  { slowDown: 1, work: 8, painted: 34 },
  { slowDown: 4, work: 25, painted: 67 },
] as const;

/** Other programs of the machine have their bursts: the best of so many runs counts, and no more are made than are needed. */
const MOST_RUNS = 6;
const STEPS = 120;

/** 30 plates of four inserts on a panel of 12 × 3 m. */
const COLUMNS = 10;
const ROWS = 3;
const HALF = 100;

type Demo = { -readonly [K in keyof JobFile['job']]: JobFile['job'][K] };

/** The demo job with one panel in the place of its own: 120 inserts in 30 connections like one of the demo. */
function makeJob(): JobFile {
  const file = JSON.parse(readFileSync(new URL('../../demo/job.json', import.meta.url), 'utf8')) as JobFile;
  const [panel] = file.job.panels;
  const model = file.job.connections.find(({ mark }) => mark === 'C05')!;
  const castIn = file.job.castIns.find(({ panel: mark, id }) => mark === model.panel && id === '1')!;
  const at = (k: number) => [700 + (k % COLUMNS) * 1150, 500 + Math.floor(k / COLUMNS) * 1000] as const;
  const all = Array.from({ length: COLUMNS * ROWS }, (_, k) => k);
  const corners = [
    [-HALF, HALF],
    [HALF, HALF],
    [-HALF, -HALF],
    [HALF, -HALF],
  ] as const;
  const job: Demo = {
    ...file.job,
    panels: [
      {
        ...panel!,
        mark: 'W1',
        outline_mm: [
          [0, 0],
          [12000, 0],
          [12000, 3000],
          [0, 3000],
        ],
        openings_mm: [],
        reinforcement: null,
      },
    ],
    castIns: all.flatMap((k) =>
      corners.map(([dx, dy], i) => ({
        ...castIn,
        key: `speed-i-${k}-${i}`,
        id: String(4 * k + i + 1),
        panel: 'W1',
        // The inside face is the mirror image of the drawing.
        x_mm: at(k)[0] - dx,
        y_mm: at(k)[1] + dy,
      })),
    ),
    connections: all.map((k) => ({
      ...model,
      key: `speed-c-${k}`,
      mark: `S${String(k + 1).padStart(2, '0')}`,
      panel: 'W1',
      origin_mm: at(k),
      inserts: corners.map((_, i) => ({ insert: String(4 * k + i + 1), hole: String(i + 1) })),
    })),
    pours: [],
  };
  return { ...file, job };
}

interface Measured {
  readonly work: readonly number[];
  readonly painted: readonly number[];
  /** Pointer events that came, frames that worked, and how often what moves was written. */
  readonly events: number;
  readonly frames: number;
  readonly writes: number;
}

/** Runs in the page: times what the page does in each frame, until `stop` is asked for. */
function watchFrames(): void {
  const work: number[] = [];
  const painted: number[] = [];
  const counts = { events: 0, writes: 0 };
  const state = { since: null as number | null };
  const frame = globalThis.requestAnimationFrame.bind(globalThis);
  const node = document.querySelector('[data-insert="57"]')!;
  const observer = new MutationObserver((records) => {
    counts.writes += records.length;
  });
  observer.observe(node, { attributes: true, attributeFilter: ['transform'] });
  addEventListener(
    'pointermove',
    (event) => {
      counts.events += 1;
      state.since ??= event.timeStamp;
    },
    true,
  );
  globalThis.requestAnimationFrame = (act) =>
    frame((now) => {
      const since = state.since;
      state.since = null;
      const start = performance.now();
      act(now);
      // What was put off to the end of this task is drawn by then: a render waits for no more than that.
      void Promise.resolve().then(() =>
        Promise.resolve().then(() => {
          document.body.getBoundingClientRect();
          document.querySelector('svg[role=application]')!.getBoundingClientRect();
          work.push(performance.now() - start);
          performance.measure('drag frame', { start });
        }),
      );
      if (since === null) return;
      // The task after the frame's own: it was painted.
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => painted.push(performance.now() - since);
      port2.postMessage(null);
    });
  Object.assign(globalThis, {
    takeFrames: () => {
      const taken = { work: work.splice(0), painted: painted.splice(0), ...counts, frames: 0 };
      counts.events = 0;
      counts.writes = 0;
      return { ...taken, frames: taken.work.length };
    },
  });
}

function take(page: Page): Promise<Measured> {
  return page.evaluate(() => (globalThis as unknown as { takeFrames: () => Measured }).takeFrames());
}

/** The value that a share of them does not exceed. */
function findShare(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(share * sorted.length) - 1] ?? Number.NaN;
}

async function dragOnce(page: Page): Promise<Measured> {
  const box = (await page.locator('[data-insert="57"] > g').first().boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 4, y + 2);
  await take(page);
  for (let k = 1; k <= STEPS; k += 1) {
    const angle = (2 * Math.PI * k) / STEPS;
    await page.mouse.move(x + 22 * Math.sin(angle) + 4, y + 14 * (1 - Math.cos(angle)) + 2);
  }
  await page.waitForTimeout(60);
  const measured = await take(page);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return measured;
}

const show = (value: number) => value.toFixed(1);

describe('dragging on a panel of 120 inserts', () => {
  const office = useOffice({ hasDemo: false });

  it('keeps to one recompute a frame and to its budgets', { timeout: 120_000 }, async () => {
    const created = await fetch(`${office.server.address}/api/jobs`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ file: makeJob() }),
    });
    expect(created.status).toBeLessThan(300);
    const { id } = (await created.json()) as { id: string };
    const screen = await office.open(`/job/${id}/panel/W1`);
    const { page } = screen;
    await page.waitForSelector('[data-insert="120"]');
    // Everything is assessed, so that the worker has nothing to do meanwhile.
    await page.waitForFunction(
      (count) =>
        [...document.querySelectorAll('svg[role=application] text')].filter(({ textContent }) =>
          /^S\d+ \d/.test(textContent ?? ''),
        ).length === count,
      COLUMNS * ROWS,
    );
    // Without rests each event gives another place, and so something to work out.
    await page.keyboard.press('g');
    await page.evaluate(watchFrames);
    for (const { slowDown, work, painted } of BUDGETS) {
      await screen.slowDown(slowDown);
      const runs: Measured[] = [];
      const best = (read: (one: Measured) => readonly number[]) =>
        Math.min(...runs.map((one) => findShare(read(one), 0.95)));
      const isWithin = () => best((one) => one.work) < work && best((one) => one.painted) < painted;
      while (runs.length < MOST_RUNS && !isWithin()) runs.push(await dragOnce(page));
      const [bestWork, bestPainted] = [best((one) => one.work), best((one) => one.painted)];
      console.info(
        `drag, ${slowDown}× slowed down: work p95 ${show(bestWork)} ms (budget ${work}), event to painted p95 ${show(bestPainted)} ms (budget ${painted}), medians ${show(findShare(runs[0]!.work, 0.5))} and ${show(findShare(runs[0]!.painted, 0.5))} ms; ` +
          runs.map((one) => `${one.events} events, ${one.frames} frames, ${one.writes} writes`).join('; '),
      );
      for (const one of runs) {
        expect(one.frames).toBeGreaterThan(STEPS / 2);
        expect(one.writes).toBeGreaterThan(STEPS / 2);
        // A frame writes the place of what moves once at most: nothing is worked out twice for one frame.
        expect(one.writes).toBeLessThanOrEqual(one.frames);
      }
      expect(bestWork).toBeLessThan(work);
      expect(bestPainted).toBeLessThan(painted);
    }
  });
});
