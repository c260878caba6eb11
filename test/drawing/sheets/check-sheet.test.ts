import { describe, expect, it } from 'vitest';
import { planPour } from '../../../src/assess/set-out/plan-pour.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import { drawCheckSheets, wantedLength } from '../../../src/drawing/sheets/check-sheet.ts';
import { listWanted } from '../../../src/drawing/sheets/list-wanted.ts';
import { PAPERS } from '../../../src/drawing/sheets/paper.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import { demo } from '../../job/edit/demo.ts';
import { textOf } from '../picture-checks.ts';

const JOB = 'abcdefghijkl';
const index = indexJob(demo);
const setOuts = index.file.job.pours.flatMap(({ id }) => planPour(index, id).setOuts);

const draw = (setOut: (typeof setOuts)[number], wanted: ReadonlySet<string>) =>
  drawCheckSheets(setOut, { mark: setOut.panel.mark, title: 'Check sheet', lines: [] }, PAPERS.A3, [], ['code'], {
    wanted,
    voidWords: 'Void if revision B is not the one in force.',
  });

/** Boxes of the width of a length, drawn with a thick line. */
const countHeavy = (setOut: (typeof setOuts)[number], wanted: ReadonlySet<string>) =>
  draw(setOut, wanted)
    .flatMap(({ marks }) => marks)
    .filter((mark) => mark.kind === 'area' && mark.pen === 'thick').length;

describe('lengths that a check sheet asks for', () => {
  it('are those that a tablet asks for of the same casting, for each another', () => {
    const seen = new Set<string>();
    for (const setOut of setOuts)
      for (const serial of ['1', '2', '3']) {
        const { key, mark } = setOut.panel;
        const plan = planPiece(index, { id: namePiece(JOB, key, serial), mark, bed: setOut.bed });
        const asked = plan.stops.flatMap(({ asks }) => asks.map((ask) => wantedLength(ask.key, ask.axis)));
        const wanted = listWanted(index, JOB, setOut, serial);
        expect(wanted).toEqual(new Set(asked));
        expect(countHeavy(setOut, wanted)).toBe(wanted.size);
        if (mark === 'P13') seen.add([...wanted].sort().join());
      }
    expect(seen.size).toBeGreaterThan(1);
  });

  it('are, of a job that has no office, both lengths of both ends of each group', () => {
    for (const setOut of setOuts) {
      const ends = setOut.groups.flatMap(({ diagonal }) => (diagonal === null ? [] : [diagonal.from, diagonal.to]));
      const wanted = listWanted(index, null, setOut, '1');
      expect(wanted.size).toBe(2 * new Set(ends).size);
      for (const { number, castIn } of setOut.items)
        expect(wanted.has(wantedLength(castIn.key, 'x')) && wanted.has(wantedLength(castIn.key, 'y'))).toBe(
          ends.includes(number),
        );
    }
  });
});

it('asks at each part who measured and when, and says when it is void', () => {
  const setOut = setOuts.find(({ panel }) => panel.mark === 'P13')!;
  const text = draw(setOut, new Set())
    .map(({ marks }) => textOf(marks))
    .join('\n');
  const parts = ['before the cage', 'before the pour', 'after screeding'].length;
  expect(text.match(/^measured by$/gm)).toHaveLength(parts);
  expect(text.match(/^date$/gm)).toHaveLength(parts);
  expect(text).toContain('Void if revision B is not the one in force.');
});
