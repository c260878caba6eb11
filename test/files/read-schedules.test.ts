import { describe, expect, it } from 'vitest';
import { sampleBed } from '../job/sample-job.ts';
import { messagesOf, readSchedulesWith, readWith, sampleSchedules } from './schedules.ts';

/** What is typed wrong: file, piece, what is typed for it, and every message that must come of it. */
const cases: readonly (readonly [string, string, string, string, readonly string[]])[] = [
  [
    'letter in a number',
    'inserts.csv',
    '1100,500',
    '11o0,500',
    ['inserts.csv row 3, column x_mm: "11o0" is not a number; expected a number'],
  ],
  [
    'empty number',
    'inserts.csv',
    '1100,500',
    ',500',
    ['inserts.csv row 3, column x_mm: the cell is empty; expected a number in mm'],
  ],
  [
    'decimal comma among commas',
    'inserts.csv',
    '1100,500',
    '"1100,5",500',
    [
      'inserts.csv row 3, column x_mm: "1100,5" has a comma, but commas stand between the columns of this file; use a decimal point, or ; between columns, and nothing for thousands; expected a number',
    ],
  ],
  [
    'misspelt heading',
    'inserts.csv',
    'x_mm',
    'xmm',
    ['inserts.csv row 1, column xmm: the heading xmm is not known; did you mean x_mm?'],
  ],
  [
    'heading of another language',
    'inserts.csv',
    ',type,',
    ',Gattung,',
    [
      'inserts.csv row 1, column Gattung: the heading Gattung is not known; expected one of key, type, description, edge, recess_mm, holding, cross_bar_direction_deg, cross_bar_diameter_mm, cross_bar_length_mm, tolerance_mm, size_diameter_mm, size_width_mm, size_height_mm, size_depth_mm, hole, slot_mm, slot_angle_deg, takes_shear, hole_x_mm, hole_y_mm',
    ],
  ],
  [
    'heading twice',
    'inserts.csv',
    'y_mm',
    'x_mm',
    [
      'inserts.csv row 1, column x_mm: the heading x_mm is there twice',
      'inserts.csv row 1, column y_mm: the column y_mm is missing; expected a number in every row',
    ],
  ],
  [
    'missing column',
    'panels.csv',
    ',face_down',
    '',
    [
      'panels.csv row 1, column face_down: the column face_down is missing; expected a text in every row',
      'panels.csv row 2: 7 cells, but the heading has 6; expected one for each heading (a cell with , in it, a decimal comma too, stands in quotation marks)',
    ],
  ],
  [
    'cell too many',
    'connections.csv',
    '15,8.8',
    '15,8.8,x',
    [
      'connections.csv row 2: 10 cells, but the heading has 9; expected one for each heading (a cell with , in it, a decimal comma too, stands in quotation marks)',
    ],
  ],
  [
    'open quote',
    'inserts.csv',
    'P1,2,fixing',
    'P1,"2,fixing',
    ['inserts.csv row 3: a quotation mark is opened here or further down and never closed'],
  ],
  [
    'unknown connection of an insert',
    'inserts.csv',
    '1100,500,C1',
    '1100,500,C11',
    ['inserts.csv row 3, column connection: there is no connection C11 in connections.csv; did you mean C1?'],
  ],
  [
    'unknown connection of a load',
    'loads.csv',
    'C1,wind',
    'K9,wind',
    ['loads.csv row 2, column connection: there is no connection K9 in connections.csv; expected one of C1'],
  ],
  [
    'unknown type',
    'inserts.csv',
    '2,fixing,F16',
    '2,fixing,F61',
    ['inserts.csv row 3, column type: there is no catalogue item F61; did you mean F16?'],
  ],
  [
    'unknown face',
    'panels.csv',
    'outside',
    'out',
    ['panels.csv row 2, column drawn_face: "out" is not allowed; expected one of "outside", "inside"'],
  ],
  [
    'insert outside the panel',
    'inserts.csv',
    '1100,500',
    '1100,5000',
    [
      'inserts.csv row 3, column x_mm: position (1100, 5000) lies outside the outline of panel P1; expected a place in the concrete',
      'inserts.csv row 3, column x_mm: hole 2 at (100, 4500) lies outside the plate, which goes from (-150, -50) to (150, 50); expected within it',
    ],
  ],
  [
    'bolt too thick for its hole',
    'inserts.csv',
    '1100,500,C1,18',
    '1100,500,C1,15',
    ['inserts.csv row 3, column hole_mm: a bolt M16 does not pass hole 2 of 15 mm'],
  ],
  [
    'no hole size',
    'inserts.csv',
    '1100,500,C1,18',
    '1100,500,C1,',
    ['inserts.csv row 3, column hole_mm: the cell is empty; expected a number in mm'],
  ],
  [
    'thickness left out',
    'connections.csv',
    '100,15',
    '100,',
    ['connections.csv row 2, column plate_thickness_mm: the cell is empty; expected a number in mm'],
  ],
  [
    'half a plate',
    'connections.csv',
    '300,100',
    '300,',
    [
      'connections.csv row 2, column plate_height_mm: the size of the plate is not given; expected plate_width_mm and plate_height_mm, or plate_outline_mm',
    ],
  ],
  [
    'half an outline',
    'panels.csv',
    '4000,3000',
    '4000,',
    [
      'panels.csv row 2, column height_mm: the size of the panel is not given; expected length_mm and height_mm, or outline_mm',
    ],
  ],
  [
    'no strength',
    'panels.csv',
    'P1,40',
    'P1,',
    ['panels.csv row 2, column strength_MPa: neither strength_MPa nor concrete is given; expected one of the two'],
  ],
  [
    'wrong strength',
    'panels.csv',
    'P1,40',
    'P1,C40',
    ['panels.csv row 2, column strength_MPa: "C40" is not a number; expected a number'],
  ],
  [
    'yes or no',
    'catalogue.csv',
    ',yes,',
    ',true,',
    ['catalogue.csv row 2, column full_head: "true" is neither yes nor no; expected yes or no'],
  ],
  [
    'no foot',
    'catalogue.csv',
    '96,46,7',
    '96,,7',
    [
      'catalogue.csv row 2, column foot_diameter_mm: neither foot_diameter_mm nor foot_area_mm2 is given; expected one of the two',
    ],
  ],
  [
    'thread of another world',
    'catalogue.csv',
    'M16,103',
    'W16,103',
    [
      'catalogue.csv row 2, column thread: "W16" is not allowed; expected one of "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24"',
    ],
  ],
  [
    'formula as a name',
    'catalogue.csv',
    'Ferrule M16',
    '=1+1',
    [
      'catalogue.csv row 2, column name: "=1+1" is not allowed; expected a text without line breaks that does not start with = + - @ or a space and does not end with a space',
    ],
  ],
  [
    'unit in a cell',
    'panels.csv',
    'P1,40,180',
    'P1,40 MPa,180mm',
    [
      'panels.csv row 2, column strength_MPa: "40 MPa" is not a number alone; the unit stands in the heading, so write 40; expected a number',
      'panels.csv row 2, column thickness_mm: "180mm" is not a number alone; the unit stands in the heading, so write 180; expected a number',
    ],
  ],
  [
    'thousands set apart by a space',
    'inserts.csv',
    '1100,500',
    '1 100,500',
    ['inserts.csv row 3, column x_mm: "1 100" has a space in it; write 1100; expected a number'],
  ],
  [
    'heading with its unit in brackets',
    'inserts.csv',
    'x_mm',
    'X (mm)',
    ['inserts.csv row 1, column X (mm): the heading X (mm) is not known; did you mean x_mm?'],
  ],
  [
    'unknown panel of a connection',
    'connections.csv',
    'C1,P1',
    'C1,W7',
    ['connections.csv row 2, column panel: there is no panel W7; expected one of P1'],
  ],
  [
    'connection on an edge that the panel does not have',
    'connections.csv',
    'face,x_mm,y_mm,plate_width_mm,plate_height_mm,plate_thickness_mm,bolt_class\nC1,P1,outside,',
    'face,edge,x_mm,y_mm,plate_width_mm,plate_height_mm,plate_thickness_mm,bolt_class\nC1,P1,edge,7,',
    ['connections.csv row 2, column edge: a connection on an edge needs the number of the edge, 0 to 3'],
  ],
  [
    'connection without inserts',
    'connections.csv',
    'C1,P1,outside,1000,500,300,100,15,8.8',
    'C1,P1,outside,1000,500,300,100,15,8.8\nC2,P1,outside,3000,500,300,100,15,8.8',
    [
      'connections.csv row 3, column connection: no insert names connection C2; expected C2 in the column connection of at least one row of inserts.csv',
    ],
  ],
  [
    'connection twice: its inserts belong to the first',
    'connections.csv',
    'C1,P1,outside,1000,500,300,100,15,8.8',
    'C1,P1,outside,1000,500,300,100,15,8.8\nC1,P1,inside,3000,500,300,100,15,8.8',
    ['connections.csv row 3, column connection: connection C1 is used more than once; each needs its own'],
  ],
  [
    'insert twice: the first one counts',
    'inserts.csv',
    'P1,2,fixing',
    'P1,1,fixing',
    ['inserts.csv row 3, column insert: insert 1 of panel P1 is used more than once; each needs its own'],
  ],
  [
    'number too large',
    'loads.csv',
    'wind,10',
    'wind,1e999',
    ['loads.csv row 2, column N_kN: "1e999" is too large; expected a number'],
  ],
];

