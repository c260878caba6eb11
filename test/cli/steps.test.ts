import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { all, create, type EvalFunction } from 'mathjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { onepour, ROOT } from './run-command.ts';

const math = create(all!);

const DEMO = 'demo/job.json';

const pages = new Map<string, string>();

/** The page of a connection; the command runs once for each. */
function printSteps(mark: string, job = DEMO): string {
  const known = pages.get(`${job} ${mark}`);
  if (known !== undefined) return known;
  const { stdout, stderr } = onepour(['check', job, '--connection', mark, '--steps']);
  expect(stderr).toBe('');
  pages.set(`${job} ${mark}`, stdout);
  return stdout;
}

/** Lines that were broken to fit the page, in one piece again: those that stand four signs further in than what they belong to. */
function joinLines(page: string): string[] {
  const joined: string[] = [];
  let start = 0;
  for (const line of page.split('\n')) {
    const indent = line.length - line.trimStart().length;
    const isStep = /^[^ ]+ = |^= /.test(line.trim());
    if (!isStep && line.trim() !== '' && joined.length > 0 && indent === start + 4)
      joined[joined.length - 1] += ` ${line.trim()}`;
    else {
      joined.push(line);
      start = indent;
    }
  }
  return joined;
}

/** A pocket calculator: plain arithmetic, "a if b else c" as people read it. */
function calculate(numbers: string): number {
  const plain = numbers.replace(
    /(max\([^()]*\)|[^,()]+) if (\(.*?\)|[^,()]+) else ((?:max\([^()]*\)|[^,()])+)/,
    '($2) ? ($1) : ($3)',
  );
  const compiled: EvalFunction = math.compile(plain);
  return Number(compiled.evaluate());
}

/** Every printed line of numbers with the printed result under it. */
function findSteps(page: string): { readonly numbers: string; readonly result: number }[] {
  const lines = joinLines(page).map((line) => line.trim());
  return lines.flatMap((line, i) => {
    const next = lines[i + 1] ?? '';
    const isNumbers = line.startsWith('= ') && next.startsWith('= ');
    return isNumbers ? [{ numbers: line.slice(2), result: Number.parseFloat(next.slice(2)) }] : [];
  });
}

// Cone failure, edge failure, interaction with plate bending, lever arm, edge face, panel with sections, no action.
const MARKS = ['C02', 'C09', 'C31', 'C36', 'C37', 'C22', 'C33', 'C08', 'C20', 'C40'];

/** The printed numbers of each step give its printed result; gives how many steps there are. */
function followSteps(page: string): number {
  const steps = findSteps(page);
  for (const { numbers, result } of steps) {
    // Seven printed digits go in and out; powers and differences may cost two of them.
    expect(Math.abs(calculate(numbers) - result), numbers).toBeLessThanOrEqual(2e-5 * Math.abs(result));
  }
  return steps.length;
}

