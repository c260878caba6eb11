import { listFormMeasures } from '../../../src/assess/yard/form-measures.ts';
import type { Office } from '../harness.ts';
import { findYardPiece, PaperTablet, type YardPiece } from './paper-tablet.ts';

/** How far an insert is off what it should be, by its number [mm]. */
export type Deviations = Readonly<
  Record<number, { readonly x?: number; readonly y?: number; readonly level?: number }>
>;

/** The id of a person of the demo, by a part of the name. */
export async function findPersonId({ server }: Office, name: string): Promise<string> {
  const { people } = (await (await fetch(`${server.address}/api/people`)).json()) as {
    readonly people: readonly { readonly id: string; readonly name: string | null }[];
  };
  const found = people.find((one) => one.name?.includes(name) === true);
  if (found === undefined) throw new Error(`nobody of the people list is called ${name}`);
  return found.id;
}

/** Writes down that a whole piece was checked and is as it must be, but for what is said to be off; the records wait to be sent. */
export function checkPiece(tablet: PaperTablet, piece: YardPiece, person: string, off: Deviations = {}): void {
  const measures = listFormMeasures(piece.plan.setOut.form).map(({ what, nominal }) => ({
    what,
    measured_mm: nominal,
  }));
  tablet.write(person, { kind: 'form-checked', body: { measures } });
  const asked = new Map<number, Set<'x' | 'y'>>();
  for (const { asks } of piece.plan.stops)
    for (const { number, axis } of asks) asked.set(number, (asked.get(number) ?? new Set()).add(axis));
  for (const { number, stage, taped } of piece.plan.setOut.items) {
    const sight = { stage, type: true, face: true, firm: true, note: null };
    tablet.write(person, { kind: 'placed', body: sight }, number);
    const by = off[number];
    const axes = asked.get(number);
    if (by === undefined && axes === undefined) continue;
    const place = (axis: 'x' | 'y') =>
      by?.[axis] !== undefined || axes?.has(axis) === true
        ? Math.round(taped[axis === 'x' ? 0 : 1]) + (by?.[axis] ?? 0)
        : null;
    tablet.write(
      person,
      {
        kind: 'measured',
        body: { stage, x_mm: place('x'), y_mm: place('y'), level_mm: by?.level ?? null, basis: 'tape' },
      },
      number,
    );
  }
}

/** A piece of the demo that the checker has checked on another tablet; everything is on the server. */
export async function serveCheckedPiece(
  office: Office,
  mark: string,
  serial: string,
  off: Deviations = {},
): Promise<YardPiece & { readonly tablet: PaperTablet; readonly checker: string }> {
  const piece = await findYardPiece(office.server.address, mark, serial);
  const checker = await findPersonId(office, 'checker');
  const device = `checked${mark}${serial}`
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
    .padEnd(16, '0')
    .slice(0, 16);
  const tablet = new PaperTablet(piece, device);
  checkPiece(tablet, piece, checker, off);
  await tablet.send(office.server.address);
  return { ...piece, tablet, checker };
}
