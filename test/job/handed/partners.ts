import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { makeHandedPartner } from '../../../src/job/handed/make-handed-partner.ts';
import { type SampleParts, sampleCastIn, sampleConnection, samplePanel } from '../sample-job.ts';

/** The job with its partner, or an error. */
export function makePartner(file: JobFile, mark: string, newMark: string): { file: JobFile; notes: readonly string[] } {
  const made = makeHandedPartner(file, mark, newMark);
  if (!made.ok) throw new Error(made.text);
  return made;
}
export const panelOf = (file: JobFile, mark: string) => file.job.panels.find((panel) => panel.mark === mark)!;
export const castInsOf = (file: JobFile, mark: string) => file.job.castIns.filter((castIn) => castIn.panel === mark);

/** A skew panel with an opening, a battered side, bars, an insert in the top edge and one with a bar through it. */
export const skew: SampleParts = {
  panels: [
    samplePanel({
      outline_mm: [
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 2000],
      ],
      openings_mm: [
        [
          [3000, 1000],
          [3500, 1000],
          [3500, 1600],
        ],
      ],
      zones: [
        {
          name: 'rib',
          outline_mm: [
            [0, 0],
            [300, 0],
            [300, 400],
          ],
          layers: [{ kind: 'structural', thickness_mm: 220 }],
        },
      ],
      edges: [{ edge: 1, batter_deg: 5 }],
      reinforcement: {
        bars: [
          { face: 'inside', direction_deg: 0, diameter_mm: 8, spacing_mm: 200, cover_mm: 30, through_mm: [100, 150] },
          { face: 'inside', direction_deg: 30, diameter_mm: 8, spacing_mm: 200, cover_mm: 38, through_mm: null },
        ],
        edge: 'bar',
        limitsCrackWidth: true,
      },
    }),
  ],
  castIns: [
    sampleCastIn('1', 900, 500, { crossBar: { direction_deg: 30 } }),
    sampleCastIn('2', 1100, 500),
    sampleCastIn('3', 700, 90, { face: 'edge', edge: 1, crossBar: { direction_deg: 0 } }),
    sampleCastIn('4', 2000, 1500, { role: 'plate', item: null, description: 'Weld plate' }),
  ],
  connections: [
    sampleConnection({
      actions: {
        kind: 'loads',
        combinations: [{ name: 'w', N_kN: 9, Vx_kN: 2, Vy_kN: -5, Mx_kNm: 1, My_kNm: 2, T_kNm: 3, at_mm: [10, 20] }],
      },
    }),
    sampleConnection({
      ...{ key: 'c2', mark: 'C2', face: 'edge', edge: 1, origin_mm: [700, 90], fixture: null },
      ...{ inserts: [{ insert: '3', hole: null }], actions: { kind: 'none' } },
    }),
  ],
};
