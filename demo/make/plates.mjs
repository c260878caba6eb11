// Plates and standard details of the demo job.

/** Plates by name: half width, half height, thickness, and the holes by id. Steel S235. */
const plateSteel = 235;
function plate(width, height, thickness, bolt, holes, attachment) {
  const box = (w, h) => [[-w / 2, -h / 2], [w / 2, -h / 2], [w / 2, h / 2], [-w / 2, h / 2]];
  return {
    outline_mm: box(width, height),
    thickness_mm: thickness,
    yield_MPa: plateSteel,
    holes: holes.map(([x, y, more], i) => ({ id: String(i + 1), at_mm: [x, y], diameter_mm: bolt + 2, slot_mm: 0, slotAngle_deg: 0, takesShear: true, ...more })),
    attachment_mm: box(...attachment),
  };
}
const quad = (s, t = s) => [[-s / 2, t / 2], [s / 2, t / 2], [-s / 2, -t / 2], [s / 2, -t / 2]];
const pairAcross = (s) => [[-s / 2, 0], [s / 2, 0]];
const pairUp = (s) => [[0, s / 2], [0, -s / 2]];
const six = [[-150, 100], [0, 100], [150, 100], [-150, -100], [0, -100], [150, -100]];

export const patterns = {
  Q200: plate(300, 300, 20, 16, quad(200), [140, 140]),
  Q150: plate(240, 240, 18, 16, quad(150), [110, 110]),
  B150: plate(240, 240, 25, 16, quad(150), [110, 110]),
  Q120: plate(190, 190, 12, 12, quad(120), [80, 80]),
  Q240: plate(340, 340, 25, 20, quad(240), [180, 180]),
  A200: plate(290, 100, 15, 16, pairAcross(200), [110, 80]),
  H200: plate(290, 120, 30, 16, pairAcross(200), [150, 110]),
  A140: plate(210, 80, 12, 12, pairAcross(140), [80, 60]),
  U200: plate(100, 290, 15, 16, pairUp(200), [80, 110]),
  S: plate(110, 110, 12, 16, [[0, 0]], [60, 60]),
  S12: plate(90, 90, 10, 12, [[0, 0]], [50, 50]),
  S20: plate(120, 120, 15, 20, [[0, 0]], [70, 70]),
  S24: plate(140, 140, 20, 24, [[0, 0]], [80, 80]),
  // An arm to one side: its mirror image is another bracket.
  ARM: {
    ...plate(290, 110, 25, 16, pairAcross(200), [110, 80]),
    outline_mm: [[-145, -55], [205, -55], [205, 55], [-145, 55]],
    attachment_mm: [[-40, -40], [80, -40], [80, 40], [-40, 40]],
  },
  X: plate(420, 320, 25, 20, six, [280, 180]),
};

export const details = {
  format: 'onepour-details',
  version: 1,
  id: 'tidewater-details',
  edition: '1',
  name: 'Standard details of the invented yard',
  details: [
    { id: 'T1', name: 'Cladding bracket, four bolts M16', fixture: patterns.Q200, item: 'F16-103' },
    { id: 'T2', name: 'Hand rail foot, two bolts M12', fixture: patterns.A140, item: 'F12-70' },
  ],
};
