import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { checkEdit, checkPanelsAlone } from '../../../src/job/edit/check-edit.ts';
import { previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { slicePanels } from '../../../src/job/edit/slice-panels.ts';
import { findTouched } from '../../../src/job/edit/touched-panels.ts';
import { showPath } from '../../../src/job/fault.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { tries } from '../../long.ts';
import { demo } from './demo.ts';

/** Faults as lines, in no order. */
function linesOf(faults: readonly { readonly path: readonly (string | number)[]; readonly text: string }[]): string[] {
  return faults.map(({ path, text }) => `${showPath(path)}: ${text}`).sort();
}

function readWhole(file: JobFile): string[] {
  const reading = readJobDocument(file);
  return reading.ok ? [] : linesOf(reading.faults);
}

const place = fc.nat({ max: 10_000 });
const length = fc.integer({ min: -800, max: 6000 });

/** Changes of all kinds, right and wrong ones. */
const change: fc.Arbitrary<Recipe> = fc.oneof(
  fc.tuple(place, length, length).map(
    ([i, x, y]): Recipe =>
      ({ job: { castIns } }) => {
        Object.assign(castIns[i % castIns.length]!, { x_mm: x, y_mm: y });
      },
  ),
  fc.tuple(place, place).map(
    ([i, k]): Recipe =>
      ({ job: { castIns }, library }) => {
        castIns[i % castIns.length]!.item = library.catalogue.items[k % library.catalogue.items.length]!.id;
      },
  ),
  fc.tuple(place, fc.constantFrom('1', '2', '3', 'X9')).map(
    ([i, id]): Recipe =>
      ({ job: { castIns } }) => {
        castIns[i % castIns.length]!.id = id;
      },
  ),
  fc.tuple(place, place).map(
    ([i, k]): Recipe =>
      ({ job: { castIns } }) => {
        castIns[i % castIns.length]!.key = castIns[k % castIns.length]!.key;
      },
  ),
  fc.tuple(place, place).map(
    ([i, k]): Recipe =>
      ({ job: { connections } }) => {
        connections[i % connections.length]!.mark = connections[k % connections.length]!.mark;
      },
  ),
  fc.tuple(place, length, length).map(
    ([i, x, y]): Recipe =>
      ({ job: { connections } }) => {
        connections[i % connections.length]!.origin_mm = [x, y];
      },
  ),
  place.map(
    (i): Recipe =>
      ({ job: { castIns } }) => {
        castIns.splice(i % castIns.length, 1);
      },
  ),
  place.map(
    (i): Recipe =>
      ({ job: { connections } }) => {
        connections.splice(i % connections.length, 1);
      },
  ),
  fc.tuple(place, fc.integer({ min: 60, max: 400 })).map(
    ([i, thickness]): Recipe =>
      ({ job: { panels } }) => {
        panels[i % panels.length]!.thickness_mm = thickness;
      },
  ),
  fc.tuple(place, fc.integer({ min: 500, max: 20_000 })).map(
    ([i, width]): Recipe =>
      ({ job: { panels } }) => {
        panels[i % panels.length]!.outline_mm = [
          [0, 0],
          [width, 0],
          [width, 3000],
          [0, 3000],
        ];
      },
  ),
  fc.tuple(place, fc.constantFrom('No such', null, 'P13', 'P01')).map(
    ([i, mark]): Recipe =>
      ({ job: { panels } }) => {
        panels[i % panels.length]!.handedOf = mark;
      },
  ),
  fc.tuple(place, fc.constantFrom('P01', 'P02', 'nowhere')).map(
    ([i, mark]): Recipe =>
      ({ job: { castIns } }) => {
        castIns[i % castIns.length]!.panel = mark;
      },
  ),
  fc.tuple(place, fc.constantFrom('P01', 'P77')).map(
    ([i, mark]): Recipe =>
      ({ job: { panels } }) => {
        panels[i % panels.length]!.mark = mark;
      },
  ),
  fc.tuple(place, fc.integer({ min: -5, max: 30 })).map(
    ([i, recess]): Recipe =>
      ({ job: { castIns } }) => {
        castIns[i % castIns.length]!.recess_mm = recess;
      },
  ),
  fc.constant<Recipe>(({ library }) => {
    library.catalogue.items[0]!.length_mm = 400;
  }),
  fc.constant<Recipe>(({ job }) => {
    job.pours.splice(0, 1);
  }),
);

describe('faults of an edit', () => {
  it('are those of a whole reading', () => {
    let wrong = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const after = changes.reduce(previewEdit, demo);
        const whole = readWhole(after);
        if (whole.length > 0) wrong += 1;
        // A value that is not allowed ends a whole reading before names are compared; the check of an edit may then say more, never less.
        const found = linesOf(checkEdit(demo, after));
        expect(found).toEqual(expect.arrayContaining([...whole]));
        expect(found.length > 0).toBe(whole.length > 0);
      }),
      { numRuns: tries(200, 80) },
    );
    // Most of these changes are wrong: a check that finds nothing would show.
    expect(wrong).toBeGreaterThan(5);
  }, 60_000);

  it('are none for the demo job, panel by panel', () => {
    for (const { mark } of demo.job.panels) expect(checkPanelsAlone(demo, new Set([mark]))).toEqual([]);
    expect(checkEdit(demo, demo)).toEqual([]);
  });

  it('name the piece that a longer panel comes to lie on, at its place in the whole job', () => {
    const pour = demo.job.pours.find(
      ({ pieces }) => pieces.length > 1 && pieces.every(({ along_mm }) => along_mm !== null),
    )!;
    const first = [...pour.pieces].sort((a, b) => a.along_mm! - b.along_mm!)[0]!;
    const after = previewEdit(demo, ({ job }) => {
      const panel = job.panels.find(({ mark }) => mark === first.panel)!;
      panel.outline_mm = panel.outline_mm.map(([x, y]) => [x === 0 ? 0 : x + 3000, y === 0 ? 0 : y + 3000]);
    });
    const found = linesOf(checkEdit(demo, after));
    expect(found.some((line) => line.includes('expected them apart') || line.includes('on the bed'))).toBe(true);
    expect(found).toEqual(readWhole(after));
  });
});

