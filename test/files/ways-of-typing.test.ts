import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/files/read-job.ts';
import { messagesOf, readSchedulesWith, sampleSchedules } from './schedules.ts';

describe('ways of typing a schedule', () => {
  const expected = readSchedulesWith();
  const same = (changes: Record<string, string>) => expect(readSchedulesWith(changes)).toEqual(expected);

  it('takes a byte order mark, Windows line ends, quotation marks and file names in capitals', () => {
    same(
      Object.fromEntries(
        Object.entries(sampleSchedules).map(([name, content]) => [
          name,
          `\uFEFF${content.replaceAll('\n', '\r\n')}\r\n`,
        ]),
      ),
    );
    same({ 'panels.csv': sampleSchedules['panels.csv']!.replace('P1,', '"P1",') });
    expect(
      readJob(new Map(Object.entries(sampleSchedules).map(([name, content]) => [name.toUpperCase(), content]))),
    ).toEqual(expected);
  });
  it('takes ; or tabs between columns, found in the heading alone', () => {
    same({ 'panels.csv': sampleSchedules['panels.csv']!.replaceAll(',', ';') });
    same({ 'loads.csv': sampleSchedules['loads.csv']!.replaceAll(',', '\t') });
  });
  it('takes ; before a comma that stands in a heading, and says which heading is meant', () => {
    const content = 'connection;combination;N, kN;Vx_kN;Vy_kN\nC1;wind;10,5;2;-5';
    expect(messagesOf(readSchedulesWith({ 'loads.csv': content }))).toEqual([
      'loads.csv row 1, column N, kN: the heading N, kN is not known; did you mean N_kN?',
    ]);
  });
  it('takes decimal commas with ;, but not both marks in one file', () => {
    const typed = (N: string, Vx: string) =>
      readSchedulesWith({ 'loads.csv': `connection;combination;N_kN;Vx_kN;Vy_kN\nC1;wind;${N};${Vx};-5` });
    const reading = typed('10,5', '2,25');
    expect(reading.ok && reading.file.job.connections[0]!.actions).toMatchObject({
      combinations: [{ N_kN: 10.5, Vx_kN: 2.25, Vy_kN: -5 }],
    });
    expect(messagesOf(typed('10,5', '1.250'))).toEqual([
      'loads.csv row 2, column Vx_kN: "1.250" has a decimal point, but cells before it use the other mark; use one in the whole file, none for thousands; expected a number',
    ]);
    expect(messagesOf(typed('1.250,5', '2'))).toEqual([
      'loads.csv row 2, column N_kN: "1.250,5" is not a number; expected a number',
    ]);
  });
  it('takes outlines, openings and layers in one cell', () => {
    const reading = readSchedulesWith({
      'panels.csv':
        'mark;concrete;strength_MPa;thickness_mm;outline_mm;openings_mm;layers;drawn_face;face_down\n' +
        'P1;;40;300;"0 0; 4000 0; 4000,5 3000; 0 3000";"1500 1000; 1600 1000; 1600 1100 | 2000 1000; 2100 1000; 2100 1100";"structural 150; insulation 80; outer skin 70";outside;inside',
    });
    expect(messagesOf(reading)).toEqual([]);
    expect(reading.ok && reading.file.job.panels[0]).toMatchObject({
      outline_mm: [
        [0, 0],
        [4000, 0],
        [4000.5, 3000],
        [0, 3000],
      ],
      openings_mm: [
        [
          [1500, 1000],
          [1600, 1000],
          [1600, 1100],
        ],
        [
          [2000, 1000],
          [2100, 1000],
          [2100, 1100],
        ],
      ],
      layers: [
        { kind: 'structural', thickness_mm: 150 },
        { kind: 'insulation', thickness_mm: 80 },
        { kind: 'outer skin', thickness_mm: 70 },
      ],
    });
  });
  it.each([
    ['0 0; 4000 0; 4000', 'corner 3, "4000", is not two numbers'],
    ['0 0; 4000 zero; 0 1', 'corner 2: "zero" is not a number'],
  ])('names the corner that is wrong: %s', (outline, why) => {
    const content = `mark,strength_MPa,thickness_mm,outline_mm,drawn_face,face_down\nP1,40,180,${outline},outside,inside`;
    expect(messagesOf(readSchedulesWith({ 'panels.csv': content }))).toEqual([
      `panels.csv row 2, column outline_mm: ${why}; expected corners as "x y; x y; x y"`,
    ]);
  });
  it('lists what it took where nothing is said', () => {
    expect(expected.ok && expected.assumptions).toEqual([
      'no job.json: no standard details, zones or reinforcement are known',
      'permanent keys are made from marks where the schedules give none: a renamed item counts as a new one',
      'no rules given: EN 1992-4, recommended values, γ_c 1.5, cracked concrete, bolts of class 8.8',
      'no yard given: no beds, tapes of class II',
    ]);
  });
  it('lays a panel as drawn, taped from the bottom left corner, where nothing is said', () => {
    expect(expected.ok && expected.file.job.panels[0]!.inForm).toEqual({ turn_deg: 0, datum: 'bottom-left' });
  });
  it('reads a folder without loads as not checked', () => {
    const reading = readSchedulesWith({ 'loads.csv': '' });
    expect(reading.ok && reading.file.job.connections[0]!.actions).toEqual({ kind: 'none' });
  });
  it('says what it looks for when there is no job', () => {
    expect(messagesOf(readJob(new Map([['notes.txt', 'x']])))[0]).toMatch(/^no job is here; expected a job file/);
    expect(
      messagesOf(
        readJob(
          new Map([
            ['a.json', '{}'],
            ['b.json', '{}'],
          ]),
        ),
      )[0],
    ).toMatch(/several JSON files are here: a.json, b.json/);
    expect(messagesOf(readJob(new Map([['a.json', '{}']])))).toEqual([
      'a.json, format: nothing is not a job file; expected "onepour-job"',
    ]);
  });
});
