// Sources in data/hardware.json, topics 1 to 5, that are wrong or slip: the engine must not agree with them.

import { describe, expect, it } from 'vitest';
import { findBoltLoads, findLeastStrengths } from '../../src/engine/hardware/bolt-strengths.ts';
import { findIso273Fit } from '../../src/engine/hardware/clearance-holes.ts';
import { findThread } from '../../src/engine/hardware/threads.ts';
import { findEntry, findValue } from './entry.ts';

const printed = (entry: string, name: string) => findValue(findEntry(entry), name).value;

describe('sources that are not followed', () => {
  // H1-09 prints 580 MPa as proof stress of 8.8 above 16 mm, and 660 up to it; the loads of H1-06 want 600 and 580.
  it('proof stresses of 8.8 put the wrong way round', () => {
    expect(printed('H1-09', '8.8 d>=17 Sp')).toBe(580);
    expect(findLeastStrengths('8.8', findThread('M18')).proof).toBe(600);
    expect(findLeastStrengths('8.8', findThread('M16')).proof).toBe(580);
    // 245 · 580 = 142 100 N would not be the printed 147 000.
    expect(printed('H1-06', '8.8 M20')).toBe(147_000);
    expect(findBoltLoads('8.8', findThread('M20')).proof).toBe(147_000);
  });

  // H4-03, a library table, prints 14 and 18 as normal, 15 and 19 as loose holes for M12 and M16: no series of ISO 273 (13.5, 17.5; 14.5, 18.5).
  it.each(['M12', 'M16'] as const)('clearance holes of a library, %s', (name) => {
    const fitOf = (series: string) =>
      findIso273Fit(findThread(name), { diameter: printed('H4-03', `${series} ${name}`), slot: 0 });
    expect(fitOf('normal')).toBe('coarse');
    expect(fitOf('loose')).toBe('wider than coarse');
  });

  // Printed loads of 8.8 that are not area times stress of their own table: 58.0 · 580 = 33 640, 157 · 580 = 91 060, 157 · 800 = 125 600 N.
  it('loads that differ from their own formula', () => {
    const [M10, M16] = [findThread('M10'), findThread('M16')];
    expect([printed('H1-06', '8.8 M10'), findBoltLoads('8.8', M10).proof]).toEqual([33_700, 33_640]);
    expect([printed('H1-06', '8.8 M16'), findBoltLoads('8.8', M16).proof]).toEqual([91_000, 91_060]);
    expect([printed('H1-07', '8.8 M16'), findBoltLoads('8.8', M16).breaking]).toEqual([125_000, 125_600]);
  });
});