describe('a slice of a job', () => {
  it.each(demo.job.panels.map(({ mark }) => mark))('reads by itself and holds all of the panel: %s', (mark) => {
    const slice = slicePanels(demo, [mark]);
    expect(readJobDocument(slice).ok).toBe(true);
    const ofPanel = <T extends { readonly panel: string }>(list: readonly T[]) =>
      list.filter(({ panel }) => panel === mark);
    expect(ofPanel(slice.job.castIns)).toEqual(ofPanel(demo.job.castIns));
    expect(ofPanel(slice.job.connections)).toEqual(ofPanel(demo.job.connections));
    const { handedOf } = demo.job.panels.find((panel) => panel.mark === mark)!;
    const partners = demo.job.panels.filter((panel) => panel.handedOf === mark).map((panel) => panel.mark);
    const wanted = new Set([mark, ...partners, ...(handedOf === null ? [] : [handedOf])]);
    expect(new Set(slice.job.panels.map((panel) => panel.mark))).toEqual(wanted);
  });
});

describe('touched panels', () => {
  it('are those with another entry, nothing for none, and all when what they rest on changed', () => {
    const moved = previewEdit(demo, ({ job }) => {
      job.castIns[3]!.x_mm += 1;
    });
    expect(findTouched(demo, moved)).toEqual({ kind: 'panels', marks: new Set([demo.job.castIns[3]!.panel]) });
    expect(findTouched(demo, demo)).toEqual({ kind: 'panels', marks: new Set() });
    const ruled = previewEdit(demo, ({ library }) => {
      library.rules.clearance_mm = 7;
    });
    expect(findTouched(demo, ruled)).toEqual({ kind: 'whole' });
    const removed = previewEdit(demo, ({ job }) => {
      job.castIns.splice(0, 1);
    });
    expect(findTouched(demo, removed)).toEqual({ kind: 'panels', marks: new Set([demo.job.castIns[0]!.panel]) });
  });
});
