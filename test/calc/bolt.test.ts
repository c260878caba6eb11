import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boltCalc } from '../../src/calc/bolt.ts';
import { BODY, RIGHT } from './bolts.ts';

const run = (changes: object = {}) => boltCalc.run(boltCalc.input.parse({ ...RIGHT, ...changes }));
const notesOf = (changes: object) => run(changes).notes.join('\n');

describe('the bolt of the contract', () => {
  // By hand: needs 3 + 15 + 16 = 34 → 35; in contact 35 − 18 = 17, 17/2 = 8.5 turns, 40 − 17 = 23 free. A_s 156.67 mm²; 157 · 580 = 91.06 kN,
  // 157 · 800 = 125.6 kN. Full strength: 12.007 mm · J, J = 417.55 · 800/(569.1 · 490) → 14.38 mm.
  it('is answered in its keys', () => {
    const result = run();
    expect(() => boltCalc.output.parse(result)).not.toThrow();
    expect(result).toMatchObject({
      length_mm: 35,
      engagement_mm: 17,
      turnsByHand: 8.5,
      clearToBottom_mm: 23,
      stressArea_mm2: expect.closeTo(156.67, 2),
      proofLoad_kN: expect.closeTo(91.06, 9),
      minUltimate_kN: expect.closeTo(125.6, 9),
      engagementForFullStrength_mm: expect.closeTo(14.38, 2),
      tighteningTorque_Nm: null,
      ok: true,
      minEngagement_mm: 16,
      preload_kN: null,
      packerRanges: [],
      plateHole: null,
      spanner_mm: 24,
      headHeight_mm: 10,
      threadLength_mm: 35,
    });
    expect(result.notes).toEqual([
      'turns in by hand 8.5 times; below 8 turns (16 mm): stop, clean the thread, measure',
      "snug, by hand with a short spanner: no tension is asked of the bolt; never above 80 N m (maker's maximum)",
      'torques by T = K d F with K 0.2, from 0.148 to 0.308; range of the nut factor not given: tension taken to scatter by 35 %, wider where books are',
    ]);
  });

  // Six turns are 12 mm, below a rule of 16: no such bolt is given, and the note says what 30 mm would leave.
  it('says why no stock length fits and what would', () => {
    const result = run({ stockLengths_mm: [30, 60] });
    expect(result).toMatchObject({
      length_mm: null,
      engagement_mm: null,
      turnsByHand: null,
      clearToBottom_mm: null,
      threadLength_mm: null,
      ok: false,
      tighteningTorque_Nm: null,
    });
    // By hand: 34 to 56; 60 needs 60 − 56 = 4 to 60 − 34 = 26 mm under the head.
    expect(result.notes[0]).toBe(
      'no stock length fits: it must be from 34 mm to 56 mm; 30 mm leaves 12 mm of 16 mm engagement; 60 mm stands on the bottom or too near it; order 35 mm, or put 4 mm to 26 mm more washers under the head of 60 mm; never cut a bolt to suit',
    );
    expect(notesOf({ stockLengths_mm: [20] })).toMatch(/20 mm leaves 2 mm of 16 mm engagement; order 35 mm;/);
    expect(notesOf({ stockLengths_mm: [10] })).toMatch(/10 mm leaves 0 mm of 16 mm/);
    // 33.5 to 34.4: no nominal length within, none longer at hand.
    expect(notesOf({ stockLengths_mm: [30], grip_mm: 14.5, threadDepth_mm: 18.9 })).toMatch(
      /order a length between these/,
    );
  });
  it('says when the thread is too shallow for any length', () => {
    const result = run({ threadDepth_mm: 17 });
    expect(result.ok).toBe(false);
    expect(result.notes[0]).toMatch(
      /16 mm of engagement and one pitch \(2 mm\) free at the bottom need 18 mm of thread, the insert has 17 mm/,
    );
    expect(run({ threadDepth_mm: 18, stockLengths_mm: [34] }).ok).toBe(true);
  });
});