describe('faults of schedules', () => {
  it('finds none in the sample', () => {
    expect(messagesOf(readSchedulesWith())).toEqual([]);
  });
  it.each(cases)('%s', (_what, file, from, to, lines) => {
    expect(messagesOf(readWith(file, from, to))).toEqual(lines);
  });
  it('counts rows as a spreadsheet does, empty ones and cells of two lines included', () => {
    const content = sampleSchedules['inserts.csv']!.split('\n');
    const spread = [content[0], '', ',,,,,,,,', content[1], content[2]!.replace('1100', '11o0')].join('\r\n');
    expect(messagesOf(readSchedulesWith({ 'inserts.csv': spread }))).toEqual([
      'inserts.csv row 5, column x_mm: "11o0" is not a number; expected a number',
    ]);
    const twoLines = [
      content[0]!.replace('role', 'role,description'),
      content[1]!.replace('fixing', 'fixing,"two\nlines"'),
      content[2]!.replace('fixing', 'fixing,').replace('1100', '11o0'),
    ].join('\n');
    expect(messagesOf(readSchedulesWith({ 'inserts.csv': twoLines }))).toEqual([
      'inserts.csv row 2, column description: "two\\nlines" is not allowed; expected a text without line breaks that does not start with = + - @ or a space and does not end with a space',
      'inserts.csv row 3, column x_mm: "11o0" is not a number; expected a number',
    ]);
  });
  it('finds all faults of all files at once, file by file and row by row', () => {
    const reading = readSchedulesWith({
      'loads.csv': 'connection,combination,N_kN,Vx_kN,Vy_kN\nC1,wind,ten,0,0\nC2,wind,1,0,0',
      'inserts.csv': sampleSchedules['inserts.csv']!.replace('900', '9000').replace('1100', 'x'),
      'panels.csv': `${sampleSchedules['panels.csv']!}\nP1,40,180,4000,3000,outside,inside`,
    });
    expect(reading.ok ? [] : reading.faults.map((f) => [f.file, f.row, f.column, f.value])).toEqual([
      ['panels.csv', 3, 'mark', '"P1"'],
      ['inserts.csv', 2, 'x_mm', '"9000, 500"'],
      ['inserts.csv', 3, 'x_mm', 'x'],
      ['loads.csv', 2, 'N_kN', 'ten'],
      ['loads.csv', 3, 'connection', 'C2'],
    ]);
  });
  it('says which files are missing', () => {
    expect(messagesOf(readSchedulesWith({ 'inserts.csv': '', 'catalogue.csv': '' }))).toEqual([
      'inserts.csv: the file is missing; expected it beside the other schedules, saved as CSV',
      'catalogue.csv: the file is missing; expected it beside the other schedules, saved as CSV',
    ]);
  });
  it('tells a file under a wrong name, an empty one and one that is not text in UTF-8', () => {
    expect(messagesOf(readSchedulesWith({ 'loads.csv': '', 'load.csv': sampleSchedules['loads.csv']! }))).toEqual([
      'load.csv: no schedule has this name; did you mean loads.csv?',
    ]);
    const beside = readSchedulesWith({ 'drawing-list.csv': 'a,b' });
    expect(beside.ok && beside.assumptions).toContain('drawing-list.csv is no schedule: not read');
    expect(messagesOf(readSchedulesWith({ 'loads.csv': '\n' }))).toEqual([
      'loads.csv: the file is empty; expected a heading with at least connection, combination, N_kN, Vx_kN, Vy_kN',
    ]);
    expect(messagesOf(readSchedulesWith({ 'loads.csv': 'c\0o\0n\0' }))).toEqual([
      'loads.csv: the file is not text in UTF-8; expected a schedule saved as CSV in UTF-8 (not a workbook, not "Unicode text")',
    ]);
    expect(messagesOf(readWith('catalogue.csv', 'Ferrule M16', '\uFFFDse M16'))).toEqual([
      'catalogue.csv row 2, column name: "\uFFFDse M16" holds a sign that cannot be read; save the file as CSV in UTF-8; expected a text',
    ]);
  });
  it('says that marks and places are not looked at while headings are wrong, and only then', () => {
    const heading = readWith('inserts.csv', 'x_mm', 'xmm');
    const cell = readWith('inserts.csv', '1100,500', '11o0,500');
    expect(heading).toMatchObject({ ok: false, isCutShort: true });
    expect(cell.ok || cell.isCutShort).toBeUndefined();
  });
  it('names what is not asked where only one of two required resistances is given', () => {
    const connections = sampleSchedules['connections.csv']!.replace('bolt_class', 'bolt_class,required_N_kN').replace(
      ',8.8',
      ',8.8,9',
    );
    const reading = readSchedulesWith({ 'connections.csv': connections, 'loads.csv': '' });
    expect(reading.ok && reading.assumptions).toContain(
      'connection C1: only a tension is required of each insert; no shear is checked',
    );
  });
  it('shows faults of job.json where they stand in it', () => {
    const rest = {
      format: 'onepour-schedules',
      version: 1,
      panels: { P1: { edges: [{ edge: 7, batter_deg: 5 }] }, P9: {} },
      project: { name: 'x', nummer: '1' },
    };
    expect(messagesOf(readSchedulesWith({ 'job.json': JSON.stringify(rest) }))).toEqual([
      'job.json, panels.P9: P9 is in no schedule',
      'job.json, project.nummer: the key nummer is not known here; did you mean number?',
      'job.json, panels.P1.edges[0].edge: panel P1 has no edge 7; expected 0 to 3',
    ]);
    expect(
      messagesOf(readSchedulesWith({ 'job.json': '{ "format": "onepour-schedules", "version": 1, "panel": {} }' })),
    ).toEqual(['job.json, panel: the key panel is not known here; did you mean panels?']);
    expect(messagesOf(readSchedulesWith({ 'job.json': '{\n "format": x }' }))[0]).toMatch(
      /^job\.json: this is not JSON/,
    );
  });
  it('refuses loads and required resistances together, and a hole where there is no plate', () => {
    const connections = sampleSchedules['connections.csv']!.replace('bolt_class', 'bolt_class,required_N_kN').replace(
      ',8.8',
      ',8.8,9',
    );
    expect(messagesOf(readSchedulesWith({ 'connections.csv': connections }))).toEqual([
      'connections.csv row 2, column required_N_kN: loads are given in loads.csv as well; expected either loads or required resistances',
    ]);
    const noPlate = 'connection,panel,face,x_mm,y_mm\nC1,P1,outside,1000,500';
    expect(messagesOf(readSchedulesWith({ 'connections.csv': noPlate, 'loads.csv': '' }))).toEqual(
      [2, 3].map(
        (row) =>
          `inserts.csv row ${row}, column hole_mm: a hole, but the connection has no plate; expected an empty cell`,
      ),
    );
  });
});

