import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSurvey } from '../../src/files/survey/read-survey.ts';
import type { SurveyChoices } from '../../src/files/survey/survey-file.ts';

const read = (text: string, choices: SurveyChoices = {}) =>
  readSurvey('points.csv', new TextEncoder().encode(text), choices);
/** What a file comes to, without how it was read. */
const pointsOf = (text: string, choices: SurveyChoices = {}) =>
  read(text, choices).rows.map(({ name, at_mm, code }) => [
    name,
    ...at_mm.map((value) => Math.round(value * 100) / 100),
    code,
  ]);

const THREE = [
  ['1', 1000, 2000, 300, null],
  ['2', 3500.5, 2000.25, 301, null],
  ['C 3', -250, 4000, 0, null],
];

describe('a file of points', () => {
  it.each([
    ['commas, points, metres', '1,1.000,2.000,0.300\n2,3.5005,2.00025,0.301\nC 3,-0.250,4.000,0.000\n'],
    ['semicolons, decimal commas', '1;1,000;2,000;0,300\r\n2;3,5005;2,00025;0,301\r\nC 3;-0,250;4,000;0\r\n'],
    ['tabs', '1\t1.000\t2.000\t0.300\n2\t3.5005\t2.00025\t0.301\nC 3\t-0.250\t4.000\t0'],
    [
      'spaces, a name in quotation marks',
      ' 1    1.000   2.000  0.300\n 2    3.5005  2.00025 0.301\n"C 3" -0.250  4.000  0.000',
    ],
    ['bars and old line ends', '1|1.000|2.000|0.300\r2|3.5005|2.00025|0.301\rC 3|-0.250|4.000|0.000'],
    ['a mark at the start', '\uFEFF1,1.000,2.000,0.300\n2,3.5005,2.00025,0.301\n"C 3",-0.250,4.000,0.000'],
    [
      'commas in quotation marks',
      '1,"1,000","2,000","0,300"\n2,"3,5005","2,00025","0,301"\nC 3,"-0,250","4,000","0,000"',
    ],
    ['spaces, decimal commas', '1 1,000 2,000 0,300\n2 3,5005 2,00025 0,301\n"C 3" -0,250 4,000 0,000'],
    ['millimetres', '1,1000,2000,300\n2,3500.5,2000.25,301\nC 3,-250,4000,0'],
    ['a minus sign of print', '1;1,000;2,000;0,300\n2;3,5005;2,00025;0,301\nC 3;\u22120,250;4,000;0'],
    [
      'comments and titles',
      'Site 7\n# made on Monday\n\n1,1.000,2.000,0.300\n// moved\n2,3.5005,2.00025,0.301\nC 3,-0.250,4.000,0.000',
    ],
    ['millimetres with spaces between groups', '1;1 000;2 000;300\n2;3 500,5;2\u00A0000,25;301\nC 3;-250;4\u202F000;0'],
    ['millimetres with points between groups', '1;1.000,0;2.000,0;300,0\n2;3.500,5;2.000,25;301\nC 3;-250;4.000,0;0'],
  ])('is read: %s', (_, text) => {
    expect(read(text).faults).toEqual([]);
    expect(pointsOf(text)).toEqual(THREE);
  });

  it.each([
    ['E, N, H', 'Point;E;N;H\n7;1,5;2,5;0,1\n8;9,25;4,5;0,2'],
    ['N before E', 'Name,Northing,Easting,RL\n7,2.5,1.5,0.1\n8,4.5,9.25,0.2'],
    ['in German', 'Punktnr.;Rechtswert;Hochwert;Höhe\n7;1,5;2,5;0,1\n8;9,25;4,5;0,2'],
    ['x and y, exchanged', 'no,y,x,z\n7,2.5,1.5,0.1\n8,4.5,9.25,0.2'],
    ['with units', 'id,E (m),N (m),Level (m)\n7,1.5,2.5,0.1\n8,9.25,4.5,0.2'],
    ['in millimetres', 'id,x_mm,y_mm,z_mm\n7,1500,2500,100\n8,9250,4500,200'],
    ['as a comment', '# pt, east, north, height\n7,1.5,2.5,0.1\n8,9.25,4.5,0.2'],
    ['heights first', 'cota;este;norte;punto\n0,1;1,5;2,5;7\n0,2;9,25;4,5;8'],
  ])('takes its columns from a heading: %s', (_, text) => {
    expect(pointsOf(text)).toEqual([
      ['7', 1500, 2500, 100, null],
      ['8', 9250, 4500, 200, null],
    ]);
    expect(read(text).reading!.columns.how).toBe('stated');
  });

  it('knows a code before or behind the numbers, and two numbers as a place', () => {
    expect(pointsOf('7,FIX,1.500,2.500,0.100\n8,FIX,9.250,4.500,0.200')).toEqual([
      ['7', 1500, 2500, 100, 'FIX'],
      ['8', 9250, 4500, 200, 'FIX'],
    ]);
    expect(pointsOf('7,1.500,2.500,0.100,corner\n8,9.250,4.500,0.200,')[0]).toEqual(['7', 1500, 2500, 100, 'corner']);
    expect(pointsOf('7;1,500;2,500\n8;9,250;4,500')).toEqual([
      ['7', 1500, 2500, null],
      ['8', 9250, 4500, null],
    ]);
    // No running numbers: all three are lengths.
    expect(pointsOf('1.5 2.5 0.1\n9.25 4.5 0.2')).toEqual([
      [null, 1500, 2500, 100, null],
      [null, 9250, 4500, 200, null],
    ]);
  });

  it('says how it was read, and how sure that is', () => {
    const plain = read('1;1,000;2,000;0,300\n2;3,500;2,000;0,301').reading!;
    expect(plain).toMatchObject({
      encoding: 'UTF-8',
      separator: { value: ';', how: 'clear' },
      decimal: { value: ',', how: 'clear' },
      unit: { value: 'm', how: 'clear' },
      columns: { value: { name: 0, x: 1, y: 2, z: 3, code: null }, how: 'assumed' },
      heading: null,
    });
    const headed = read('pt,E (mm),N (mm)\n1,1000,2000\n2,3500,2000').reading!;
    expect(headed).toMatchObject({ unit: { value: 'mm', how: 'stated' }, columns: { how: 'stated' }, heading: 1 });
    // 250 apart: a bracket in mm, or a site in m? Nobody can tell.
    expect(read('1,1000,2000\n2,1250,2000\n3,1000,2100').reading!.unit).toEqual({ value: 'mm', how: 'assumed' });
    // Site coordinates far from their origin: only how far the points lie apart counts.
    expect(read('1,334501.250,6250001.500\n2,334503.750,6250001.500').reading!.unit).toEqual({
      value: 'm',
      how: 'clear',
    });
  });

  it('does as a person chose', () => {
    const text = '1,1000,2000,300\n2,3500,2000,301';
    const columns = { name: 0, x: 2, y: 1, z: null, code: null };
    const { reading, rows } = read(text, { columns, unit: 'm', separator: ',', decimal: '.' });
    expect(rows[0]).toMatchObject({ at_mm: [2_000_000, 1_000_000], name: '1' });
    expect(reading).toMatchObject({
      separator: { how: 'given' },
      decimal: { how: 'given' },
      unit: { value: 'm', how: 'given' },
      columns: { value: columns, how: 'given' },
    });
    // Commas as decimal marks where semicolons were meant: the cells change, and so do the numbers.
    expect(pointsOf('1;1,250;2,5\n2;3,000;4,5', { decimal: ',', unit: 'mm' })[0]).toEqual(['1', 1.25, 2.5, null]);
  });

  it('names line and cell of what cannot be read, and reads the rest', () => {
    const { rows, faults } = read('1,1.000,2.000,0.300\n2,3.5o0,2.000,0.301\n3,4.000\n4,5.000,2.000,0.3\n');
    expect(rows.map(({ line }) => line)).toEqual([1, 4]);
    expect(faults.map(({ message }) => message)).toEqual([
      'points.csv line 2, cell 2 (x, east): "3.5o0" is not a number; expected one with a decimal point',
      'points.csv line 3, cell 3 (y, north): is missing: the line has 2 cells; expected a number',
    ]);
    expect(faults[0]).toMatchObject({ file: 'points.csv', row: 2, column: '2', value: '3.5o0' });
  });

  it('does not mix points with and without a height', () => {
    const few = read('1,1.000,2.000,0.300\n2,3.500,2.000,\n3,4.000,2.500,0.3');
    expect(few.rows.map(({ line }) => line)).toEqual([1, 3]);
    expect(few.faults[0]!.message).toMatch(/line 2: the point has no height/);
    const most = read('no,e,n,h\n1,1.000,2.000,0.300\n2,3.500,2.000,\n3,4.000,2.500,');
    expect(most.rows.map(({ at_mm }) => at_mm.length)).toEqual([2, 2, 2]);
    expect(most.faults[0]!.message).toMatch(/1 of 3 points have a height; heights are left away/);
  });

  it('tells a name that stands twice', () => {
    expect(read('7,1.000,2.000\n8,1.500,2.000\n7,1.001,2.000').repeated).toEqual([{ name: '7', lines: [1, 3] }]);
  });

  it('tells lines that hold no point', () => {
    expect(read('Job A\npt,E,N\n1,1.5,2.5\n#,end\n2,2.5,2.5').passedOver).toEqual([1, 2, 4]);
  });

  it('reads what a spreadsheet saves in encodings of its own', () => {
    const text = 'Höhe;E;N\n0,1;1,5;2,5\n0,2;3,5;2,5';
    const wide = new Uint8Array([0xff, 0xfe, ...[...text].flatMap((sign) => [sign.charCodeAt(0), 0])]);
    const narrow = new Uint8Array([...text].map((sign) => sign.charCodeAt(0)));
    expect(readSurvey('a.txt', wide)).toMatchObject({ reading: { encoding: 'UTF-16', columns: { value: { z: 0 } } } });
    expect(readSurvey('a.txt', narrow)).toMatchObject({
      reading: { encoding: 'Windows-1252', columns: { value: { z: 0 } } },
    });
  });

  it.each([
    ['nothing', '', /no line holds two numbers/],
    ['words', 'hello\nworld', /no line holds two numbers/],
    ['a workbook', 'PK\u0003\u0004\0\0\0', /not text/],
    ['too much', '1,2,3\n'.repeat(20_001), /20001 lines, expected at most 20000/],
  ])('refuses %s', (_, text, words) => {
    expect(read(text)).toMatchObject({ reading: null, rows: [], faults: [{ message: expect.stringMatching(words) }] });
  });

  it('refuses a place beyond any frame', () => {
    expect(read('1,1e11,2.5\n2,3.5,1e8').faults.map(({ message }) => message)).toEqual([
      expect.stringMatching(/line 1, cell 2 .*too far/),
    ]);
    expect(read('1,-1e11,2.5\n2,3.5,1e8').faults.length).toBe(1);
  });

  it('never throws, whatever the bytes are', () => {
    const sign = fc.constantFrom(...' ,;\t|.\n\r"\'#-+eE0123456789xyzNEH\u00A0\u2212\uFEFF\0');
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 300 }),
      fc.array(sign, { maxLength: 300 }).map((signs) => new TextEncoder().encode(signs.join(''))),
    );
    const choices = fc.record(
      {
        separator: fc.constantFrom<NonNullable<SurveyChoices['separator']>>(',', ';', '\t', '|', ' '),
        decimal: fc.constantFrom<'.' | ','>('.', ','),
        unit: fc.constantFrom<'m' | 'mm'>('m', 'mm'),
        columns: fc.record({
          name: fc.option(fc.nat(9)),
          x: fc.nat(9),
          y: fc.nat(9),
          z: fc.option(fc.nat(9)),
          code: fc.option(fc.nat(9)),
        }),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(bytes, choices, (given, chosen) => {
        const { rows, reading, faults } = readSurvey('a.csv', given, chosen);
        for (const { at_mm } of rows) expect(at_mm.every((value) => Math.abs(value) <= 1e10)).toBe(true);
        expect(reading !== null || faults.length > 0).toBe(true);
      }),
      { seed: 8, numRuns: 1500 },
    );
  });

  it('reads back what was written, in any of the ways', () => {
    const value = fc.integer({ min: -30_000, max: 30_000 });
    const ways = fc.constantFrom<readonly [string, string]>(
      [',', '.'],
      [';', ','],
      [';', '.'],
      ['\t', ','],
      ['\t', '.'],
      [' ', '.'],
      [' ', ','],
      ['|', ','],
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(value, value, value), { minLength: 3, maxLength: 12 }),
        ways,
        (points, [separator, mark]) => {
          const lines = points.map((at, i) =>
            [`P${i}`, ...at.map((mm) => (mm / 1000).toFixed(3).replace('.', mark))].join(separator),
          );
          const { rows, faults } = read(lines.join('\n'), { unit: 'm' });
          expect(faults).toEqual([]);
          expect(rows.map(({ at_mm }) => at_mm.map((mm) => Math.round(mm) + 0))).toEqual(points.map((at) => [...at]));
        },
      ),
      { seed: 9, numRuns: 200 },
    );
  });
});

it('takes the unit from most of the points: one slip far away says nothing about it', () => {
  const lines = [
    'a;312400,100;5811200,200',
    'b;312403,100;5811201,200',
    'c;312406,100;5811199,200',
    'd;312409,100;5811203,200',
    'slip;312,100;5811200,200',
  ];
  const { reading } = read(lines.join('\n'));
  expect(reading?.unit.value).toBe('m');
});
