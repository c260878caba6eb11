import { describe, expect, it } from 'vitest';
import { listPieces } from '../../../src/assess/yard/list-pieces.ts';
import { describeRevisionEffect } from '../../../src/assess/yard/revision-effect.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { namePiece } from '../../../src/records/name-piece.ts';
import { checkAll, demoFile, JOB, keyOf, PieceTablet, pieceOf, type SamplePiece } from './yard-sample.ts';

const file = demoFile();
const index = indexJob(file);

function stateOf(tablet: PieceTablet) {
  const { piece } = tablet.sample.plan;
  return [piece, foldPiece(piece, tablet.known.values())] as const;
}

/** A piece that no pour plans: P12 with another serial, in place of another. */
function recast(serial: string, recastOf: SamplePiece) {
  const { panelKey, mark } = recastOf.head;
  const id = namePiece(JOB, panelKey, serial);
  const sample: SamplePiece = { ...recastOf, plan: { ...recastOf.plan, piece: id } };
  const tablet = new PieceTablet(5, sample);
  const body = { panelKey, mark, serial, pour: 'T14', bed: 'B1', recastOf: recastOf.head.piece };
  tablet.write('checker', null, { kind: 'piece-started', body });
  return tablet;
}

describe('the pieces of a job', () => {
  it('are those of its pours, in their order', () => {
    const pieces = listPieces(JOB, index, new Map());
    expect(pieces.map(({ head }) => `${head.pour} ${head.mark} ${head.serial}`)).toEqual([
      ...['T12 P01 1', 'T12 P02 1', 'T12 P03 1', 'T12 P10 1'],
      ...['T13 P08 1', 'T13 P11 1', 'T13 P13 1', 'T13 P13-H 1'],
      ...['T14 P04 1', 'T14 P07 1', 'T14 P09 1', 'T14 P12 1', 'T14 P12 2'],
    ]);
    expect(new Set(pieces.map(({ phase }) => phase))).toEqual(new Set(['not started']));
  });
  it('are also those that records alone name, and none is left out', () => {
    const first = pieceOf(file, 'P12', '1');
    const scrapped = new PieceTablet(1, first);
    scrapped.write('qa', null, { kind: 'scrapped', body: { reason: 'cracked' } });
    const again = recast('3', first);
    const second = new PieceTablet(2, pieceOf(file, 'P12', '2'));
    const { panelKey, mark } = first.head;
    second.write('qa', null, { kind: 're-marked', body: { panelKey, mark, serial: '3', reason: 'washed off' } });
    const pieces = listPieces(JOB, index, new Map([scrapped, again, second].map(stateOf)));
    expect(pieces).toHaveLength(14);
    const of = pieces.filter((piece) => piece.head.mark === 'P12');
    expect(of.map(({ head, phase, isPlanned }) => [head.serial, phase, isPlanned])).toEqual(
      expect.arrayContaining([
        ['1', 'scrapped', true],
        ['3', 'in the form', true],
        ['3', 'in the form', false],
      ]),
    );
    expect(of.find(({ head }) => head.piece === first.head.piece)?.recastAs).toEqual([again.sample.plan.piece]);
    // Two pieces go by P12 no. 3: each says so.
    expect(of.filter(({ sameMark }) => sameMark.length === 1)).toHaveLength(2);
  });
  it.each([
    ['poured', [{ kind: 'poured', body: { reason: null } }]],
    [
      'stripped',
      [
        { kind: 'poured', body: { reason: null } },
        { kind: 'stripped', body: { plates: [] } },
      ],
    ],
  ] as const)('say how far they have come: %s', (phase, drafts) => {
    const tablet = new PieceTablet(1, pieceOf(file, 'P12', '1'));
    for (const draft of drafts) tablet.write('foreman', null, draft);
    const [id, state] = stateOf(tablet);
    expect(listPieces(JOB, index, new Map([[id, state]])).find(({ head }) => head.piece === id)?.phase).toBe(phase);
  });
});

describe('what a revision asks anew', () => {
  const sample = pieceOf(file, 'P12', '1');
  const after = indexJob(
    demoFile((whole) => ({
      ...whole,
      job: {
        ...whole.job,
        castIns: whole.job.castIns.map((castIn) =>
          castIn.key === keyOf(sample.plan, 2) ? { ...castIn, x_mm: castIn.x_mm + 40 } : castIn,
        ),
        connections: whole.job.connections.map((one) => ({ ...one, packers_mm: one.packers_mm + 1 })),
        panels: whole.job.panels.map((panel) =>
          panel.mark === 'P01' ? { ...panel, thickness_mm: panel.thickness_mm + 10 } : panel,
        ),
      },
    })),
  );
  const cast = new PieceTablet(1, sample);
  checkAll(cast);
  cast.write('foreman', null, { kind: 'poured', body: { reason: null } });
  const begun = new PieceTablet(2, pieceOf(file, 'P12', '2'));
  checkAll(begun);
  const pieces = listPieces(JOB, index, new Map([stateOf(cast), stateOf(begun)]));
  const effects = describeRevisionEffect(index, after, pieces);
  const effectOf = (mark: string, serial = '1') =>
    effects.find(({ head }) => head.mark === mark && head.serial === serial)!;

  it('is the same of each piece of a mark, and says how far each is', () => {
    // Drawn 40 mm farther to the right; from above, as it lies, that is 40 mm nearer to the datum corner.
    const inserts = [{ number: 2, is: 'changed', what: ['x 2460 (was 2500)'] }];
    expect(effectOf('P12')).toMatchObject({ is: 'cast', isFormChanged: false, inserts });
    expect(effectOf('P12', '2')).toMatchObject({ is: 'in the form', isFormChanged: false, inserts });
  });
  it('is nothing where only loads and site work changed', () => {
    expect(effectOf('P13')).toMatchObject({ is: 'not started', isFormChanged: false, inserts: [], isGone: false });
  });
  it('tells a form that is to be another', () => {
    expect(effectOf('P01')).toMatchObject({ is: 'not started', isFormChanged: true });
  });
  it('tells inserts that came and went, and a panel that is gone', () => {
    const without = indexJob(
      demoFile((whole) => ({
        ...whole,
        job: {
          ...whole.job,
          castIns: whole.job.castIns.filter(({ key }) => key !== keyOf(sample.plan, 2)),
          panels: whole.job.panels.filter(({ mark }) => mark !== 'P04'),
        },
      })),
    );
    const gone = describeRevisionEffect(index, without, pieces);
    expect(gone.find(({ head }) => head.mark === 'P12')?.inserts).toEqual([
      { number: 2, is: 'gone', what: ['F12-70'] },
    ]);
    expect(gone.find(({ head }) => head.mark === 'P04')?.isGone).toBe(true);
    const back = describeRevisionEffect(without, index, pieces);
    expect(back.find(({ head }) => head.mark === 'P12')?.inserts).toEqual([
      { number: 2, is: 'added', what: ['F12-70'] },
    ]);
    expect(back.find(({ head }) => head.mark === 'P04')).toMatchObject({ isGone: false, isFormChanged: true });
  });
});
