import type { BodyOf } from '../../../src/records/record.ts';
import type { Office } from '../harness.ts';
import { findPersonId } from './checked-piece.ts';
import { findYardPiece, PaperTablet, type YardPiece } from './paper-tablet.ts';

/** How far an insert of a large face was found off along the drawing's x and y, and its depth below the face, by its number [mm]. */
export type Offs = Readonly<Record<number, { readonly dx?: number; readonly dy?: number; readonly depth?: number }>>;

/** A survey of all inserts in a large face, by the corners of the panel, as one stands before it. */
function makeSurvey({ plan }: YardPiece, face: 'outside' | 'inside', offs: Offs): BodyOf<'surveyed'> {
  const { panel, items } = plan.setOut;
  const xs = panel.outline_mm.map(([x]) => x);
  const ends = Math.min(...xs) + Math.max(...xs);
  // Who stands before the face that is not drawn sees it turned over.
  const seen = (x: number, y: number): [number, number] => [face === panel.drawnFace ? x : ends - x, y];
  const faces = items.filter(({ castIn }) => castIn.face === face);
  return {
    basis: 'instrument',
    file: { name: 'points.csv', hash: 'a'.repeat(64), reading: 'semicolons, mm' },
    tool: { name: 'invented instrument', serial: '7', calibratedUntil: '2030-01-01' },
    controls: panel.outline_mm.map(([x, y], k) => ({
      name: `corner ${k + 1}`,
      kind: 'corner',
      design_mm: [x, y],
      edgeEnd_mm: null,
      measured_mm: seen(x + (k % 2 === 0 ? 1 : -1), y),
      sigma_mm: 5,
      isUsed: true,
      note: null,
    })),
    points: faces.map(({ number, castIn }) => ({
      item: castIn.key,
      name: `i${number}`,
      measured_mm: seen(castIn.x_mm + (offs[number]?.dx ?? 0.6), castIn.y_mm + (offs[number]?.dy ?? -0.4)),
      second: null,
      sigma_mm: 1,
    })),
    tapes: [],
    stances: faces.flatMap(({ number, castIn }) => {
      const depth = offs[number]?.depth;
      return depth === undefined ? [] : [{ item: castIn.key, depth_mm: depth, tilt: null }];
    }),
    note: null,
  };
}

/** A piece of the demo that was poured, stripped and surveyed with another device; everything is on the server. */
export async function serveSurveyedPiece(
  office: Office,
  mark: string,
  serial: string,
  offs: Offs,
): Promise<YardPiece & { readonly tablet: PaperTablet; readonly surveyor: string }> {
  const piece = await findYardPiece(office.server.address, mark, serial);
  const surveyor = await findPersonId(office, 'checker');
  const tablet = new PaperTablet(
    piece,
    `surveyed${mark}`
      .toLowerCase()
      .replace(/[^a-z0-9]/g, '')
      .padEnd(16, '0')
      .slice(0, 16),
  );
  tablet.write(surveyor, { kind: 'poured', body: { reason: 'test' } });
  tablet.write(surveyor, { kind: 'stripped', body: { plates: [] } });
  const open = { plateOff: true, mortarOut: true, thread: true, turns: null, capBack: true, note: null };
  tablet.write(surveyor, { kind: 'uncovered', body: open });
  // An instrument stands before one face at a time.
  for (const face of ['outside', 'inside'] as const)
    if (piece.plan.setOut.items.some(({ castIn }) => castIn.face === face))
      tablet.write(surveyor, { kind: 'surveyed', body: makeSurvey(piece, face, offs) });
  await tablet.send(office.server.address);
  return { ...piece, tablet, surveyor };
}
