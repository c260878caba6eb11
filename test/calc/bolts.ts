// The contract's example of `bolt`, and a few inserts around it; sizes and steels are invented.

export const RIGHT = {
  calc: 'bolt',
  thread: 'M16',
  propertyClass: '8.8',
  threadDepth_mm: 40,
  threadStartsBelowFace_mm: 0,
  boltFinish: 'zinc',
  insertFinish: 'zinc',
  insertThreadClass: '6H',
  maxTorque_Nm: 80,
  grip_mm: 15,
  washer_mm: 3,
  minEngagement_mm: 16,
  insertThread: { yield_MPa: 355, ultimate_MPa: 490 },
  stockLengths_mm: [30, 35, 40, 45, 50, 55, 60],
  nutFactor: 0.2,
  preloadFraction: 0,
};

export const BODY = { diameter_mm: 24, crossHole: { diameter_mm: 10, bore_mm: 0 } };
