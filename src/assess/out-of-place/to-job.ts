import type { Point } from '../../engine/geometry/point.ts';
import { defaultRules } from '../../job/default-rules.ts';
import { defaultYard } from '../../job/default-yard.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { JOB_FILE_VERSION } from '../../job/documents/job-file-version.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { ComputedAnswer } from './answer.ts';
import { FARTHEST_EDGE, type FilledCase } from './fill-case.ts';

/** What a job needs that no case has. */
export interface JobNames {
  readonly project: string;
  /** Told on every sheet: what was assumed. At most 400 signs each, no line breaks. */
  readonly remarks: readonly string[];
  /** A new permanent key at every call. */
  readonly makeKey: () => string;
}

const PANEL = 'P1';
const CONCRETE = 'today';

/** Bars that make the face count as dense where cracks are limited but nobody knows how (`localReinforcement`). */
const DENSE_BARS: NonNullable<Panel['reinforcement']>['bars'][number] = {
  face: 'inside',
  direction_deg: 0,
  diameter_mm: 12,
  spacing_mm: 140,
  cover_mm: 30,
  kind: 'mesh',
  through_mm: null,
  endCover_mm: null,
};

/** Where the insert and its neighbours are drawn: this one first; corner of the panel at the origin. */
function placeInserts({ nearest, second, neighbours, spacing: s }: FilledCase): readonly Point[] {
  const steps: Readonly<Record<FilledCase['neighbours'], readonly Point[]>> = {
    0: [],
    1: [[s, 0]],
    2: [
      [second - s >= nearest ? -s : 2 * s, 0],
      [s, 0],
    ],
    3: [
      [s, 0],
      [0, s],
      [s, s],
    ],
  };
  return [[0, 0] as Point, ...steps[neighbours]].map(([x, y]): Point => [second + x, nearest + y]);
}

/** The panel with the edges that were said; the others far enough not to matter, unless they were said too. */
function makePanel(filled: FilledCase, places: readonly Point[], key: string): Panel {
  const beyond = filled.known.otherEdges_mm === null ? FARTHEST_EDGE : filled.others;
  const width = Math.max(filled.second + beyond, filled.nearest + Math.max(...places.map(([x]) => x)));
  const height = Math.max(filled.nearest + beyond, filled.nearest + Math.max(...places.map(([, y]) => y)));
  const isPlain = !filled.limitsCracks && filled.isDense && filled.edgeBars === 'none';
  return {
    key,
    mark: PANEL,
    concrete: CONCRETE,
    drawnFace: 'inside',
    faceDown: 'outside',
    inForm: { turn_deg: 0, datum: 'bottom-left' },
    handedOf: null,
    outline_mm: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    openings_mm: [],
    thickness_mm: filled.thickness,
    layers: [],
    zones: [],
    edges: [],
    reinforcement: isPlain
      ? null
      : {
          bars: filled.isDense ? [DENSE_BARS] : [],
          edge: filled.edgeBars,
          stirrupSpacing_mm: null,
          limitsCrackWidth: filled.limitsCracks,
          yield_MPa: 500,
        },
  };
}

function makeCastIn([x, y]: Point, i: number, item: string, key: string): CastIn {
  return {
    key,
    id: String(i + 1),
    panel: PANEL,
    role: 'fixing',
    item,
    description: null,
    face: 'inside',
    edge: null,
    x_mm: x,
    y_mm: y,
    recess_mm: 0,
    holding: null,
    crossBar: null,
    size: null,
    tolerance_mm: null,
  };
}

function makeConnection({ given, filled }: ComputedAnswer, castIns: readonly CastIn[], key: string): Connection {
  return {
    key,
    mark: 'C1',
    panel: PANEL,
    face: 'inside',
    edge: null,
    origin_mm: [castIns[0]!.x_mm, castIns[0]!.y_mm],
    turn_deg: 0,
    detail: null,
    fixture: null,
    inserts: castIns.map(({ id }) => ({ insert: id, hole: null })),
    packers_mm: 0,
    isFilled: false,
    isHeldAgainstTurning: false,
    boltThread: null,
    boltClass: filled.insert.bolt.propertyClass,
    boltFinish: null,
    engagement_mm: filled.insert.engagement,
    cracked: true,
    age_days: null,
    hangers: [],
    hairpins: [],
    uses: [],
    actions:
      filled.load === null
        ? { kind: 'none' }
        : { kind: 'required', N_kN: given.tension_kN ?? 0, V_kN: given.shear_kN ?? 0 },
    positionBox: null,
  };
}

/** Whether foot or body reach beyond the nearest edge. */
function standsOut({ insert: { item, footWidth }, nearest }: FilledCase): boolean {
  return Math.max(item.bodyDiameter_mm, footWidth) / 2 > nearest;
}

/**
 * A job with the insert as it was answered for, to go on in: one panel, the insert with its neighbours (one way of those that were tried),
 * one connection, and a catalogue of the one assumed insert. `readJobDocument` takes it. Null where the insert stands out of the concrete:
 * no job holds such a one.
 */
export function makeJobOfAnswer(answer: ComputedAnswer, { project, remarks, makeKey }: JobNames): JobFile | null {
  const { filled, standard } = answer;
  if (standsOut(filled)) return null;
  const places = placeInserts(filled);
  const { item } = filled.insert;
  const castIns = places.map((place, i) => makeCastIn(place, i, item.id, makeKey()));
  const rules = { ...defaultRules, standard, name: `${standard}, values of the document` };
  const catalogue = { id: 'assumed', edition: '1' };
  const details = { id: 'none', edition: '1' };
  const holding = { id: 'none', edition: '1' };
  const pin = ({ id, edition }: { readonly id: string; readonly edition: string }) => ({ id, edition });
  return {
    format: 'onepour-job',
    version: JOB_FILE_VERSION,
    job: {
      project: { name: project, number: null, designEngineer: null, remarks: [...remarks] },
      pins: { catalogue, details, holding, rules: pin(rules), yard: pin(defaultYard) },
      revision: null,
      concretes: [
        {
          id: CONCRETE,
          name: 'Strength on the day of the answer, not of 28 days',
          strength28_MPa: filled.strength,
          ages: [],
          lightweight: false,
        },
      ],
      panels: [makePanel(filled, places, makeKey())],
      castIns,
      connections: [makeConnection(answer, castIns, makeKey())],
      pours: [],
    },
    library: {
      catalogue: {
        format: 'onepour-catalogue',
        version: 1,
        ...catalogue,
        name: 'One insert, assumed for an answer; no product',
        items: [item],
      },
      details: { format: 'onepour-details', version: 1, ...details, name: 'None', details: [] },
      holding: { format: 'onepour-holding-parts', version: 1, ...holding, name: 'None', parts: [], ways: [] },
      rules,
      yard: defaultYard,
    },
  };
}
