import { describe, expect, it } from 'vitest';
import { reportAsCast } from '../../../src/assess/as-cast/report-as-cast.ts';
import { reportBoltUp } from '../../../src/assess/bolt-up/report-bolt-up.ts';
import { findCapacities } from '../../../src/assess/capacities.ts';
import { findNonConformance } from '../../../src/assess/non-conformance/non-conformance.ts';
import { reportPiece } from '../../../src/assess/yard/report-piece.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { frameOf } from '../../../src/job/face-frame.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { drawAsCast, drawNonConformance } from '../../../src/web/pieces/prints/draw-as-cast.ts';
import { drawCards, drawKit } from '../../../src/web/pieces/prints/draw-bolt-up.ts';
import type { SheetGround } from '../../../src/web/pieces/prints/sheet-ground.ts';
import { demoFile, PieceTablet, pieceOf } from '../../assess/yard/yard-sample.ts';
import { findOverhang, findOverlaps, textOf } from '../../drawing/picture-checks.ts';

const sample = pieceOf(demoFile(), 'P13', '1');
const { context, plan, head } = sample;
const { panel } = plan.setOut;
const { toFace } = frameOf(panel, { face: 'inside', edge: null });
const C41 = context.index.connectionsOf('P13').find(({ mark }) => mark === 'C41')!;

/** The inside face surveyed by its corners; one insert of C41 9 mm and 4 mm off. */
function survey(): PieceTablet {
  const tablet = new PieceTablet(1, sample);
  const inside = plan.setOut.items.filter(({ castIn }) => castIn.face === 'inside');
  tablet.write('checker', null, {
    kind: 'surveyed',
    body: {
      basis: 'instrument',
      file: null,
      tool: null,
      controls: panel.outline_mm.map((corner, k) => ({
        name: `K${k}`,
        kind: 'mark',
        design_mm: [corner[0], corner[1]],
        edgeEnd_mm: null,
        measured_mm: [...toFace(corner)] as [number, number],
        sigma_mm: 1,
        isUsed: true,
        note: null,
      })),
      points: inside.map(({ castIn }) => {
        const isOff = castIn.id === C41.inserts[0]!.insert;
        const at: Point = [castIn.x_mm + (isOff ? 9 : 0), castIn.y_mm - (isOff ? 4 : 0)];
        return {
          item: castIn.key,
          name: null,
          measured_mm: [...toFace(at)] as [number, number],
          second: null,
          sigma_mm: 1,
        };
      }),
      tapes: [],
      stances: inside.map(({ castIn }) => ({ item: castIn.key, depth_mm: castIn.recess_mm, tilt: null })),
      note: null,
    },
  });
  return tablet;
}

function openAll(tablet: PieceTablet) {
  const state = foldPiece(plan.piece, tablet.known.values());
  const asCast = reportAsCast(context, plan, state);
  const report = reportPiece(context, plan, state, { mark: 'P13', serial: '1' });
  const ground: SheetGround = {
    piece: { id: plan.piece, head, plan, report, context, state },
    facts: { project: '4711 Hall', revision: null, fingerprint: 'abcdef012345', caution: 'NOT FOR LIFTING' },
    nameOf: () => 'D. Engineer',
    writeMoment: (moment) => moment.slice(0, 10),
  };
  const found = asCast.connections.find(({ connection }) => connection.mark === 'C41')!;
  return { state, asCast, ground, found };
}

const tablet = survey();
const before = openAll(tablet);
const slotted = before.found.remedies.find(({ kind }) => kind === 'holes slotted')!;
tablet.write('engineer', null, {
  kind: 'remedy-decided',
  body: {
    connection: C41.key,
    connectionMark: 'C41',
    about: before.found.rests.map(({ id }) => id).slice(0, 1),
    remedy: 'holes slotted',
    change: slotted.change,
    words: slotted.words,
    role: 'design engineer',
    registration: 'No. 1, Nowhere',
    reason: 'zinc made good',
    computed: {
      state: slotted.verdict,
      ratio: slotted.ratio,
      clearance_mm: slotted.clearance!.margin,
      engine: '0.1.0',
    },
  },
});
const after = openAll(tablet);

function flow(pages: readonly { readonly marks: Parameters<typeof textOf>[0] }[]): string {
  return pages
    .map(({ marks }) => textOf(marks))
    .join('\n')
    .replaceAll('\n', ' ');
}

