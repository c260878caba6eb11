import type {
  AsCastConnection,
  AsCastInsert,
  AsCastReport,
  Remedy,
} from '../../../src/assess/as-cast/as-cast-report.ts';
import { assessConnection } from '../../../src/assess/assess-connection.ts';
import { reportBoltUp } from '../../../src/assess/bolt-up/report-bolt-up.ts';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import type { BodyOf, RecordOf } from '../../../src/records/record.ts';
import { PieceTablet, type SamplePiece } from '../yard/yard-sample.ts';

/** How an insert came out, against its design. */
export interface CameOut {
  readonly dx?: number;
  readonly dy?: number;
  /** Top below the face; left out: not taken. */
  readonly depth?: number;
}

/** What is said of a connection as cast, where a test wants it otherwise than fine. */
export interface Said {
  readonly state?: AsCastConnection['state'];
  readonly decision?: Partial<BodyOf<'remedy-decided'>['change']> & { readonly remedy: Remedy['kind'] };
}

function place({ castIn }: SetOutItem, { dx = 0, dy = 0, depth }: CameOut, record: RecordOf<'surveyed'>) {
  return {
    x: castIn.x_mm + dx,
    y: castIn.y_mm + dy,
    dx,
    dy,
    depth: depth ?? null,
    depthSigma: 0.5,
    depthOff: depth === undefined ? null : depth - castIn.recess_mm,
    tilt: null,
    sigma: [1, 1] as const,
    basis: 'tape' as const,
    record,
  };
}

const NO_CHANGE: BodyOf<'remedy-decided'>['change'] = {
  move: null,
  holes: [],
  washer_mm: null,
  unused: [],
  packers_mm: null,
};

/**
 * A piece as it came out, put together by hand: all inserts surveyed at their places, but for those that a test names by their ids; every connection fine, but for those that it
 * names by their marks.
 */
export class AsCastSample {
  readonly sample: SamplePiece;
  readonly tablet: PieceTablet;
  readonly report: AsCastReport;

  constructor(sample: SamplePiece, out: Record<string, CameOut | null> = {}, said: Record<string, Said> = {}) {
    this.sample = sample;
    this.tablet = new PieceTablet(1, sample);
    const { context, plan } = sample;
    const survey = this.tablet.write('checker', null, {
      kind: 'surveyed',
      body: { basis: 'tape', file: null, tool: null, controls: [], points: [], tapes: [], stances: [], note: null },
    }) as RecordOf<'surveyed'>;
    const inserts = plan.setOut.items.map((item): AsCastInsert => {
      const own = out[item.castIn.id] === undefined ? { depth: item.castIn.recess_mm } : out[item.castIn.id]!;
      if (out[item.castIn.id] === null) return { item, place: null, state: 'not surveyed', why: [] };
      const isOff = Math.hypot(own.dx ?? 0, own.dy ?? 0) > item.tolerance;
      return { item, place: place(item, own, survey), state: isOff ? 'off' : 'within', why: [] };
    });
    const connections = context.index.connectionsOf(plan.setOut.panel.mark).map((connection): AsCastConnection => {
      const { state = 'fine', decision } = said[connection.mark] ?? {};
      const members = connection.inserts.map(({ insert }) => inserts.find(({ item }) => item.castIn.id === insert)!);
      const before = assessConnection(resolveConnection(context.index, connection));
      return {
        connection,
        members,
        before: { state: before.state, ratio: before.ratio },
        state: decision === undefined ? state : decision.remedy === 'not usable' ? 'not usable' : 'decided',
        remedies: [],
        decision: decision === undefined ? null : this.#decide(connection, decision, survey.id),
        decided: null,
        rests: [survey],
        withoutRight: [],
        fallen: [],
      };
    });
    this.report = {
      piece: plan.piece,
      surveys: [{ record: survey, controls: [], rms: null, notes: [] }],
      inserts,
      connections,
      strength: { cylinder_MPa: 40, from: 'design', words: 'as designed' },
    };
  }

  #decide(
    { key, mark }: { readonly key: string; readonly mark: string },
    { remedy, ...change }: NonNullable<Said['decision']>,
    about: string,
  ): RecordOf<'remedy-decided'> {
    return this.tablet.write('engineer', null, {
      kind: 'remedy-decided',
      body: {
        connection: key,
        connectionMark: mark,
        about: [about],
        remedy,
        change: { ...NO_CHANGE, ...change },
        words: 'As drawn on the sheet.',
        role: 'design engineer',
        registration: 'No. 1, Nowhere',
        reason: 'computed as cast',
        computed: { state: 'works', ratio: 0.8, clearance_mm: 0.5, engine: '1' },
      },
    }) as RecordOf<'remedy-decided'>;
  }

  /** With everything that the tablet has written up to now. */
  boltUp() {
    const { context, plan } = this.sample;
    return reportBoltUp(context, plan, foldPiece(plan.piece, this.tablet.known.values()), this.report);
  }

  card(mark: string) {
    const card = this.boltUp().cards.find(({ connection }) => connection.mark === mark);
    if (card === undefined) throw new Error(`no card ${mark}`);
    return card;
  }

  tighten(mark: string, changes: Partial<BodyOf<'tightened'>> = {}) {
    const { connection, bolts } = this.card(mark);
    return this.tablet.write('setter', null, {
      kind: 'tightened',
      body: {
        connection: connection.key,
        connectionMark: mark,
        how: 'snug',
        torque_Nm: null,
        tool: null,
        bolts: bolts.map(({ insert, lengths }) => ({
          item: insert.item.castIn.key,
          length_mm: lengths[0]!.choice!.length,
          turns: null,
          packers_mm: connection.packers_mm,
        })),
        lubricated: true,
        note: null,
        ...changes,
      },
    });
  }
}
