import type { CellKind } from './cells.ts';

/**
 * One column of a schedule. `to` is the place in the entry that it fills; without it the column is read by
 * hand. `ifBlank` is what an empty cell means; a column without it must be filled in.
 */
export interface Column {
  readonly name: string;
  readonly kind: CellKind;
  readonly to?: readonly (string | number)[];
  readonly ifBlank?: unknown;
  /** A column that may be empty and is then left to other columns. */
  readonly isOptional?: true;
}

/** The columns of one schedule and the place of its rows in the job file. */
export interface Schedule {
  readonly file: string;
  readonly columns: readonly Column[];
}

/** A place in an entry from its steps joined by dots; numbers are places in a list. */
function placeOf(to: string): readonly (string | number)[] {
  return to.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

const text = (name: string, to: string): Column => ({ name, kind: 'text', to: placeOf(to) });
const number = (name: string, to: string): Column => ({ name, kind: 'number', to: placeOf(to) });
const textOr = (name: string, to: string, ifBlank: unknown): Column => ({
  name,
  kind: 'text',
  to: placeOf(to),
  ifBlank,
});
const numberOr = (name: string, to: string, ifBlank: unknown): Column => ({
  name,
  kind: 'number',
  to: placeOf(to),
  ifBlank,
});
const yesOr = (name: string, to: string, ifBlank: unknown): Column => ({
  name,
  kind: 'yes or no',
  to: placeOf(to),
  ifBlank,
});
const optional = (name: string, kind: CellKind, to?: string): Column =>
  to === undefined ? { name, kind, isOptional: true } : { name, kind, to: placeOf(to), isOptional: true };

export const panelSchedule: Schedule = {
  file: 'panels.csv',
  columns: [
    text('mark', 'mark'),
    optional('key', 'text', 'key'),
    optional('concrete', 'text', 'concrete'),
    optional('strength_MPa', 'number'),
    number('thickness_mm', 'thickness_mm'),
    { name: 'layers', kind: 'layers', to: placeOf('layers'), ifBlank: [] },
    optional('length_mm', 'number'),
    optional('height_mm', 'number'),
    optional('outline_mm', 'corners', 'outline_mm'),
    { name: 'openings_mm', kind: 'outlines', to: placeOf('openings_mm'), ifBlank: [] },
    text('drawn_face', 'drawnFace'),
    text('face_down', 'faceDown'),
    numberOr('form_turn_deg', 'inForm.turn_deg', 0),
    textOr('datum', 'inForm.datum', 'bottom-left'),
    textOr('handed_of', 'handedOf', null),
  ],
};

export const insertSchedule: Schedule = {
  file: 'inserts.csv',
  columns: [
    text('panel', 'panel'),
    text('insert', 'id'),
    optional('key', 'text', 'key'),
    text('role', 'role'),
    textOr('type', 'item', null),
    textOr('description', 'description', null),
    text('face', 'face'),
    numberOr('edge', 'edge', null),
    number('x_mm', 'x_mm'),
    number('y_mm', 'y_mm'),
    numberOr('recess_mm', 'recess_mm', 0),
    textOr('holding', 'holding', null),
    optional('cross_bar_direction_deg', 'number', 'crossBar.direction_deg'),
    optional('cross_bar_diameter_mm', 'number', 'crossBar.diameter_mm'),
    optional('cross_bar_length_mm', 'number', 'crossBar.length_mm'),
    numberOr('tolerance_mm', 'tolerance_mm', null),
    optional('size_diameter_mm', 'number', 'size.diameter_mm'),
    optional('size_width_mm', 'number', 'size.width_mm'),
    optional('size_height_mm', 'number', 'size.height_mm'),
    optional('size_depth_mm', 'number', 'size.depth_mm'),
    optional('connection', 'text'),
    optional('hole', 'text'),
    optional('hole_mm', 'number'),
    optional('slot_mm', 'number'),
    optional('slot_angle_deg', 'number'),
    optional('takes_shear', 'yes or no'),
    optional('hole_x_mm', 'number'),
    optional('hole_y_mm', 'number'),
  ],
};

export const connectionSchedule: Schedule = {
  file: 'connections.csv',
  columns: [
    text('connection', 'mark'),
    optional('key', 'text', 'key'),
    text('panel', 'panel'),
    text('face', 'face'),
    numberOr('edge', 'edge', null),
    number('x_mm', 'origin_mm.0'),
    number('y_mm', 'origin_mm.1'),
    numberOr('turn_deg', 'turn_deg', 0),
    textOr('detail', 'detail', null),
    optional('plate_width_mm', 'number'),
    optional('plate_height_mm', 'number'),
    optional('plate_outline_mm', 'corners'),
    optional('plate_thickness_mm', 'number'),
    optional('plate_yield_MPa', 'number'),
    optional('attachment_mm', 'corners'),
    numberOr('packers_mm', 'packers_mm', 0),
    yesOr('filled', 'isFilled', false),
    yesOr('held_against_turning', 'isHeldAgainstTurning', false),
    textOr('bolt_thread', 'boltThread', null),
    textOr('bolt_class', 'boltClass', null),
    textOr('bolt_finish', 'boltFinish', null),
    numberOr('engagement_mm', 'engagement_mm', null),
    yesOr('cracked', 'cracked', null),
    numberOr('age_days', 'age_days', null),
    { name: 'uses', kind: 'words', to: placeOf('uses'), ifBlank: [] },
    optional('required_N_kN', 'number'),
    optional('required_V_kN', 'number'),
  ],
};

export const loadSchedule: Schedule = {
  file: 'loads.csv',
  columns: [
    { name: 'connection', kind: 'text' },
    text('combination', 'name'),
    number('N_kN', 'N_kN'),
    number('Vx_kN', 'Vx_kN'),
    number('Vy_kN', 'Vy_kN'),
    numberOr('Mx_kNm', 'Mx_kNm', 0),
    numberOr('My_kNm', 'My_kNm', 0),
    numberOr('T_kNm', 'T_kNm', 0),
    numberOr('at_x_mm', 'at_mm.0', 0),
    numberOr('at_y_mm', 'at_mm.1', 0),
  ],
};

export const catalogueSchedule: Schedule = {
  file: 'catalogue.csv',
  columns: [
    text('type', 'id'),
    text('name', 'name'),
    text('thread', 'thread'),
    number('length_mm', 'length_mm'),
    number('embedment_mm', 'embedment_mm'),
    optional('foot_diameter_mm', 'number', 'foot.diameter_mm'),
    optional('foot_area_mm2', 'number', 'foot.area_mm2'),
    numberOr('foot_thickness_mm', 'foot.thickness_mm', null),
    { name: 'full_head', kind: 'yes or no', to: placeOf('foot.isFullHead') },
    number('body_diameter_mm', 'bodyDiameter_mm'),
    optional('cross_hole_mm', 'number', 'crossHole.diameter_mm'),
    optional('cross_hole_from_foot_mm', 'number', 'crossHole.fromFoot_mm'),
    optional('cross_hole_bore_mm', 'number', 'crossHole.boreThere_mm'),
    number('thread_depth_mm', 'threadDepth_mm'),
    numberOr('thread_start_mm', 'threadStartsBelowTop_mm', 0),
    number('ultimate_MPa', 'steel.ultimate_MPa'),
    number('yield_MPa', 'steel.yield_MPa'),
    numberOr('elongation_percent', 'steel.elongation_percent', null),
    numberOr('area_reduction_percent', 'steel.areaReduction_percent', null),
    text('finish', 'finish'),
    numberOr('coating_um', 'coating_um', 0),
    text('thread_class', 'threadClass'),
    { name: 'bolt_finishes', kind: 'words', to: placeOf('boltFinishes') },
    numberOr('max_torque_Nm', 'maxTorque_Nm', null),
    optional('qualification_document', 'text', 'qualification.document'),
    optional('qualification_standard', 'text', 'qualification.standard'),
    optional('splitting_edge_mm', 'number', 'splitting.criticalEdge_mm'),
    optional('splitting_thickness_mm', 'number', 'splitting.minimumThickness_mm'),
    numberOr('least_edge_mm', 'leastEdge_mm', null),
    numberOr('least_spacing_mm', 'leastSpacing_mm', null),
    numberOr('least_thickness_mm', 'leastThickness_mm', null),
    numberOr('pry_out_factor', 'pryOutFactor', null),
    optional('cross_bar_diameter_mm', 'number', 'crossBar.diameter_mm'),
    optional('cross_bar_length_mm', 'number', 'crossBar.length_mm'),
    optional('price', 'number', 'price.amount'),
    optional('currency', 'text', 'price.currency'),
    numberOr('lead_time_days', 'leadTime_days', null),
  ],
};

/** What all rows of one pour say alike. */
export const pourColumns: readonly Column[] = [
  text('pour', 'id'),
  text('bed', 'bed'),
  text('date', 'date'),
  numberOr('strength_at_strip_MPa', 'strengthAtStrip_MPa', null),
];

/** What each row says of its piece. */
export const pieceColumns: readonly Column[] = [
  text('panel', 'panel'),
  text('serial', 'serial'),
  textOr('revision', 'revision', null),
  numberOr('along_mm', 'along_mm', null),
];

/** One row a piece. */
export const pourSchedule: Schedule = { file: 'pours.csv', columns: [...pourColumns, ...pieceColumns] };

/** All schedules of a folder. */
export const schedules: readonly Schedule[] = [
  panelSchedule,
  insertSchedule,
  connectionSchedule,
  loadSchedule,
  catalogueSchedule,
  pourSchedule,
];