describe('the non-conformance sheet', () => {
  it('stops before a decision, and tells the remedies side by side with who decides', () => {
    const text = flow(drawNonConformance(before.ground, before.asCast, before.found).drawings);
    expect(text).toContain('NOT DECIDED.');
    expect(text).toContain('Nobody has decided yet.');
    expect(text).toContain('15: x +9, y −4');
    expect(text).toContain('of the design (assumed)');
    expect(text).toContain('design engineer');
  });
  it('tells the decision, with reason, name and registration, and what it rests on', () => {
    const { drawings } = drawNonConformance(after.ground, after.asCast, after.found);
    const text = flow(drawings);
    expect(drawings).toHaveLength(1);
    expect(text).toContain('Decided: holes slotted. As computed today it works');
    expect(text).toContain('▶ decided');
    expect(text).toContain('zinc made good');
    expect(text).toContain('No. 1, Nowhere');
    expect(text.replaceAll(' ', '')).toContain(after.found.decision!.id);
    expect(findOverhang(drawings[0]!.marks, drawings[0]!)).toBe(0);
    expect(findOverlaps(drawings[0]!.marks)).toEqual([]);
  });
  it('goes on to a second page where much is to be said, and is signed on the last', () => {
    const { decision } = after.found;
    const reason = 'the engineer was rung up and asked for photographs with the tape in the picture; '.repeat(6);
    const found = { ...after.found, decision: { ...decision!, body: { ...decision!.body, reason } } };
    const project = 'Extension of the hall for the water works at the quay, second phase, blocks four to nine';
    const ground = { ...after.ground, facts: { ...after.ground.facts, project } };
    const { drawings } = drawNonConformance(ground, after.asCast, found);
    const pages = drawings.map((page) => flow([page]));
    expect(pages).toHaveLength(2);
    for (const [k, text] of pages.entries()) {
      expect(text).toContain(`page ${k + 1} of 2`);
      expect(text).toContain('NOT FOR LIFTING');
      expect(text.replaceAll(' ', '')).toContain(project.replaceAll(' ', ''));
    }
    expect(pages.map((text) => text.includes('registration no.'))).toEqual([false, true]);
    expect(pages.join(' ').split('photographs with the tape in the picture')).toHaveLength(7);
    for (const page of drawings) {
      expect(findOverhang(page.marks, page)).toBe(0);
      expect(findOverlaps(page.marks)).toEqual([]);
    }
  });
  it('carries what the connection as cast carries, toward the weakest edge and away from it', () => {
    const about = findNonConformance(context, plan, after.asCast, after.found);
    expect(about.carries.kind).toBe('computed');
    if (about.carries.kind !== 'computed') return;
    const { tension, toward, away } = about.carries.value;
    expect(toward!.direction!.ux).toBeCloseTo(-away!.direction!.ux, 6);
    expect(toward!.direction!.uy).toBeCloseTo(-away!.direction!.uy, 6);
    expect(toward!.total!).toBeLessThan(away!.total!);
    const designed = findCapacities(resolveConnection(context.index, C41));
    expect(designed.kind === 'computed' && designed.value.group[0]!.total).not.toBe(tension.total);
    // Every other edge in sight carries at least as much.
    expect(about.worked).not.toBeNull();
    const all = findCapacities(about.worked!.resolved);
    const edges =
      all.kind === 'computed' ? all.value.group.filter(({ direction }) => (direction?.edge ?? null) !== null) : [];
    expect(edges.length).toBeGreaterThan(1);
    for (const { total } of edges) expect(total!).toBeGreaterThanOrEqual(toward!.total! - 1e-6);
    expect(about.tightest!.room).toBeGreaterThan(0);
  });
});

describe('sheets of a piece that is out of its form', () => {
  const boltUp = reportBoltUp(context, plan, after.state, after.asCast);
  it('the drawing as cast shows every insert, what nobody surveyed as not taken', () => {
    const { drawings } = drawAsCast(after.ground, after.asCast);
    const text = flow(drawings);
    expect(text).toContain('+9 −4');
    expect(text).toContain('not taken not taken');
    expect(text).toContain('Left over at known points');
    for (const page of drawings) {
      expect(findOverhang(page.marks, page)).toBe(0);
      expect(findOverlaps(page.marks)).toEqual([]);
    }
  });
  it('cards lie two on a sheet, on each side what they are of and that nothing is lifted by it', () => {
    const { drawings } = drawCards(after.ground, boltUp, boltUp.cards);
    const text = flow(drawings);
    expect(text.match(/NOT FOR LIFTING/g)!.length).toBeGreaterThanOrEqual(boltUp.cards.length);
    expect(text).toContain('The brace stays');
    expect(text).toContain('DO NOT BOLT UP: survey first');
    expect(text).toContain('insert 15: head – washer 50 × 3 (ISO 7093-1)');
    for (const page of drawings) {
      expect([page.width, page.height]).toEqual([297, 210]);
      expect(findOverhang(page.marks, page)).toBe(0);
      expect(findOverlaps(page.marks)).toEqual([]);
    }
  });
  it('a card of what is given up says nothing of how to bolt it', () => {
    const card = boltUp.cards.find(({ connection }) => connection.mark === 'C41')!;
    const text = flow(
      drawCards(after.ground, boltUp, [{ ...card, state: 'not usable', stops: ['given up'] }]).drawings,
    );
    expect(text).toContain('NOT USABLE: do not bolt, do not load');
    for (const words of ['Tighten', 'In this order', 'no packers', 'Snug']) expect(text).not.toContain(words);
    expect(flow(drawCards(after.ground, boltUp, [card]).drawings)).toContain('Tighten');
  });
  it('the kit has a label for each bag that may be packed, and says what waits', () => {
    const parts = drawKit(after.ground, boltUp);
    const labels = flow(parts[1]!.drawings);
    const ready = boltUp.cards.filter(({ state }) => state === 'ready').map(({ connection }) => connection.mark);
    for (const mark of ready) expect(labels).toContain(`P13 ${' '}${mark}`);
    expect(labels).not.toContain('P13  C45');
    expect(flow(parts[0]!.drawings)).toContain('NOT YET: where insert');
    for (const { drawings } of parts)
      for (const page of drawings) {
        expect(findOverhang(page.marks, page)).toBe(0);
        expect(findOverlaps(page.marks)).toEqual([]);
      }
  });
});