describe('pours.csv', () => {
  const heading = 'pour,bed,date,strength_at_strip_MPa,panel,serial,along_mm';
  const rest = {
    format: 'onepour-schedules',
    version: 1,
    library: {
      yard: {
        ...{ format: 'onepour-yard', version: 1, id: 'y', edition: '1', name: 'Y', tapeClass: 'II' },
        spares: { share: 0, atLeast: 0 },
        beds: [sampleBed()],
      },
    },
    pours: { T1: { remarks: ['Cold night'] } },
  };
  const readPours = (rows: readonly string[], changes: object = {}) =>
    readSchedulesWith({
      'pours.csv': [heading, ...rows].join('\n'),
      'job.json': JSON.stringify({ ...rest, ...changes }),
    });

  it('makes one pour of the rows with one name, each row a piece', () => {
    const reading = readPours(['T1,B1,2026-12-14,15,P1,1,500', 'T2,B1,2026-12-15,,P1,3,', 'T1,B1,2026-12-14,15,P1,2,']);
    expect(messagesOf(reading)).toEqual([]);
    expect(reading.ok && reading.file.job.pours).toEqual([
      {
        ...{ id: 'T1', bed: 'B1', date: '2026-12-14', strengthAtStrip_MPa: 15, remarks: ['Cold night'] },
        pieces: [
          { panel: 'P1', serial: '1', revision: null, along_mm: 500 },
          { panel: 'P1', serial: '2', revision: null, along_mm: null },
        ],
      },
      {
        ...{ id: 'T2', bed: 'B1', date: '2026-12-15', strengthAtStrip_MPa: null, remarks: [] },
        pieces: [{ panel: 'P1', serial: '3', revision: null, along_mm: null }],
      },
    ]);
  });
  it('tells rows of one pour that do not agree, days that are none and names that nothing has', () => {
    expect(messagesOf(readPours(['T1,B1,2026-12-14,15,P1,1,', 'T1,B1,2026-12-15,,P1,2,']))).toEqual([
      'pours.csv row 3, column date: 2026-12-15 here, but 2026-12-14 in row 2 of the same pour; expected the same in all rows of a pour',
      'pours.csv row 3, column strength_at_strip_MPa: nothing here, but 15 in row 2 of the same pour; expected the same in all rows of a pour',
    ]);
    expect(messagesOf(readPours(['T1,B1,2026-02-30,,P1,1,']))).toEqual([
      'pours.csv row 2, column date: "2026-02-30" is not allowed; expected a day of the calendar as YYYY-MM-DD',
    ]);
    expect(messagesOf(readPours(['T1,B2,2026-12-14,,P1,1,', 'T1,B2,2026-12-14,,P7,2,']))).toEqual([
      'pours.csv row 2, column bed: there is no bed B2; expected one of B1',
      'pours.csv row 3, column panel: there is no panel P7; expected one of P1',
    ]);
    expect(messagesOf(readPours(['T1,B1,2026-12-14,,P1,1,'], { pours: { T9: { remarks: ['x'] } } }))).toEqual([
      'job.json, pours.T9: T9 is in no schedule',
    ]);
  });
});

