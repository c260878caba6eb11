import type { AsCastConnection, AsCastReport } from '../../../src/assess/as-cast/as-cast-report.ts';
import { reportAsCast } from '../../../src/assess/as-cast/report-as-cast.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { BodyOf, FactRecord, KindAndBody } from '../../../src/records/record.ts';
import { demoFile, PieceTablet, pieceOf, type SamplePiece } from '../yard/yard-sample.ts';

export type Offs = Readonly<
  Record<number, { readonly dx?: number; readonly dy?: number; readonly depth?: number; readonly tilt?: number }>
>;

export const DEMO = demoFile();

export function castOf(mark: string, file: JobFile = DEMO): PieceTablet {
  return new PieceTablet(1, pieceOf(file, mark, '1'));
}

/** Corners of the panel as the controls of a survey in its own axes: no frame to find. */
function cornersOf({ plan }: SamplePiece): BodyOf<'surveyed'>['controls'] {
  return plan.setOut.panel.outline_mm.map(([x, y], i) => ({
    name: `c${i}`,
    kind: 'corner',
    design_mm: [x, y],
    edgeEnd_mm: null,
    measured_mm: [x, y],
    sigma_mm: 1,
    isUsed: true,
    note: null,
  }));
}

/** A survey by instrument of inserts in the large faces, each off its place by what is given; depth below the face and tilt along x where they are given. */
export function surveyed(
  sample: SamplePiece,
  offs: Offs,
  numbers: readonly number[] = sample.plan.setOut.items.map(({ number }) => number),
): KindAndBody {
  const items = sample.plan.setOut.items.filter(
    ({ number, castIn }) => numbers.includes(number) && castIn.face !== 'edge',
  );
  return {
    kind: 'surveyed',
    body: {
      basis: 'instrument',
      file: null,
      tool: null,
      controls: cornersOf(sample),
      points: items.map(({ number, castIn }) => ({
        item: castIn.key,
        name: null,
        measured_mm: [castIn.x_mm + (offs[number]?.dx ?? 0), castIn.y_mm + (offs[number]?.dy ?? 0)],
        second: null,
        sigma_mm: 1,
      })),
      tapes: [],
      stances: items.flatMap(({ number, castIn }) => {
        const { depth = null, tilt = null } = offs[number] ?? {};
        if (depth === null && tilt === null) return [];
        return [
          {
            item: castIn.key,
            depth_mm: depth,
            tilt: tilt === null ? null : { x_mm: tilt, y_mm: 0, over_mm: 95 },
          },
        ];
      }),
      note: null,
    },
  };
}

export function reportOn({ context, plan }: SamplePiece, records: Iterable<FactRecord>): AsCastReport {
  return reportAsCast(context, plan, foldPiece(plan.piece, records));
}

/** The report of a piece surveyed with these offs. */
export function reportOff(mark: string, offs: Offs, file: JobFile = DEMO): AsCastReport {
  const tablet = castOf(mark, file);
  tablet.write('checker', null, surveyed(tablet.sample, offs));
  return reportOn(tablet.sample, tablet.known.values());
}

export function connectionOf({ connections }: AsCastReport, mark: string): AsCastConnection {
  const found = connections.find(({ connection }) => connection.mark === mark);
  if (found === undefined) throw new Error(`no connection ${mark}`);
  return found;
}
