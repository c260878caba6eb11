import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mouldView } from '../../../src/engine/form/mould-view.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { Panel } from '../../../src/job/documents/panel.ts';
import { jobArbitrary } from '../../files/job-arbitrary.ts';
import { faultsOf, mustRead } from '../read.ts';
import { castInsOf, makePartner, panelOf } from './partners.ts';

/** Numbers to 1e-6, so that subtractions there and back may round. */
function roundAll(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value), (_key, v: unknown) =>
    typeof v === 'number' ? Math.round(v * 1e6) / 1e6 + 0 : v,
  );
}

/** A turn or direction, whichever way it is written. */
const circle = (degrees: number) => [Math.cos, Math.sin].map((f) => f((degrees * Math.PI) / 180));

/** Which way a line lies, whichever end is written first, as a direction that does not jump. */
const lineOf = (degrees: number) => circle(2 * degrees);

/** What a panel is apart from names, keys and links, with directions without whole circles. */
function shapeOf({ job }: JobFile, mark: string): unknown {
  const panel = job.panels.find((candidate) => candidate.mark === mark)!;
  const shapes = {
    panel: { ...panel, key: '', mark: '', handedOf: null },
    castIns: job.castIns
      .filter((c) => c.panel === mark)
      .map((c) => ({
        ...{ ...c, key: '', panel: '' },
        crossBar: c.crossBar === null ? null : { ...c.crossBar, direction_deg: lineOf(c.crossBar.direction_deg) },
      })),
    connections: job.connections
      .filter((c) => c.panel === mark)
      .map((c) => ({
        ...c,
        ...{ key: '', mark: '', panel: '', turn_deg: circle(c.turn_deg) },
        hairpins: c.hairpins.map((loop) => ({ ...loop, toward_deg: circle(loop.toward_deg) })),
      })),
  };
  return roundAll(shapes);
}

const layOf = (panel: Panel) =>
  mouldView({
    outline: panel.outline_mm,
    drawnFace: panel.drawnFace,
    faceDown: panel.faceDown,
    turn: panel.inForm.turn_deg,
    datum: panel.inForm.datum,
  });

describe('the handed partner of a panel', () => {
  it('is read without a fault, holes where the inserts are', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        expect(faultsOf(makePartner(file, file.job.panels[0]!.mark, 'P-H').file)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
  it('of the handed partner is the panel itself', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const { mark } = file.job.panels[0]!;
        const once = makePartner(file, mark, 'P-H').file;
        const unlinked = {
          ...once,
          job: { ...once.job, panels: once.job.panels.map((panel) => ({ ...panel, handedOf: null })) },
        };
        const twice = makePartner(unlinked, 'P-H', 'P-HH').file;
        expect(shapeOf(twice, 'P-HH')).toEqual(shapeOf(file, mark));
      }),
      { numRuns: 150 },
    );
  });
  it('is taped with the same lengths from its own datum corner, and lies as its mirror image', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const { mark } = file.job.panels[0]!;
        const made = makePartner(file, mark, 'P-H').file;
        const [view, handed] = [layOf(panelOf(made, mark)), layOf(panelOf(made, 'P-H'))];
        expect([handed.length, handed.width]).toEqual([view.length, view.width]);
        const isAlong = view.lay.turn === 0 || view.lay.turn === 180;
        const mirror = ([x, y]: Point): Point => (isAlong ? [view.length - x, y] : [x, view.width - y]);
        const partners = castInsOf(made, 'P-H');
        for (const [i, castIn] of castInsOf(made, mark).entries()) {
          const partner = partners[i]!;
          const taped = view.toForm([castIn.x_mm, castIn.y_mm]);
          const planned = mirror(view.toPlan([castIn.x_mm, castIn.y_mm]));
          expect(roundAll(handed.toForm([partner.x_mm, partner.y_mm]))).toEqual(roundAll(taped));
          expect(roundAll(handed.toPlan([partner.x_mm, partner.y_mm]))).toEqual(roundAll(planned));
        }
        const planned = [...view.lay.outline].map((corner) => JSON.stringify(roundAll(mirror(view.toPlan(corner)))));
        const lies = handed.lay.outline.map((corner) => JSON.stringify(roundAll(handed.toPlan(corner))));
        expect(lies.sort()).toEqual(planned.sort());
      }),
      { numRuns: 150 },
    );
  });
  it('keeps types, holding, faces, recesses and turns on the bed, and is linked', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const { mark } = file.job.panels[0]!;
        const made = makePartner(file, mark, 'P-H').file;
        const kept = (of: string) =>
          castInsOf(made, of).map(({ id, item, role, face, holding, recess_mm, size }) => ({
            ...{ id, item, role, face, holding, recess_mm, size },
          }));
        expect(kept('P-H')).toEqual(kept(mark));
        const [source, partner] = [panelOf(made, mark), panelOf(made, 'P-H')];
        expect(partner).toMatchObject({ handedOf: mark, drawnFace: source.drawnFace, faceDown: source.faceDown });
        expect(partner.inForm.turn_deg).toBe(source.inForm.turn_deg);
        const keys = [...made.job.panels, ...made.job.castIns, ...made.job.connections].map(({ key }) => key);
        expect(new Set(keys).size).toBe(keys.length);
      }),
      { numRuns: 40 },
    );
  });
});