describe('the room of things without a type', () => {
  const withSize = (columns: string, cells: string) => {
    const [heading, ...rows] = sampleSchedules['inserts.csv']!.split('\n');
    const blank = columns.replace(/[^,]/g, '');
    const all = [
      `${heading},description,${columns}`,
      ...rows.map((row) => `${row},,${blank}`),
      `P1,3,duct,,outside,2000,500,,,Tube,${cells}`,
    ];
    return readSchedulesWith({ 'inserts.csv': all.join('\n') });
  };
  it('is round from a diameter, a box from width and height, and not both', () => {
    const columns = 'size_diameter_mm,size_width_mm,size_height_mm,size_depth_mm';
    const round = withSize(columns, '60,,,180');
    expect(round.ok && round.file.job.castIns[2]!.size).toEqual({ kind: 'round', diameter_mm: 60, depth_mm: 180 });
    const box = withSize(columns, ',150,160,10');
    const size = { kind: 'box', width_mm: 150, height_mm: 160, depth_mm: 10 };
    expect(box.ok && box.file.job.castIns[2]!.size).toEqual(size);
    expect(messagesOf(withSize(columns, '60,150,,180'))).toEqual([
      'inserts.csv row 4, column size_width_mm: a diameter is given as well; expected a diameter, or width and height',
    ]);
    expect(messagesOf(withSize(columns, ',150,160,'))).toEqual([
      'inserts.csv row 4, column size_depth_mm: the cell is empty; expected a number in mm',
    ]);
  });
});
