import { all, create, type EvalFunction } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { onepour } from './run-command.ts';

const math = create(all!);

const DEMO = 'demo/job.json';

function printSteps(mark: string): string {
  const { stdout, stderr } = onepour(['check', DEMO, '--connection', mark, '--steps']);
  expect(stderr).toBe('');
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
const MARKS = ['C02', 'C09', 'C31', 'C37', 'C22', 'C33', 'C08', 'C20', 'C40'];

describe('a connection step by step', () => {
  it.each(MARKS)('%s: the printed numbers of each step give its printed result', (mark) => {
    const steps = findSteps(printSteps(mark));
    expect(steps.length).toBeGreaterThan(15);
    for (const { numbers, result } of steps) {
      // Seven printed digits go in and out; powers and differences may cost two of them.
      expect(Math.abs(calculate(numbers) - result), numbers).toBeLessThanOrEqual(2e-5 * Math.abs(result));
    }
  });

  it.each(MARKS)('%s: fits a page of 100 signs, nothing cut off, no trailing spaces', (mark) => {
    for (const line of printSteps(mark).split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(100);
      expect(line).toBe(line.trimEnd());
      expect(line).not.toMatch(/undefined|NaN|null|\[object/);
    }
  });

  it.each(['C02', 'C09', 'C31', 'C37', 'C33'])('%s: the forces of the plate balance its action', (mark) => {
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
    expect(page.trimEnd()).toMatch(/Answer: largest ratio .* 1\.074593, concrete cone in wind out: FAILS$/);
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
    expect(printSteps('C31')).toContain('ratios: concrete cone 1.060234; concrete edge in shear 0.9801859');
  });

  it('says choices in words', () => {
    const page = printSteps('C09');
    expect(page).toContain('l_f = min(h_ef, 12 * d if d <= 24 else max(8 * d, 300))');
    expect(page).not.toContain(' ? ');
  });
});