function expectOnPage(page: string): void {
  for (const line of page.split('\n')) {
    expect(line.length, line).toBeLessThanOrEqual(100);
    expect(line).toBe(line.trimEnd());
    expect(line).not.toMatch(/undefined|NaN|null|\[object/);
  }
}

describe('a connection step by step', () => {
  it.each(MARKS)('%s: the printed numbers of each step give its printed result', (mark) => {
    expect(followSteps(printSteps(mark))).toBeGreaterThan(15);
  });

  it.each(MARKS)('%s: fits a page of 100 signs, nothing cut off, no trailing spaces', (mark) => {
    expectOnPage(printSteps(mark));
  });

  it.each(['C02', 'C09', 'C31', 'C36', 'C33'])('%s: the forces of the plate balance its action', (mark) => {
    const page = printSteps(mark);
    const table = page.split('equilibrium, moments about')[1]!.split('\n').slice(3, 9);
    expect(table.map((line) => line.trim().split(' ')[0])).toEqual(['N', 'Vx', 'Vy', 'Mx', 'My', 'T']);
    for (const line of table) expect(line).toMatch(/equal$/);
  });

  it('shows every input that the cone of C02 starts from, and its answer', () => {
    const page = printSteps('C02');
    // From the demo job: P01 in C40, 180 mm thick, opening from x = 2000 to 3800; C02 on the inside face, so x = 6000 − x drawn.
    for (const given of [
      'f_ck 40 MPa, cracked',
      'h_ef 96 mm; body at the face d 24 mm',
      'd_h 46 mm, 7 mm thick',
      'M16 8.8: f_uk 800 MPa, f_yk 640 MPa',
      'full thread engaged 16 mm',
      'thickness that counts h 180 mm',
      'x = 6000 - x drawn',
      '(3900,1900)  (2100,1900)       0  yes    s6 100;',
      's6    opening 1  (2200,900)   (2200,2300)    1400',
      'N 90000, Vx 0, Vy 0, Mx 0, My 0, T 0',
      'n = E_s / E_cm = 200000 / (22000 * ((40 + 8) / 10)^0.3) = 5.678517',
    ])
      expect(page).toContain(given);
    // By hand: 90 kN over 83.75 kN, see the cone of four inserts at 200 mm, 100 mm from an edge: (200 + 288)(200 + 144 + 100) mm².
    expect(page).toContain('4 squares of 288 mm joined, cut by the panel: 488 x 444 mm2');
    expect(page).toMatch(/concrete cone, inserts 5 6 7 8 .*governs\n/);
    expect(page).toContain('ratio = 90000 / 83752.67 = 1.074593: 107 %, FAILS');
    expect(page).toMatch(/\nAnswer: largest ratio .* 1\.074593, concrete cone in wind out: FAILS\n\nCautions\n/);
  });

  it('follows the shear of C09 from the plate to the skew edge', () => {
    const page = printSteps('C09');
    // By hand: (40, 10) kN turned by 15°: Vx = 40 cos 15° − 10 sin 15° = 36.04884, Vy = 40 sin 15° + 10 cos 15° = 20.01202; a quarter
    // each. Normal of the edge (5200, 3600) to (0, 2200): (−1400, 5200)/5385.165. Two inserts: V_toward = (−36.04884 · 1400 +
    // 20.01202 · 5200)/5385.165/2 = 4.976 · 2 = 9.952 kN.
    expect(page).toContain('Vx 36048.84, Vy 20012.02');
    expect(page).toContain('9012.211  5003.005');
    expect(page).toContain('V_toward = 9952.179 N');
    expect(page).toContain('(5200,3600)  (0,2200)');
  });

  it('names the ratios that tension with shear is made of', () => {
    expect(printSteps('C31')).toContain('ratios: concrete cone 0.7957775; concrete edge in shear 0.7491426');
  });

  it('says choices in words', () => {
    const page = printSteps('C09');
    expect(page).toContain('l_f = min(h_ef, 12 * d if d <= 24 else max(8 * d, 300))');
    expect(page).not.toContain(' ? ');
  });
});

describe('by the other standards', () => {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-steps-'));
  const jobOf = (standard: string) => join(folder, `${standard}.json`);

  beforeAll(() => {
    for (const standard of ['AS 5216', 'ACI 318-19', 'ACI 318M-19']) {
      const file = JSON.parse(readFileSync(join(ROOT, DEMO), 'utf8'));
      file.library.rules.standard = standard;
      for (const { qualification } of file.library.catalogue.items)
        if (qualification !== null) qualification.standard = 'EN 1992-4; AS 5216; ACI 318-19';
      writeFileSync(jobOf(standard), JSON.stringify(file));
    }
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  /** The equation of an action and a design value that ends each row: the printed ratio must be theirs. */
  function followRatios(page: string): number {
    const found = [...page.matchAll(/ratio = ([\d.]+) \/ ([\d.]+) = ([\d.]+):/g)];
    for (const [text, action, design, ratio] of found)
      expect(Math.abs(Number(action) / Number(design) - Number(ratio)), text).toBeLessThanOrEqual(2e-6 * Number(ratio));
    return found.length;
  }

  it.each([
    ['AS 5216', 'C02'],
    ['AS 5216', 'C09'],
    ['AS 5216', 'C36'],
    ['AS 5216', 'C08'],
    ['ACI 318-19', 'C02'],
    ['ACI 318-19', 'C31'],
    ['ACI 318-19', 'C22'],
    ['ACI 318-19', 'C40'],
    ['ACI 318M-19', 'C09'],
    ['ACI 318M-19', 'C36'],
    ['ACI 318M-19', 'C33'],
    ['ACI 318M-19', 'C08'],
    ['ACI 318M-19', 'C20'],
  ])('%s, %s: the printed numbers give the printed results, on a page of 100 signs', (standard, mark) => {
    const page = printSteps(mark, jobOf(standard));
    expect(followSteps(page)).toBeGreaterThan(15);
    // C08 has no action.
    if (mark !== 'C08') expect(followRatios(page)).toBeGreaterThan(3);
    expectOnPage(page);
    // No rule of EN 1992-4 under its own name, but for the plate's bending, which is common practice in all.
    const steps = page.slice(page.indexOf('Step by step'));
    expect(steps).not.toMatch(/\[EN 1992-4/);
    expect(steps).toContain(standard === 'AS 5216' ? '[AS 5216:2021 as EN 1992-4 ' : '[ACI 318-19 and 318M-19, 17.');
  });

  // 60.097 mm from the skew edge: V_b = 3.7 √40 · 60.09661^1.5 = 10 902 N; twice that along the edge, one and a half times the area.
  it('ACI: shows the two parts of a shear at a skew edge and how they come together', () => {
    const page = joinLines(printSteps('C09', jobOf('ACI 318M-19'))).join('\n');
    expect(page).toContain('= min(0.6 * (96 / 24)^0.2 * sqrt(24), 3.7) * 1 * sqrt(40) * 60.09661^1.5');
    expect(page).toContain('action: 9952.179 N, V_toward');
    expect(page).toContain('action: 20005.96 N, V_along');
    const [, toward, along, ratio] = /= sqrt\(([\d.]+)\^2 \+ ([\d.]+)\^2\)\s+= ([\d.]+)/.exec(page)!;
    expect(Math.hypot(Number(toward), Number(along))).toBeCloseTo(Number(ratio), 6);
    expect(page).toMatch(/\(toward\), inserts 1 2[^=]*governs/);
  });

  it('a calculation of its own: blow-out, a corner, both parts, both editions', () => {
    for (const standard of ['AS 5216', 'ACI 318-19', 'ACI 318M-19']) {
      const input = {
        calc: 'anchorage',
        standard,
        concrete: { strength_MPa: 36, cracked: false, lightweightFactor: standard === 'AS 5216' ? 1 : 0.75 },
        member: {
          thickness_mm: 420,
          outline_mm: [
            [0, 0],
            [3000, 0],
            [3000, 2000],
            [0, 2000],
          ],
          openings_mm: [],
        },
        reinforcement: { denseSurface: false, edge: 'bar-and-stirrups', supplementary: true, limitsCrackWidth: false },
        insert: {
          embedment_mm: 300,
          shaftDiameter_mm: 16,
          headDiameter_mm: 44,
          headThickness_mm: 4,
          stressArea_mm2: 157,
          ultimate_MPa: 500,
          yield_MPa: 240,
        },
        positions: [
          { id: 'A', x_mm: 80, y_mm: 150 },
          { id: 'B', x_mm: 80, y_mm: 270 },
        ],
        splitting: { c_cr_mm: 400, h_min_mm: 350 },
        mortarPad: true,
        actions: [
          { id: 'A', N_kN: 12, Vx_kN: -5, Vy_kN: -4 },
          { id: 'B', N_kN: 7, Vx_kN: -3, Vy_kN: -4 },
        ],
      };
      const { stdout, stderr } = onepour(['calc', '-', '--steps'], JSON.stringify(input));
      expect(stderr).toBe('');
      expect(followSteps(stdout)).toBeGreaterThan(30);
      expect(followRatios(stdout)).toBeGreaterThan(6);
      expectOnPage(stdout);
      expect(stdout).toContain('side-face blow-out');
      if (standard === 'AS 5216') continue;
      expect(stdout).toContain('N_b = k_d * λ * sqrt(f_c) * h_ef^(5/3)');
      expect(stdout).toContain('(the larger of the two)');
      expect(stdout).toMatch(/k_grout = 0.8 {3}\(on a pad of mortar/);
      expect(stdout).toContain('= min(500, 1.9 * 240,');
    }
  });
});