describe('least engagement where none is given', () => {
  // By hand: 14.38 needed, below one diameter: 16. An insert of 300 MPa: 12.007 · 417.55 · 800/(569.1 · 300) = 23.49.
  it('is one diameter, or what full strength needs', () => {
    expect(run({ minEngagement_mm: null })).toMatchObject({ minEngagement_mm: 16, length_mm: 35 });
    expect(notesOf({ minEngagement_mm: null })).toMatch(/one diameter, 16 mm \(common practice\)/);
    const weak = { minEngagement_mm: null, insertThread: { yield_MPa: 200, ultimate_MPa: 300 } };
    expect(run(weak)).toMatchObject({ minEngagement_mm: expect.closeTo(23.49, 2), length_mm: 45 });
    expect(notesOf(weak)).toMatch(/23\.5 mm, at which the bolt breaks before the thread strips/);
  });
  it('is questioned where less than one diameter is given', () => {
    expect(notesOf({ minEngagement_mm: 10 })).toMatch(/least engagement 10 mm is below one diameter, 16 mm \(common/);
    expect(notesOf({ minEngagement_mm: 16 })).not.toMatch(/below one diameter/);
  });
  it('falls back on one diameter where the thread is not deep enough, and says what that costs', () => {
    const shallow = { minEngagement_mm: null, threadDepth_mm: 22, insertThread: { yield_MPa: 200, ultimate_MPa: 300 } };
    expect(run(shallow)).toMatchObject({ minEngagement_mm: 16, length_mm: 35, ok: true });
    expect(notesOf(shallow)).toMatch(/a thread 22 mm deep cannot hold the 23\.5 mm for full strength/);
    expect(notesOf(shallow)).toMatch(/at 17 mm the thread strips before the bolt breaks: full strength needs 23\.5 mm/);
    // At the limit: 23.49 + 2 = 25.49.
    const limit = (threadDepth_mm: number) => run({ ...shallow, threadDepth_mm }).minEngagement_mm;
    expect(limit(25.4)).toBe(16);
    expect(limit(25.6)).toBeCloseTo(23.49, 2);
  });
  it('is not computed without the steel or in a thin wall', () => {
    expect(run({ insertThread: null }).engagementForFullStrength_mm).toBeNull();
    expect(notesOf({ insertThread: null })).toMatch(/steel of the insert's thread not known/);
    const thin = { insertBody: { diameter_mm: 22, crossHole: null } };
    expect(run(thin).engagementForFullStrength_mm).toBeNull();
    expect(notesOf(thin)).toMatch(/body of 22 mm around M16 is below 1\.4 d/);
  });
});

describe('pairing', () => {
  it('refuses what does not go in, whatever else is right', () => {
    const result = run({ boltFinish: 'galvanised', preloadFraction: 0.5 });
    expect(result).toMatchObject({ ok: false, length_mm: 35, tighteningTorque_Nm: null });
    expect(result.notes[0]).toMatch(/galvanised bolt does not go into a thread 6H/);
    expect(result.notes.at(-1)).not.toMatch(/at most/);
    expect(result.turnsByHand).toBeNull();
    expect(result.notes.join('\n')).not.toMatch(/turns in by hand|threaded to the head/);
    expect(result.notes.join('\n')).toMatch(
      /lengths are those of a bolt of this thread that goes in: this one does not/,
    );
    const [row] = run({ boltFinish: 'galvanised', packers_mm: [[0, 10]] }).packerRanges;
    expect(row).toMatchObject({ turnsByHand: null, label: 'packers 0–10 mm: M16 × 45 does not go in' });
    expect(run({ boltFinish: 'galvanised', insertThreadClass: '6AZ' }).ok).toBe(true);
    expect(run({ boltCoating_um: 12 }).ok).toBe(false);
    expect(run({ boltCoating_um: 8 }).ok).toBe(true);
    expect(run({ boltCoating_um: null }).ok).toBe(true);
  });
  it('knows that no bolt is stainless and of a carbon steel class', () => {
    for (const changes of [{ boltFinish: 'stainless' }, { propertyClass: 'A4-70' }]) {
      expect(run(changes).ok).toBe(false);
      expect(notesOf(changes)).toMatch(/no bolt is both/);
    }
    const stainless = run({ boltFinish: 'stainless', propertyClass: 'A4-70', insertFinish: 'stainless' });
    expect(stainless).toMatchObject({ ok: true, proofLoad_kN: expect.closeTo(70.65, 9) });
    expect(stainless.notes.join('\n')).toMatch(/ISO 3506-1 gives A4-70 no proof load/);
    expect(stainless.notes.join('\n')).toMatch(/lubricate it, .*no power tool/);
  });
  it('warns of hydrogen in zinc-coated 10.9 only', () => {
    expect(notesOf({ propertyClass: '10.9' })).toMatch(/hydrogen/);
    expect(notesOf({ propertyClass: '10.9', boltFinish: 'plain' })).not.toMatch(/hydrogen/);
    expect(notesOf({})).not.toMatch(/hydrogen/);
  });
});

describe('what the length says besides', () => {
  it('takes nominal lengths without stock, and names others', () => {
    expect(run({ stockLengths_mm: null }).length_mm).toBe(35);
    expect(notesOf({ stockLengths_mm: null })).toMatch(/nominal lengths of ISO 4017 and ISO 4014/);
    expect(run({ stockLengths_mm: null, grip_mm: 185 }).length_mm).toBe(220);
    expect(notesOf({ grip_mm: 55, stockLengths_mm: [75] })).toMatch(/M16 × 75: no nominal length/);
    expect(notesOf({})).not.toMatch(/nominal/);
  });
  // ISO 4014: M16 × 60 has 38 mm of thread; 42 in contact are more.
  it('asks for thread up to the head where the engagement is longer than the thread', () => {
    const deep = { threadDepth_mm: 60, minEngagement_mm: 42, stockLengths_mm: [60] };
    expect(run(deep)).toMatchObject({ engagement_mm: 42, threadLength_mm: 38 });
    expect(notesOf(deep)).toMatch(/threaded to the head \(ISO 4017\).*only 38 mm/);
    expect(notesOf({ ...deep, minEngagement_mm: 38, stockLengths_mm: [56] })).not.toMatch(/to the head/);
  });
  // A washer ISO 7089 M16 of 3 mm may be 3.3 mm thick: 34 engages 16 − 0.3.
  it('warns where a thick washer takes the engagement below the least', () => {
    expect(notesOf({ stockLengths_mm: [34] })).toMatch(
      /ISO 7089 may be 3\.3 mm thick: engagement is then 15\.7 mm, below 16 mm/,
    );
    expect(notesOf({})).not.toMatch(/thick/);
  });
  it('tells that a recess lengthens bolt and lever arm', () => {
    expect(run({ threadStartsBelowFace_mm: 10 })).toMatchObject({ length_mm: 45, engagement_mm: 17 });
    expect(notesOf({ threadStartsBelowFace_mm: 10 })).toMatch(/10 mm below the face.*lever arm/);
    expect(notesOf({})).not.toMatch(/lever arm/);
  });
});

describe('packers', () => {
  // By hand: 0 to 10: 44 to 56 → 45, engaging 17 to 27, 13 free. 10 to 20: 54 to 66 → 55, the same.
  it('have a length for each range that is given, the first of which answers the keys of the contract', () => {
    const { packerRanges, ...first } = run({
      packers_mm: [
        [0, 10],
        [10, 20],
      ],
    });
    expect(first).toMatchObject({ ok: true, length_mm: 45, engagement_mm: 17, clearToBottom_mm: 13 });
    expect(packerRanges).toEqual([
      {
        packers_mm: [0, 10],
        length_mm: 45,
        engagement_mm: [17, 27],
        turnsByHand: [8.5, 13.5],
        clearToBottom_mm: 13,
        label: 'packers 0–10 mm: M16 × 45',
      },
      expect.objectContaining({ packers_mm: [10, 20], length_mm: 55, label: 'packers 10–20 mm: M16 × 55' }),
    ]);
  });
  // Thread 25 deep: L serves L − 41 to L − 34: 40 to 6, 45 to 11, 50 to 16, 55 to 21.
  it('split one range into as few as the stock allows', () => {
    const { packerRanges } = run({ packers_mm: [0, 20], threadDepth_mm: 25 });
    expect(packerRanges.map(({ packers_mm, length_mm }) => [...packers_mm, length_mm])).toEqual([
      [0, 6, 40],
      [6, 11, 45],
      [11, 16, 50],
      [16, 20, 55],
    ]);
  });
  it('that no length serves make the answer not ok, with the reason', () => {
    const result = run({ packers_mm: [[0, 30]] });
    expect(result).toMatchObject({ ok: false, length_mm: null });
    expect(result.packerRanges[0]).toMatchObject({
      length_mm: null,
      engagement_mm: null,
      label: 'packers 0–30 mm: no length fits',
    });
    expect(result.notes[0]).toMatch(
      /no one length fits for packers of 0 mm to 30 mm: the thread leaves room for 22 mm of difference; split/,
    );
    const short = run({ packers_mm: [[20, 30]] });
    expect(short.notes[0]).toMatch(
      /no stock length fits for packers of 20 mm to 30 mm: it must be from 64 mm to 76 mm/,
    );
  });
});

describe('tightening', () => {
  // By hand: 0.5 · 91 060 = 45 530 N; 0.2 · 16 mm · 45 530 N = 145.7 N m.
  it('is K d F of the wanted tension where nothing is lower', () => {
    const result = run({ preloadFraction: 0.5, maxTorque_Nm: 500 });
    expect(result.tighteningTorque_Nm).toBeCloseTo(145.696, 6);
    expect(result.notes.join('\n')).toMatch(/at most 145 N m, by hand.* \(bolt governs\)/);
    expect(result.preload_kN).toEqual([
      expect.closeTo(145.696 / (16 * (0.2 / 0.65)), 9),
      expect.closeTo(145.696 / (16 * (0.2 / 1.35)), 9),
    ]);
  });
  it("is never above the maker's maximum", () => {
    expect(run({ preloadFraction: 0.5 }).tighteningTorque_Nm).toBe(80);
    expect(notesOf({ preloadFraction: 0.5 })).toMatch(/\(maker's maximum governs\)/);
  });
  // By hand: least K 0.15: concrete 0.15 · 16 · 20 kN = 48 N m. Insert's thread over 17 mm: 0.5 · 569.1 · 17/16 · 355 = 107.3 kN → 257.6 N m.
  it('takes the concrete and the threads with the least K', () => {
    const limits = Object.fromEntries(
      run({ preloadFraction: 0.5, concreteTension_kN: 20, nutFactorRange: [0.15, 0.3] }).torqueLimits.map(
        ({ limit, torque_Nm }) => [limit, torque_Nm],
      ),
    );
    expect(limits.concrete).toBeCloseTo(48, 9);
    expect(limits["insert's thread"]).toBeCloseTo(257.6, 1);
    // Bolt's thread: 0.5 · 417.55 · 17/16 · 640 = 141.97 kN → 340.7 N m.
    expect(limits["bolt's thread"]).toBeCloseTo(340.7, 1);
    expect(
      run({ preloadFraction: 0.5, concreteTension_kN: 20, nutFactorRange: [0.15, 0.3] }).tighteningTorque_Nm,
    ).toBeCloseTo(48, 9);
  });
  // By hand, least K 0.15, body 24 with a hole of 10, f_y 355: A 219.54, W_T 1081.8: σ/T = 1/(2.4 · 219.54) = 1.89790e-3, √3/W_T = 1.60108e-3;
  // hypot 2.48309e-3 → 142.97 N m. Around the thread: A = π/4 (576 − 256) = 251.33, W_T = 2178.2: 1.65787e-3, 7.9518e-4; 1.83872e-3 → 193.07 N m.
  it("takes the insert's sections under tension with torsion", () => {
    const limits = run({ preloadFraction: 0.5, maxTorque_Nm: null, insertBody: BODY, nutFactorRange: [0.15, 0.3] });
    const of = (name: string) => limits.torqueLimits.find(({ limit }) => limit === name)!.torque_Nm;
    expect(of('body at the cross hole')).toBeCloseTo(142.97, 1);
    expect(of('body around the thread')).toBeCloseTo(193.07, 1);
    expect(limits.tighteningTorque_Nm).toBeCloseTo(142.97, 1);
  });
  it('takes the thread with the least engagement of all packers', () => {
    const torque = (changes: object) =>
      run({ preloadFraction: 0.5, ...changes }).torqueLimits.find(({ limit }) => limit === "insert's thread")!
        .torque_Nm;
    // 0 to 1 on 35: 16 mm; 10 to 11 on 46: 17 mm.
    const of = (...packers_mm: number[][]) => torque({ stockLengths_mm: [35, 46], packers_mm });
    expect(of([0, 1], [10, 11]) / of([10, 11])).toBeCloseTo(16 / 17, 9);
    expect(of([10, 11], [0, 1])).toBe(of([0, 1], [10, 11]));
  });
  it('is snug where no tension is wanted, or nothing but the bolt is known', () => {
    const unknown = { maxTorque_Nm: null, insertThread: null };
    expect(run({ preloadFraction: 0.5, ...unknown }).tighteningTorque_Nm).toBeNull();
    expect(notesOf({ preloadFraction: 0.5, ...unknown })).toMatch(
      /snug only.*no limit is known but that of the bolt itself/,
    );
    expect(notesOf(unknown)).toMatch(/snug only/);
    expect(run({ insertBody: BODY }).tighteningTorque_Nm).toBeNull();
  });
  it('names limits that nobody gave', () => {
    expect(notesOf({ preloadFraction: 0.5, maxTorque_Nm: null })).toMatch(
      /not known, so not a limit here: the maker's maximum torque, the insert's own section, the concrete at its strength today/,
    );
    expect(notesOf({ preloadFraction: 0.5, insertBody: BODY, concreteTension_kN: 30 })).not.toMatch(/not known/);
    // A thin wall: the steel is known, but no rule gives a limit of the threads (below 1.4 d).
    const thin = { preloadFraction: 0.5, insertBody: { diameter_mm: 22, crossHole: null }, concreteTension_kN: 30 };
    expect(notesOf(thin)).toMatch(/not a limit here: the insert's thread, the bolt's thread in it$/m);
    // A body without its steel is no limit.
    expect(notesOf({ preloadFraction: 0.5, insertBody: BODY, insertThread: null })).toMatch(
      /the insert's own section, the body at the cross hole, the insert's thread, the bolt's thread in it/,
    );
  });
  // By hand: K at most 0.2/0.65 = 0.3077: 0.3077 · 16 · 91.06 kN = 448.3 N m bring the bolt to its proof load.
  it('says of a maximum beyond what the bolt stands that it tells nothing of the insert', () => {
    const absurd = { preloadFraction: 0.5, maxTorque_Nm: 8000, insertThread: null };
    expect(run(absurd)).toMatchObject({ ok: true, tighteningTorque_Nm: expect.closeTo(145.696, 6) });
    expect(notesOf(absurd)).toMatch(
      /maximum of 8000 N m is more than .*\(448 N m at most\): N m\?; nothing else is known of the insert: snug only is advised/,
    );
    expect(notesOf({ ...absurd, concreteTension_kN: 30 })).toMatch(/8000 N m is more than.*: N m\?$/m);
    expect(notesOf({ ...absurd, maxTorque_Nm: 448 })).not.toMatch(/is more than brings/);
    expect(notesOf({ ...absurd, maxTorque_Nm: null })).toMatch(/nothing is known of what the insert and the concrete/);
  });
  // 0.9 of the proof load with K 0.2: with the least, 0.148, 0.9 · 1.35 = 1.215 of it. Shigley's usual most is 0.90 (H3-06, recalled).
  it('warns where the bolt may pass its proof load or is wanted too tight', () => {
    const tight = (preloadFraction: number) => notesOf({ preloadFraction, maxTorque_Nm: 900, insertThread: null });
    expect(tight(0.9)).toMatch(/passes its proof load of 91\.1 kN/);
    expect(tight(0.7)).not.toMatch(/passes/);
    expect(tight(0.9)).not.toMatch(/more than the usual 0\.9/);
    expect(tight(0.91)).toMatch(/0\.91 of the proof load is more than the usual 0\.9/);
  });
  it('puts the nut factor beside what books print', () => {
    expect(notesOf({ preloadFraction: 0.5, nutFactor: 0.15 })).toMatch(
      /nut factor 0\.15: books give 0\.2 to 0\.295 for a zinc bolt/,
    );
    expect(notesOf({ preloadFraction: 0.5, nutFactor: 0.3 })).toMatch(/books give/);
    expect(notesOf({ preloadFraction: 0.5 })).not.toMatch(/books give/);
    expect(notesOf({ preloadFraction: 0.5 })).toMatch(
      /range of the nut factor not given: tension taken to scatter by 35 %/,
    );
    expect(notesOf({ preloadFraction: 0.5, nutFactorRange: [0.15, 0.3] })).not.toMatch(/not given/);
  });
});

describe('the hole in the plate', () => {
  // M16 in 20: wider than 18.5 (ISO 273 coarse), oversize by EN 1090-2 and AISC, above 18 (EN 1992-4), below 22; wider than d + 3: plate washer.
  it('stands beside the tables', () => {
    expect(run({ plateHole: { diameter_mm: 20, slot_mm: 0 } }).plateHole).toEqual({
      iso273: 'wider than coarse',
      en1090: 'oversize',
      aisc360: 'oversize',
      sharesShear: false,
      withinBasePlate: true,
      washer: { kind: 'plate', outside_mm: 50, thickness_mm: 6 },
    });
    // A slot takes no shear along it, whatever its width.
    const slot = run({ plateHole: { diameter_mm: 18, slot_mm: 10 } });
    expect(slot.plateHole).toMatchObject({ iso273: null, en1090: 'long slot', sharesShear: false });
    expect(slot.plateHole!.withinBasePlate).toBe(false);
    expect(slot.notes.at(-1)).toMatch(/shares shear across it only, along it none \(width 18 mm, at most 18 mm/);
    expect(notesOf({ plateHole: { diameter_mm: 20, slot_mm: 10 } })).toMatch(/shares no shear: it is 20 mm wide/);
    expect(run({ plateHole: { diameter_mm: 18, slot_mm: 0 } }).plateHole!.sharesShear).toBe(true);
    expect(notesOf({ plateHole: { diameter_mm: 18, slot_mm: 0 } })).not.toMatch(/slot/);
    expect(
      run({ thread: 'M10', minEngagement_mm: 10, plateHole: { diameter_mm: 11, slot_mm: 0 } }).plateHole,
    ).toMatchObject({
      iso273: 'medium',
      en1090: null,
      aisc360: null,
      withinBasePlate: null,
    });
  });
});

describe('whatever the input', () => {
  const finish = fc.constantFrom('plain', 'zinc', 'galvanised', 'stainless');
  const any = fc.record({
    thread: fc.constantFrom('M10', 'M12', 'M16', 'M20', 'M24'),
    propertyClass: fc.constantFrom('4.6', '8.8', '10.9', 'A4-70'),
    threadDepth_mm: fc.integer({ min: 10, max: 90 }),
    threadStartsBelowFace_mm: fc.integer({ min: 0, max: 20 }),
    boltFinish: finish,
    insertFinish: finish,
    insertThreadClass: fc.constantFrom('6H', '6AZ', '6AX'),
    maxTorque_Nm: fc.option(fc.integer({ min: 5, max: 400 })),
    grip_mm: fc.integer({ min: 0, max: 60 }),
    minEngagement_mm: fc.option(fc.integer({ min: 8, max: 40 })),
    stockLengths_mm: fc.option(fc.array(fc.integer({ min: 16, max: 160 }), { minLength: 1, maxLength: 10 })),
    preloadFraction: fc.constantFrom(0, 0.3, 0.7),
    insertBody: fc.option(fc.constantFrom({ diameter_mm: 40, crossHole: { diameter_mm: 14, bore_mm: 10 } })),
    concreteTension_kN: fc.option(fc.integer({ min: 1, max: 100 })),
    packers_mm: fc.constantFrom(
      undefined,
      [0, 20],
      [
        [0, 10],
        [10, 20],
      ],
    ),
  });

  it('keeps its schema, its maximum, its engagement and its bottom', () => {
    fc.assert(
      fc.property(any, (changes) => {
        const result = run(changes);
        expect(() => boltCalc.output.parse(result)).not.toThrow();
        if (changes.maxTorque_Nm !== null)
          expect(result.tighteningTorque_Nm ?? 0).toBeLessThanOrEqual(changes.maxTorque_Nm);
        if (changes.preloadFraction === 0) expect(result.tighteningTorque_Nm).toBeNull();
        if (result.length_mm !== null) {
          expect(result.engagement_mm).toBeGreaterThanOrEqual(result.minEngagement_mm - 1e-6);
          const greatest = result.packerRanges[0]?.engagement_mm?.[1] ?? result.engagement_mm!;
          expect(greatest + result.clearToBottom_mm!).toBeCloseTo(changes.threadDepth_mm, 6);
        }
        if (result.ok) expect(result.packerRanges.every(({ length_mm }) => length_mm !== null)).toBe(true);
        if (changes.boltFinish === 'galvanised' && changes.insertThreadClass === '6H') expect(result.ok).toBe(false);
        for (const note of result.notes) expect(note).not.toMatch(/NaN|Infinity|undefined|null|\n/);
      }),
      { numRuns: 300 },
    );
  });
  it('a deeper thread never engages less, more grip never takes a shorter bolt, an oversize thread is never stronger', () => {
    fc.assert(
      fc.property(any, fc.integer({ min: 1, max: 30 }), (changes, more) => {
        const plain = run(changes);
        const deeper = run({ ...changes, threadDepth_mm: changes.threadDepth_mm + more });
        if (plain.engagement_mm !== null && deeper.engagement_mm !== null)
          expect(deeper.engagement_mm).toBeGreaterThanOrEqual(plain.engagement_mm - 1e-9);
        const thicker = run({ ...changes, grip_mm: changes.grip_mm + more });
        if (plain.length_mm !== null && thicker.length_mm !== null)
          expect(thicker.length_mm).toBeGreaterThanOrEqual(plain.length_mm);
        const normal = run({ ...changes, insertThreadClass: '6H' });
        expect(plain.engagementForFullStrength_mm!).toBeGreaterThanOrEqual(normal.engagementForFullStrength_mm!);
      }),
      { numRuns: 200 },
    );
  });
});
