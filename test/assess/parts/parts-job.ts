import type { JobIndex } from '../../../src/job/job-index.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleItem,
  samplePanel,
  samplePour,
} from '../../job/sample-job.ts';
import { readSample } from '../read-sample.ts';

/** Holding parts of the small job: all invented. */
export const parts: readonly Json[] = [
  {
    id: 'PLATE-16',
    name: 'nail-on fixing plate M16',
    kind: 'fixing plate',
    thread: 'M16',
    height_mm: 10,
    reusable: true,
    lossPerUse: 0.1,
    turnRound_days: 2,
    leadTime_days: 10,
  },
  { id: 'NAIL', name: 'nail 40 mm', kind: 'nail', reusable: false, packSize: 50, leadTime_days: 2 },
  { id: 'BOARD', name: 'template board', kind: 'template board', reusable: true, turnRound_days: 1 },
  { id: 'CHAIR-50', name: 'chair 50', kind: 'chair', height_mm: 50, reusable: false, packSize: 25 },
  { id: 'CHAIR-70', name: 'chair 70', kind: 'chair', height_mm: 70, reusable: false, packSize: 25 },
  { id: 'CAP-16', name: 'cap M16', kind: 'cap', thread: 'M16', reusable: false },
];

export const ways: readonly Json[] = [
  {
    id: 'NAILED',
    name: 'nailed to the form',
    method: 'nail-on plate',
    thread: 'M16',
    recess_mm: 0,
    parts: [
      { part: 'PLATE-16', count: 1 },
      { part: 'NAIL', count: 2 },
    ],
  },
  {
    id: 'BOARDED',
    name: 'nailed by template',
    method: 'template board',
    thread: 'M16',
    parts: [
      { part: 'BOARD', count: 1, per: 'group' },
      { part: 'NAIL', count: 4, per: 'group' },
      { part: 'PLATE-16', count: 1 },
    ],
  },
  {
    id: 'CHAIRED',
    name: 'on a chair',
    method: 'chair',
    thread: 'M16',
    chairs: ['CHAIR-50', 'CHAIR-70'],
    parts: [{ part: 'CAP-16', count: 1 }],
  },
];

/**
 * P1: connection C1 of two F16 on one template board, insert 3 (F16) nailed with a cross bar of 10 x 250, insert 4 (F16L, 143 mm) not decided, a
 * duct. P2: one F16 nailed. P3: nothing but a lifting insert by words. Panels lie with the outside face down, in which all inserts are.
 */
export function partsJob(changes: SampleParts = {}): SampleParts {
  return {
    items: [
      sampleItem({ leadTime_days: 14 }),
      sampleItem({ id: 'F16L', name: 'Ferrule M16 long', length_mm: 143, embedment_mm: 136 }),
    ],
    parts,
    ways,
    panels: [samplePanel(), samplePanel({ key: 'p2', mark: 'P2' }), samplePanel({ key: 'p3', mark: 'P3' })],
    castIns: [
      sampleCastIn('1', 900, 500, { holding: 'BOARDED' }),
      sampleCastIn('2', 1100, 500, { holding: 'BOARDED' }),
      sampleCastIn('3', 2000, 1500, {
        holding: 'NAILED',
        crossBar: { direction_deg: 0, diameter_mm: 10, length_mm: 250 },
      }),
      sampleCastIn('4', 3000, 1500, { item: 'F16L' }),
      sampleCastIn('5', 3500, 2500, { role: 'duct', item: null, description: 'conduit box' }),
      sampleCastIn('1', 1000, 1000, { key: 'i1-2', panel: 'P2', holding: 'NAILED' }),
      sampleCastIn('1', 1000, 1000, { key: 'i1-3', panel: 'P3', role: 'lifting', item: null, description: 'loop' }),
    ],
    connections: [sampleConnection()],
    pours: [
      samplePour({
        id: 'T1',
        date: '2026-12-14',
        pieces: [
          { panel: 'P1', serial: '1' },
          { panel: 'P1', serial: '2' },
          { panel: 'P2', serial: '1' },
        ],
      }),
      samplePour({ id: 'T2', date: '2026-12-15', pieces: [{ panel: 'P1', serial: '3' }] }),
    ],
    beds: [
      {
        id: 'B1',
        name: 'Bed 1',
        form: 'timber',
        sideForm: 'timber',
        length_mm: 20000,
        width_mm: 4000,
        names: { start: 'fixed stop end', finish: 'loose stop end', railA: 'wall rail', railB: 'gangway rail' },
      },
    ],
    ...changes,
  };
}

export function indexParts(changes: SampleParts = {}): JobIndex {
  return indexJob(readSample(partsJob(changes)));
}
