import type { AsCastConnection, AsCastReport } from '../../../src/assess/as-cast/as-cast-report.ts';
import { topOfItem } from '../../../src/assess/as-cast/item-face.ts';
import { reportAsCast } from '../../../src/assess/as-cast/report-as-cast.ts';
import { findTop } from '../../../src/assess/clash/find-top.ts';
import type { CastIn } from '../../../src/job/documents/cast-in.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { Panel } from '../../../src/job/documents/panel.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { BodyOf, FactRecord, KindAndBody } from '../../../src/records/record.ts';
import { demoFile, PieceTablet, pieceOf, type SamplePiece } from '../yard/yard-sample.ts';

export type Offs = Readonly<
  Record<number, { readonly dx?: number; readonly dy?: number; readonly depth?: number; readonly tilt?: number }>
>;

export const DEMO = demoFile();

/** Pieces of the demo job, read once: nobody changes them. */
const samples = new Map<string, SamplePiece>();

function sampleOf(mark: string): SamplePiece {
  const sample = samples.get(mark) ?? pieceOf(DEMO, mark, '1');
  samples.set(mark, sample);
  return sample;
}

export function castOf(mark: string, file: JobFile = DEMO): PieceTablet {
  return new PieceTablet(1, file === DEMO ? sampleOf(mark) : pieceOf(file, mark, '1'));
}

/** Corners of the panel's drawn face as the controls of a survey in its own axes: no frame to find. */
function cornersOf({ plan }: SamplePiece): BodyOf<'surveyed'>['controls'] {
  return plan.setOut.panel.outline_mm.map(([x, y], i) => ({
    name: `c${i}`,
    kind: 'corner',
    design_mm: [x, y, 0],
    edgeEnd_mm: null,
    measured_mm: [x, y, 0],
    sigma_mm: 1,
    isUsed: true,
    note: null,
  }));
}

function topOf(panel: Panel, castIn: CastIn): [number, number, number] {
  const [x, y, z] = topOfItem(panel, castIn) as readonly [number, number, number]; // in space
  return [x, y, z];
}

/** A survey by instrument, each insert off its place by what is given along its own axes; its depth below the face is what it was aimed at where none is given. */
export function surveyed(
  sample: SamplePiece,
  offs: Offs,
  numbers: readonly number[] = sample.plan.setOut.items.map(({ number }) => number),
): KindAndBody {
  const { context, plan } = sample;
  const { panel, bed } = plan.setOut;
  const items = plan.setOut.items.filter(({ number }) => numbers.includes(number));
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
        measured_mm: topOf(panel, {
          ...castIn,
          x_mm: castIn.x_mm + (offs[number]?.dx ?? 0),
          y_mm: castIn.y_mm + (offs[number]?.dy ?? 0),
        }),
        second: null,
        sigma_mm: 1,
      })),
      tapes: [],
      stances: items.flatMap(({ number, castIn }) => {
        const { depth = findTop(context.index, panel, castIn, bed), tilt = null } = offs[number] ?? {};
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
